using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Ledger.Records;

namespace DailyAdjust.Service.Sites;

/// <summary>What came in since the sheet before this one about days that it rested on. That sheet stays as it was issued.</summary>
internal static class CorrectionBook
{
    /// <param name="site">Opened.</param>
    /// <param name="date">This sheet's date.</param>
    /// <param name="issue">Its issue.</param>
    /// <param name="upTo">The highest input number that it may use.</param>
    /// <param name="weather">Days as this sheet knows them.</param>
    /// <returns>Null = nothing that shows.</returns>
    public static Corrections? Of(OpenSite site, DateOnly date, int issue, long upTo, IReadOnlyList<WeatherDay> weather)
    {
        if (Before(site, date, issue) is not { } before || before.Watermark >= upTo)
        {
            return null;
        }

        var (first, last) = (before.Date.AddDays(-LookBack.Days), before.Date.AddDays(-1));
        if (FirstTouched(site, before, first, last, upTo) is not { } touched)
        {
            return null;
        }

        var versions = site.VersionsUpTo(before.Watermark);
        var start = versions[0].Site.Start;
        var from = touched > start ? touched : start;
        var log = site.Ledger.Logbook.Effective(before.Watermark);
        var clock = versions[^1].Site.Clock;
        var was = WeatherBook.Compute(
            site,
            versions,
            from,
            last,
            [.. weather.Where(day => day.Date < from)],
            [.. log.Where(entry => entry.Time.Instant(clock) <= before.AsOf)],
            before.AsOf,
            before.Watermark);
        var values = Corrections.Between(was, weather);
        return values.Count == 0 ? null : new Corrections(before.Date, before.Issue, values, Lines(site, before, upTo));
    }

    private static MorningRecord? Before(OpenSite site, DateOnly date, int issue) => site.Ledger.Mornings.Between(date.AddDays(-LookBack.Days), date)
        .LastOrDefault(m => m.Step is MorningStep.Computed or MorningStep.Written && (m.Date < date || m.Issue < issue));

    private static DateOnly? FirstTouched(OpenSite site, MorningRecord before, DateOnly first, DateOnly last, long upTo)
    {
        var clock = site.Newest.Clock;
        var rain = TouchedDays.Differences(site.Ledger.Logbook.Effective(before.Watermark), site.Ledger.Logbook.Effective(upTo))
            .Where(entry => entry.Kind == LogKind.Rain)
            .Select(entry => TouchedDays.FirstOf(entry, clock))
            .Where(day => day >= first && day <= last);
        var readings = site.Newest.Weather.Stations
            .Select(station => site.Ledger.Readings.FirstChanged(station.Id, first, last, before.Watermark, upTo))
            .OfType<DateOnly>();
        List<DateOnly> touched = [.. rain, .. readings];
        return touched.Count == 0 ? null : touched.Min();
    }

    private static IReadOnlyList<AdviceCorrection> Lines(OpenSite site, MorningRecord before, long upTo)
    {
        var issued = site.Ledger.Sheets.Issued(before.Date, before.Date).FirstOrDefault(sheet => sheet.Issue == before.Issue);
        return issued is null
            ? []
            : Corrections.Between(issued.Lines, MorningCalculation.Run(MorningKnowledge.Of(site, before.Date, before.AsOf, before.Issue, upTo, withCorrections: false)).Programs);
    }
}
