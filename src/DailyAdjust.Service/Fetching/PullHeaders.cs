using System.Text.RegularExpressions;

namespace DailyAdjust.Service.Fetching;

/// <summary>Header values with variables of the environment put in, so that no secret stands in a file.</summary>
public static partial class PullHeaders
{
    /// <param name="headers">As site.yaml has them.</param>
    /// <param name="variable">Looks a variable up.</param>
    /// <exception cref="PullException">A variable is missing, or holds what no header can carry: named, its value never.</exception>
    public static IReadOnlyList<KeyValuePair<string, string>> Fill(IReadOnlyList<KeyValuePair<string, string>> headers, Func<string, string?> variable) =>
        [.. headers.Select(header => KeyValuePair.Create(header.Key, Fill(header.Value, variable)))];

    private static string Fill(string value, Func<string, string?> variable) => Variable().Replace(value, match =>
    {
        var name = match.Groups["name"].Value;
        var found = variable(name)?.Trim();
        if (string.IsNullOrEmpty(found))
        {
            throw new PullException($"the environment variable {name}, which one of its headers needs, is not set", passing: false);
        }

        return found.Any(c => c is < ' ' or > '~')
            ? throw new PullException($"the environment variable {name} holds a character that no header can carry", passing: false)
            : found;
    });

    [GeneratedRegex(@"\$\{(?<name>[A-Za-z_][A-Za-z0-9_]*)\}", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Variable();
}
