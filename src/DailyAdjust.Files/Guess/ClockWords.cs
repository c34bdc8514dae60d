using System.Globalization;
using System.Text.RegularExpressions;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Guess;

/// <summary>What a text says of the clock that wrote the times.</summary>
/// <param name="Clock">Null = an offset that only fits together with the site's zone.</param>
/// <param name="OffsetH">A fixed offset from UTC, hours; null = none is written.</param>
/// <param name="Text">As it is written.</param>
internal sealed record ClockWords(StampClock? Clock, double? OffsetH, string Text)
{
    private const RegexOptions Plainly = RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    private static readonly Regex Offset = new(@"(\b|date|time)(utc|gmt) ?(?<sign>[-+−])(?<h>\d{1,2})(:?(?<m>\d{2}))?", Plainly);
    private static readonly Regex Utc = new(@"(\b|date|time)(utc|gmt|zulu|wez)\b", Plainly);
    private static readonly Regex Standard = new(@"\b(standard|lst|[ecmp]st|akst|hst|mez|cet|aest|acst|awst|nzst|normalzeit|winterzeit)\b", Plainly);
    private static readonly Regex Local = new(@"\b(local|locale?|lokal|ortszeit|ortszeiten)\b", Plainly);

    /// <summary>Null = it says nothing.</summary>
    public static ClockWords? Of(string text)
    {
        var plain = text.Replace('_', ' ');
        if (Offset.Match(plain) is { Success: true } offset)
        {
            var hours = int.Parse(offset.Groups["h"].Value, NumberStyles.None, CultureInfo.InvariantCulture)
                + (offset.Groups["m"].Success ? int.Parse(offset.Groups["m"].Value, NumberStyles.None, CultureInfo.InvariantCulture) / 60.0 : 0);
            hours = offset.Groups["sign"].Value is "+" ? hours : -hours;
            return hours == 0 ? new(StampClock.Utc, null, offset.Value) : new(null, hours, offset.Value);
        }

        return Standard.Match(plain) is { Success: true } standard ? new(StampClock.Standard, null, standard.Value)
            : Utc.Match(plain) is { Success: true } utc ? new(StampClock.Utc, null, utc.Value)
            : Local.Match(plain) is { Success: true } local ? new(StampClock.Local, null, local.Value)
            : null;
    }
}
