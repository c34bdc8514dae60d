using System.Text.RegularExpressions;

namespace DailyAdjust.Files.Guess;

/// <summary>How a column writes times of day.</summary>
/// <param name="Pattern">.NET pattern, with the offset where there is one.</param>
/// <param name="Zone">What stands behind the time: "" nothing, "Z", "offset", or a zone's letters ("UTC").</param>
/// <param name="EndsAt24">24:00 stands among them.</param>
internal sealed record TimeOfDayForm(string Pattern, string Zone, bool EndsAt24)
{
    public const string Offset = "offset";

    /// <summary>Every hour has two digits, though none begins with 0: where the date's numbers have two digits, so have these.</summary>
    private bool TwoDigits { get; init; }

    private const RegexOptions Plainly = RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking;

    private static readonly Regex WithColon = new(
        @"^(?<h>\d{1,2}):(?<m>\d{2})(:(?<s>\d{2})(?<f>\.\d{1,7})?)?(?<b> ?)(?<half>[AaPp][Mm])?(?<g> ?)(?<zone>Z|[-+]\d{2}:?\d{2}|[A-Z]{3,4})?$", Plainly);

    private static readonly Regex Together = new(@"^(?<h>[0-2]\d)(?<m>[0-5]\d)(?<s>[0-5]\d)?$", Plainly);

    /// <summary>The form of most of the texts; null = they are no times of day that a pattern can write.</summary>
    public static TimeOfDayForm? Of(IReadOnlyList<string> texts)
    {
        var matches = texts.Select(text => WithColon.Match(text)).Where(match => match.Success).ToList();
        if (matches.Count > 0 && matches.Count >= 0.8 * texts.Count)
        {
            return WithColons(matches);
        }

        matches = [.. texts.Select(text => Together.Match(text)).Where(match => match.Success)];
        return matches.Count > 0 && matches.Count >= 0.8 * texts.Count
            ? new(matches[0].Groups["s"].Success ? "HHmmss" : "HHmm", "", EndsAt24: false)
            : null;
    }

    /// <summary>The pattern behind a date written so.</summary>
    public string After(string date) =>
        TwoDigits && Pattern[1] == ':' && date.Contains("MM", StringComparison.Ordinal) && date.Contains("dd", StringComparison.Ordinal) ? Pattern[0] + Pattern : Pattern;

    private static TimeOfDayForm? WithColons(List<Match> matches)
    {
        var hours = matches.ConvertAll(match => match.Groups["h"].Value);
        var first = matches[0];
        var half = first.Groups["half"].Success;
        var zones = matches.ConvertAll(match => ZoneOf(match.Groups["zone"].Value)).Distinct(StringComparer.Ordinal).ToList();
        if (zones.Count > 1)
        {
            return null;
        }

        var endsAt24 = !half && hours.Contains("24", StringComparer.Ordinal);
        var hour = half ? DateForm.Letters('h', hours) : endsAt24 ? "HH" : DateForm.Letters('H', hours);
        var seconds = (first.Groups["s"].Success ? ":ss" : "") + (first.Groups["f"].Success ? "." + new string('f', first.Groups["f"].Length - 1) : "");
        var pattern = $"{hour}:mm{seconds}" + (half ? first.Groups["b"].Value + "tt" : "");
        var gap = half ? first.Groups["g"].Value : first.Groups["b"].Value + first.Groups["g"].Value;
        var zone = zones[0] switch
        {
            "" => "",
            Offset => gap + "zzz",
            var letters => $"{gap}'{letters}'",
        };
        return new(pattern + zone, zones[0], endsAt24) { TwoDigits = hours.TrueForAll(text => text.Length == 2) };
    }

    private static string ZoneOf(string zone) => zone is ['+' or '-', ..] ? Offset : zone;
}
