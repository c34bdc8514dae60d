using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Weather;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Service.Sites;

/// <summary>Finished dates of the last two weeks whose rain nobody knows: what the sheet asks of a gauge.</summary>
internal static class RainQuestions
{
    private const int Days = 15;

    /// <summary>Of the gauge of a rain entry, by the logbook as it stands, ascending; none where the entry is no rain.</summary>
    public static IReadOnlyList<DateOnly> Open(OpenSite site, LogEntry entry) =>
        entry.Kind == LogKind.Rain && WeatherBook.LastFinished(site) is { } last
            ? [.. WeatherBook.Through(site, last, last.AddDays(1 - Days))
                .Where(d => d.Rain.Any(r => r.Basis == RainBasis.Unknown && string.Equals(r.Gauge, entry.Where.Name, StringComparison.Ordinal)))
                .Select(d => d.Date)]
            : [];

    /// <summary>Which of them an entry answers, and which it leaves; null = none was open.</summary>
    /// <param name="before">Open without the entry.</param>
    /// <param name="after">Open with it.</param>
    /// <param name="gauge">Whose.</param>
    public static string? Note(IReadOnlyList<DateOnly> before, IReadOnlyList<DateOnly> after, string gauge) =>
        before.Count > 0 ? HandRainWords.Answered(gauge, [.. before.Except(after)], after) : null;
}
