using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Readings;
using LedgerBlock = DailyAdjust.Ledger.Derived.ReadingDay;

namespace DailyAdjust.Service.Sites;

/// <summary>
/// Forecasts in the ledger: every file's days stand by themselves, each with the instant at which it was made, so that a look back never sees what
/// was only forecast later. No day of weather rests on them.
/// </summary>
public static class ForecastBook
{
    /// <summary>As far as a sheet looks ahead.</summary>
    private const int DaysAhead = 21;

    /// <summary>
    /// Keeps what a stored file says. It counts from the time at which it says that it was made, else from the one that <see cref="MadeAt"/> takes: all of it
    /// is kept, so that reading the file again gives the same.
    /// </summary>
    internal static void Keep(OpenSite site, long seq, string mapSha, FileReading file)
    {
        var days = file.Days.GroupBy(day => day.Date).Select(day => (Date: day.Key, Readings: ReadingMerge.Merge(day.Select(part => ReadingBlock.Read(part.Body))))).ToList();
        if ((file.Report.Issued ?? MadeAt(file.Report, site.Ledger.Files.Get(seq).At)) is { } issued)
        {
            site.Ledger.Readings.Put(days.Select(day => new LedgerBlock(
                WeatherSetup.ForecastId, day.Date, seq, mapSha, ForecastBlock.Write(new(issued, day.Readings)))));
        }
    }

    /// <summary>
    /// When a forecast was made that does not say so: at the begin of its first interval; but when it arrived, where that begin is later still, or where it
    /// shows more than a day that had passed beside what was to come. Null = nothing is in it.
    /// </summary>
    internal static DateTimeOffset? MadeAt(ReadingsReport report, DateTimeOffset arrived)
    {
        if (report is not { Begin: { } begin, End: { } end })
        {
            return null;
        }

        var showsPast = end > arrived && arrived - begin > TimeSpan.FromDays(1);
        return begin > arrived || showsPast ? arrived : begin;
    }

    /// <summary>What is known at an instant of the days from a sheet's date on; null = no forecast had been made, or the site has none.</summary>
    /// <param name="site">Opened.</param>
    /// <param name="today">The version that holds on the date.</param>
    /// <param name="date">The sheet's date.</param>
    /// <param name="asOf">Forecasts made later are not looked at.</param>
    /// <param name="upTo">Nor are those that arrived after this input.</param>
    public static KnownForecast? Known(OpenSite site, Site today, DateOnly date, DateTimeOffset asOf, long upTo)
    {
        if (today.Weather.Forecast is null || site.Ledger.Readings.LastDay(WeatherSetup.ForecastId, upTo) is not { } last)
        {
            return null;
        }

        // Of a forecast that has run out only its age is told.
        var blocks = site.Ledger.Readings.Between(WeatherSetup.ForecastId, last < date ? last : date, date.AddDays(DaysAhead), upTo);
        return KnownForecast.Of(blocks.OrderBy(b => b.Seq).Select(b => ForecastBlock.Read(b.Body)), asOf, today.Report.WeatherMaxAge);
    }
}
