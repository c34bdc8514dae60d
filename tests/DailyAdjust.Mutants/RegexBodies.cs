using System.Text.RegularExpressions;

namespace DailyAdjust.Mutants;

/// <summary>Expressions whose code a generator writes during a build, as expressions that are made when they are asked for.</summary>
internal static partial class RegexBodies
{
    public static string Written(string file) => Generated().Replace(file, "\n    private static System.Text.RegularExpressions.Regex ${name}() => new(${pattern}, ${options}, System.TimeSpan.FromMilliseconds(${limit}));");

    [GeneratedRegex("""\[GeneratedRegex\((?<pattern>@?"(\\.|[^"])*"), (?<options>[^,)]+), (?<limit>[0-9]+)\)\]\s+private static partial Regex (?<name>\w+)\(\);""", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Generated();
}
