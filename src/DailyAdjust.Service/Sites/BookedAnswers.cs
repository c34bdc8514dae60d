using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Sites;

/// <summary>What a round sheet that came back has put into the logbook, for whoever handed it in: a line for each program.</summary>
internal static class BookedAnswers
{
    /// <summary>What a person reads on a terminal before giving up.</summary>
    private const int LinesShown = 12;

    /// <param name="controllers">Of the site.</param>
    /// <param name="booked">Settings of one or more sheets, as they count.</param>
    public static IEnumerable<string> Lines(IReadOnlyList<Controller> controllers, IReadOnlyList<LogEntry> booked)
    {
        var rows = booked.GroupBy(e => (e.Where, e.Sheet, e.Issue)).ToList();
        return
        [
            .. rows.Take(LinesShown).Select(row => "  " + Line(controllers, [.. row])),
            .. rows.Count > LinesShown ? [FormattableString.Invariant($"  and {rows.Count - LinesShown} more")] : (IEnumerable<string>)[],
        ];
    }

    /// <summary>"C1/P1 Practice greens (pump house): 90 % found, set to 60 %; counts from 2026-05-04 13:00".</summary>
    private static string Line(IReadOnlyList<Controller> controllers, IReadOnlyList<LogEntry> row)
    {
        var controller = controllers.First(c => string.Equals(c.Id, row[0].Where.Name, StringComparison.Ordinal));
        var name = controller.Programs.First(p => string.Equals(p.Id, row[0].Where.Item, StringComparison.Ordinal)).Name;
        var place = controller.Place.Length > 0 ? $" ({controller.Place})" : "";
        return $"{row[0].Where}{(name.Length > 0 ? " " + name : "")}{place}: {Said(row)}; counts from {Time(row[^1].Time)}";
    }

    /// <summary>What was found and is set after it is one thing where nothing was turned.</summary>
    private static string Said(IReadOnlyList<LogEntry> row) => row is [{ Text: LogEntry.Found, Value: var found }, { Value: var set }] && found == set
        ? What(row[0]) + " and left"
        : string.Join(", ", row.Select(What));

    private static string What(LogEntry entry) => entry switch
    {
        { Value: null } => "nothing was turned",
        { Text: LogEntry.Found, Value: 0 } => "found off",
        { Text: LogEntry.Found, Value: { } found } => $"{Percent(found)} found",
        { Value: 0, Until: { } until } => $"paused until {Time(until)}",
        { Value: 0 } => "off",
        { Value: { } set } => $"set to {Percent(set)}",
    };

    private static string Percent(double percent) => percent.ToString("0.####", CultureInfo.InvariantCulture) + " %";

    private static string Time(LogTime time) => time.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + time.Clock?.ToString(" HH:mm", CultureInfo.InvariantCulture);
}
