using System.Globalization;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>The real program under other cultures, in other time zones, and on a processor without fused multiply-add: the same files and the same printed tables, byte for byte.</summary>
[Trait("Promise", "8")]
public sealed class ElsewhereTests : IDisposable
{
    /// <summary>Takes fused multiply-add from the C library (its names changed with glibc 2.33) and from .NET's compiler.</summary>
    private static readonly Dictionary<string, string> WithoutFma = new(StringComparer.Ordinal)
    {
        ["GLIBC_TUNABLES"] = "glibc.cpu.hwcaps=-FMA,-AVX2,-FMA4,-FMA_Usable,-AVX2_Usable,-FMA4_Usable",
        ["DOTNET_EnableFMA"] = "0",
        ["DOTNET_EnableAVX2"] = "0",
    };

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void The_demo_is_the_same_everywhere()
    {
        // Where cultures are switched off this test would show nothing.
        Assert.Equal(",", CultureInfo.GetCultureInfo("de-DE").NumberFormat.NumberDecimalSeparator);
        Assert.Equal("İ", "i".ToUpper(CultureInfo.GetCultureInfo("tr-TR")));
        var here = Demo("here", In("C", "UTC"));
        (string Name, Dictionary<string, string> Variables)[] places =
        [
            ("de", In("de_DE", "Asia/Kathmandu")),
            ("tr", In("tr_TR", "Pacific/Auckland")),
            ("plain-processor", new(In("ar_EG", "America/St_Johns").Concat(WithoutFma), StringComparer.Ordinal)),
        ];
        Assert.NotEmpty(here);
        foreach (var (name, variables) in places)
        {
            var there = Demo(name, variables);
            Assert.Equal(here.Select(f => f.Key), there.Select(f => f.Key));
            Assert.All(here, file => Assert.True(file.Value.AsSpan().SequenceEqual(there[file.Key]), $"{name}: {file.Key}"));
            Tried.Held(8, "the demo elsewhere: its files, and what is printed", here.Count);
        }
    }

    /// <summary>Every report file, and what the commands print.</summary>
    private SortedDictionary<string, byte[]> Demo(string name, Dictionary<string, string> variables)
    {
        var home = new HomeFolder(Path.Combine(_home.Path, name));
        Run("demo");
        var site = Assert.Single(home.Sites());
        var files = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (var file in Directory.GetFiles(site.Reports, "*", SearchOption.AllDirectories))
        {
            files[Path.GetRelativePath(site.Reports, file)] = File.ReadAllBytes(file);
        }

        string[][] commands = [["weather", "--format", "csv"], ["balance", "--format", "csv"], ["advice"], ["season"], ["explain", "B1/A"], ["replay", "--from", "2026-06-01", "--to", "2026-07-01", "--format", "json"]];
        foreach (var command in commands)
        {
            files[string.Join(' ', command)] = System.Text.Encoding.UTF8.GetBytes(Run(command));
        }

        return files;

        string Run(params string[] arguments)
        {
            var result = RunningProgram.Run(new ProgramStart([.. arguments, "--home", home.Path]) { Variables = variables });
            return result.ExitCode == 0 ? result.Output : throw new InvalidOperationException(result.ToString());
        }
    }

    private static Dictionary<string, string> In(string culture, string zone) => new(StringComparer.Ordinal)
    {
        ["LANG"] = culture + ".UTF-8",
        ["LC_ALL"] = culture + ".UTF-8",
        ["TZ"] = zone,
    };
}
