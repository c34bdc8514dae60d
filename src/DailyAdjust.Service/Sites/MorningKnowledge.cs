using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Service.Sites;

/// <summary>Gathers what one morning may know: nothing later than its instant, nothing that arrived after its input number.</summary>
public static class MorningKnowledge
{
    private static readonly TimeOnly NightBegins = new(18, 0);

    /// <param name="site">Opened.</param>
    /// <param name="date">The sheet's date.</param>
    /// <param name="asOf">The instant whose knowledge counts, UTC.</param>
    /// <param name="issue">The sheet's issue: earlier ones of the date are known to it.</param>
    /// <param name="watermark">The highest input number that it may use; null = all that arrived.</param>
    /// <param name="withCorrections">Whether what is known otherwise now than to the sheet before is looked for.</param>
    /// <exception cref="WrongInputException">The date lies before the site's start, or there is no description.</exception>
    public static MorningInputs Of(OpenSite site, DateOnly date, DateTimeOffset asOf, int issue, long? watermark = null, bool withCorrections = true)
    {
        // Stored days and states rest on all that arrived; a look back at less than that computes everything anew.
        var looksBack = watermark is { } limit && limit < site.Ledger.Watermark;
        var upTo = watermark ?? long.MaxValue;
        var versions = looksBack ? site.VersionsUpTo(upTo) : site.Versions;
        RefuseBeforeStart(site, versions, date);
        var today = SiteVersions.On(versions, date);
        var (log, notUsed) = Split(site, today.Clock, asOf, upTo);
        var (state, waterBefore) = looksBack ? (null, []) : SoilBook.ForSheet(site, date, notUsed);
        var weather = WeatherThrough(site, versions, date.AddDays(-1), state?.Date ?? versions[0].Site.Start, log, asOf, looksBack ? upTo : null);
        var readings = ReadingsNear(site, today, date, asOf, upTo);
        var newest = WeatherDays.Newest(today, asOf, readings);
        var forecast = ForecastBook.Known(site, today, date, asOf, upTo);
        var totals = HandRainBook.TotalsSoFar(site, today.Clock, date, asOf, upTo);
        List<SetAsideValue> setAside = [];
        return new MorningInputs
        {
            Versions = versions,
            Date = date,
            AsOf = asOf,
            Weather = weather,
            Before = WeatherBook.BeforeState(site, versions, state),
            RainSinceMidnight = WeatherDays.RainSinceMidnight(today, date, asOf, readings, log, totals),
            RainSetAsideSinceMidnight = WeatherDays.RainSetAsideSinceMidnight(today, date, asOf, readings),
            RainByHand = HandRains.Of(today, date.AddDays(-1), asOf, readings, log, totals),
            EtoSoFar = today.Report.IsLaterLook(today.Clock, date, asOf) ? WeatherDays.EtoSinceMidnight(today, date, asOf, readings) : null,
            WaterBefore = waterBefore,
            WaterYearBefore = looksBack ? [] : WaterBook.MonthOf(site, date.AddYears(-1)),
            Forecast = forecast is null ? [] : ForecastDays.Of(today, date, asOf, forecast.Readings, setAside),
            ForecastIssued = forecast?.Issued,
            ForecastSetAside = setAside,
            NightReadings = newest is null ? [] : Night(today, date, asOf, readings[newest.Station]),
            NewestReadingEnd = newest?.End,
            NewestReadingStation = newest?.Station ?? "",
            Log = log,
            Sheets = [.. site.Ledger.Sheets.Issued(last: date).Where(s => s.Date < date || s.Issue < issue)],
            StartState = state,
            Corrections = withCorrections ? CorrectionBook.Of(site, date, issue, Math.Min(upTo, site.Ledger.Watermark), weather) : null,
        };
    }

    /// <summary>The newest reading of any station by an instant; null = there is none.</summary>
    public static NewestReading? NewestReading(OpenSite site, DateTimeOffset asOf)
    {
        var date = site.Newest.Clock.DateOf(asOf);
        return WeatherDays.Newest(site.Newest, asOf, ReadingsNear(site, site.Newest, date, asOf, long.MaxValue));
    }

    /// <exception cref="WrongInputException">The date lies before the site's start, or there is no description.</exception>
    public static void RefuseBeforeStart(OpenSite site, IReadOnlyList<SiteVersion> versions, DateOnly date)
    {
        if (versions.Count == 0 || date < versions[0].Site.Start)
        {
            throw new WrongInputException(
                FormattableString.Invariant($"{site.Folder.Name}: {date:yyyy-MM-dd} lies before the balance begins ({site.Newest.Start:yyyy-MM-dd})."),
                "The start stands in site.yaml.");
        }
    }

    private static IReadOnlyList<WeatherDay> WeatherThrough(
        OpenSite site, IReadOnlyList<SiteVersion> versions, DateOnly last, DateOnly first, IReadOnlyList<LogEntry> log, DateTimeOffset asOf, long? upTo)
    {
        if (last < first)
        {
            return [];
        }

        if (upTo is { } limit)
        {
            return WeatherBook.Compute(site, versions, first, last, [], log, asOf, limit);
        }

        // What is later than the instant can only have a say in the day before it and in its own.
        var settled = versions[^1].Site.Clock.DateOf(asOf).AddDays(-2);
        var stored = settled < first ? [] : WeatherBook.Through(site, settled < last ? settled : last, first);
        var next = first.AddDays(stored.Count);
        return [.. stored, .. WeatherBook.Compute(site, versions, next, last, stored, log, asOf, long.MaxValue)];
    }

    /// <summary>What counts by now, and orders for later that had come in by now: within the instant's minute, since a sheet is as of the minute that has begun.</summary>
    private static (IReadOnlyList<LogEntry> Used, IReadOnlyList<LogEntry> NotUsed) Split(OpenSite site, SiteClock clock, DateTimeOffset asOf, long upTo)
    {
        var holds = site.Ledger.Logbook.Effective(upTo);
        var byUse = holds.ToLookup(e => e.CountsFrom(clock) <= asOf);
        var (arrived, all) = (site.Ledger.WatermarkAt(asOf.AddMinutes(1).AddTicks(-1)), Math.Min(upTo, site.Ledger.Watermark));
        var ahead = (arrived < all ? site.Ledger.Logbook.Effective(arrived) : holds).Where(e => e.IsOrder && e.CountsFrom(clock) > asOf);
        return ([.. byUse[true], .. ahead], [.. byUse[false]]);
    }

    /// <summary>The last days' readings, or from as far back as the newest reading lies.</summary>
    private static IReadOnlyDictionary<string, IReadOnlyList<Reading>> ReadingsNear(OpenSite site, Site today, DateOnly date, DateTimeOffset asOf, long upTo)
    {
        foreach (var days in (int[])[3, 60])
        {
            var near = ReadingsBook.Between(site, date.AddDays(-days), date.AddDays(1), upTo);
            if (WeatherDays.Newest(today, asOf, near) is not null)
            {
                return near;
            }
        }

        return ReadingsBook.Between(site, DateOnly.MinValue, date.AddDays(1), upTo);
    }

    private static IReadOnlyList<Reading> Night(Site site, DateOnly date, DateTimeOffset asOf, IReadOnlyList<Reading> readings)
    {
        var begin = site.Clock.ToInstant(date.AddDays(-1), NightBegins);
        return [.. readings.Where(r => r.Begin >= begin && r.End <= asOf)];
    }
}
