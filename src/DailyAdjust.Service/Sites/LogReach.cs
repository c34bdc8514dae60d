using System.Globalization;
using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Service.Sites;

/// <summary>Whether what somebody logs lies where there is weather or a sheet that it can speak to.</summary>
internal static class LogReach
{
    /// <summary>Null = it does, or nothing has come in yet. Orders say what is to come, and may lie ahead.</summary>
    /// <param name="site">Opened, with the entry in its logbook.</param>
    /// <param name="entry">As it was added.</param>
    public static string? Note(OpenSite site, LogEntry entry)
    {
        if (entry.IsOrder || entry.Kind == LogKind.Void)
        {
            return null;
        }

        var date = entry.Time.Date;
        if (date < site.Newest.Start && entry.Kind is not (LogKind.Setting or LogKind.Off or LogKind.Note or LogKind.Season))
        {
            return $"Note: it lies before the balance begins ({Date(site.Newest.Start)}) and changes nothing.";
        }

        var weather = ReadingsBook.LastDay(site);
        var sheet = AdviceBook.NewestDate(site);
        var newest = weather > sheet ? weather : sheet ?? weather;
        return newest is { } last && date > last.AddDays(1)
            ? $"Note: it lies after what is there ({Reach(weather, sheet)}). If it is about an earlier morning, log it with --date and --time of that morning, and take this one back with `log void`."
            : null;
    }

    /// <summary>Of a time of day that the site's clock skips that night.</summary>
    /// <returns>Null = there is such a time, or none was given.</returns>
    public static string? SkippedNote(OpenSite site, LogEntry entry) =>
        entry.Time.Clock is { } time && site.Newest.Clock.IsSkipped(entry.Time.Date.ToDateTime(time))
            ? string.Create(CultureInfo.InvariantCulture, $"Note: there is no {time:HH:mm} on {Date(entry.Time.Date)}: the clocks are put forward over it. It counts as {site.Newest.Clock.ToLocal(entry.Time.Begin(site.Newest.Clock)):HH:mm}.")
            : null;

    private static string Reach(DateOnly? weather, DateOnly? sheet) =>
        (weather is { } day ? $"weather through {Date(day)}" : "no weather") + (sheet is { } date ? $", newest sheet of {Date(date)}" : ", no sheet");

    private static string Date(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
