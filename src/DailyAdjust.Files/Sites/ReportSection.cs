using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>report: when the sheet lies ready, and what is worth a walk.</summary>
internal static class ReportSection
{
    public static ReportPolicy Read(Section? section)
    {
        var usual = new ReportPolicy();
        if (section is null)
        {
            return usual;
        }

        var at = section.Find("at");
        var policy = new ReportPolicy
        {
            At = at is null ? usual.At : section.Times(at, "at"),
            RoundDoneBy = section.Time("round_done_by") ?? usual.RoundDoneBy,
            FirstPlay = section.Time("first_play"),
            Satisfy = Share(section, "satisfy", new(0, 100, AboveMin: true)) ?? usual.Satisfy,
            SkipBelowPercent = section.Quantity("skip_below", UnitKind.Percent, new(0, 1000)) ?? usual.SkipBelowPercent,
            SkipRoom = Share(section, "skip_room", new(0, 100)),
            Worth = Share(section, "worth", new(0, 100)) ?? usual.Worth,
            OffWithNoteStaysOff = section.Word("off_with_note", "resume", "ask") is "ask",
            VisitAlert = Share(section, "visit_alert", new(0, 1000)) ?? usual.VisitAlert,
            Language = section.Word("language", "en", "es") is "es" ? SheetLanguage.Spanish : SheetLanguage.English,
            WeatherMaxAge = section.Quantity("weather_max_age", UnitKind.Duration, new(60, 30 * 1440)) is { } minutes ? TimeSpan.FromMinutes(minutes) : usual.WeatherMaxAge,
        };
        section.Done();

        // Later looks may come after the round: they speak about the starts that are still ahead.
        if (policy.At.Count > 0 && policy.At[0] >= policy.RoundDoneBy)
        {
            var place = section.KeyOf(at is null ? "round_done_by" : "at");
            section.Problems.Error(
                place.Line,
                place.Column,
                FormattableString.Invariant($"the sheet of {policy.At[0]:HH:mm} would lie ready after the round is done by {policy.RoundDoneBy:HH:mm}"),
                "give report.at an earlier time or report.round_done_by a later one");
        }

        return policy;
    }

    /// <summary>A share written in percent, as a fraction.</summary>
    public static double? Share(Section section, string key, Limits percent) =>
        section.Quantity(key, UnitKind.Percent, percent) is { } value ? value / 100 : null;
}

/// <summary>Two times of day between which something holds; may cross midnight.</summary>
internal static class WindowSection
{
    public static WateringWindow? Read(Section? section, string opensKey, string closesKey)
    {
        if (section is null)
        {
            return null;
        }

        var before = section.Problems.Count;
        var window = new WateringWindow(section.NeedTime(opensKey, "\"20:00\""), section.NeedTime(closesKey, "\"06:30\""));
        section.Done();
        if (window.Opens == window.Closes && section.Problems.Count == before)
        {
            section.Problems.Error(section.At.Line, section.At.Column, $"{section.Name} begins and ends at the same time", "leave it out where all hours are meant");
        }

        return window;
    }
}
