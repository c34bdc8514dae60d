using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace DailyAdjust.Mutants;

/// <summary>The files of Core, and what they compile to.</summary>
internal sealed class CoreSource
{
    private readonly CSharpCompilation _compilation;

    private CoreSource(CSharpCompilation compilation, IReadOnlyList<SyntaxTree> files) => (_compilation, Files) = (compilation, files);

    /// <summary>By path below Core, in ordinal order; generated ones are not among them.</summary>
    public IReadOnlyList<SyntaxTree> Files { get; }

    /// <summary>The repository.</summary>
    public static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "DailyAdjust.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("No DailyAdjust.sln stands above the program.");
    }

    public static CoreSource Read(string root)
    {
        var core = Path.Combine(root, "src", "DailyAdjust.Core");
        var options = new CSharpParseOptions(LanguageVersion.Latest);
        var files = Directory.EnumerateFiles(core, "*.cs", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(core, path).Replace('\\', '/'))
            .Where(path => !path.StartsWith("obj/", StringComparison.Ordinal) && !path.StartsWith("bin/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(path => CSharpSyntaxTree.ParseText(RegexBodies.Written(File.ReadAllText(Path.Combine(core, path))), options, path))
            .ToList();
        var generated = Directory.EnumerateFiles(Path.Combine(core, "obj", "Release", "net10.0"), "DailyAdjust.Core.*.cs").Select(path => CSharpSyntaxTree.ParseText(File.ReadAllText(path), options, path));
        var framework = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        var references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
            .Where(path => string.Equals(Path.GetDirectoryName(path), framework, StringComparison.Ordinal))
            .Select(path => MetadataReference.CreateFromFile(path));
        return new(
            CSharpCompilation.Create(
                "DailyAdjust.Core",
                [.. files, .. generated],
                references,
                new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable, deterministic: true)),
            files);
    }

    /// <summary>Compiled with other files in place of some; null = it does not compile.</summary>
    public byte[]? Compile(IEnumerable<(SyntaxTree File, string Text)> others, string? added = null)
    {
        var compilation = others.Aggregate(_compilation, (c, other) => c.ReplaceSyntaxTree(other.File, other.File.WithChangedText(SourceText.From(other.Text))));
        compilation = added is null ? compilation : compilation.AddSyntaxTrees(CSharpSyntaxTree.ParseText(added, (CSharpParseOptions)Files[0].Options));
        using var bytes = new MemoryStream();
        return compilation.Emit(bytes).Success ? bytes.ToArray() : null;
    }

    /// <summary>Compiled with one fault in it; null = it does not compile.</summary>
    public byte[]? Compile(Mutant mutant) => Compile([(mutant.Tree, mutant.Tree.GetText().Replace(mutant.Span, mutant.Text).ToString())]);
}
