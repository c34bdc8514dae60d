using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Formats;
using DailyAdjust.Files.Readings;
using DailyAdjust.Ledger.Inputs;
using LedgerBlock = DailyAdjust.Ledger.Derived.ReadingDay;

namespace DailyAdjust.Service.Sites;

/// <summary>What a weather file holds, day by day, under the maps that hold on those days.</summary>
/// <param name="Report">Counts and problems, of the newest map.</param>
/// <param name="Days">Readings by day.</param>
public sealed record FileReadings(ReadingsReport Report, IReadOnlyDictionary<DateOnly, IReadOnlyList<Reading>> Days);

/// <summary>Readings in the ledger: blocks by station, day and file, joined in the order of arrival.</summary>
public static class ReadingsBook
{
    /// <summary>Reads a file's bytes; changes nothing.</summary>
    public static FileReadings Read(string name, Stream bytes, ColumnMaps maps)
    {
        var days = new SortedDictionary<DateOnly, IReadOnlyList<Reading>>();
        ReadingsReport? newest = null;
        foreach (var span in maps.Spans.Reverse())
        {
            bytes.Position = 0;
            var found = new List<ReadingDay>();
            var report = WeatherFileReader.Read(name, bytes, span.Source, span.Clock, found.Add);
            newest ??= report;

            // A day comes again where rows are far out of order. Days from before an edit of the map, in a file that only
            // the newest map can read, are read with that one.
            var isNewest = ReferenceEquals(span, maps.Newest);
            foreach (var day in found.GroupBy(d => d.Date).Where(d => isNewest || (d.Key >= span.From && d.Key < span.Until)))
            {
                days[day.Key] = ReadingMerge.Merge(day.Select(part => part.Readings));
            }
        }

        return new(newest!, days);
    }

    /// <summary>Keeps what a stored file says beyond what was known before it.</summary>
    /// <returns>The days of weather that it changed, ascending; a forecast changes none.</returns>
    public static IReadOnlyList<DateOnly> Keep(OpenSite site, string stationId, long seq, string mapSha, FileReadings file)
    {
        if (string.Equals(stationId, WeatherSetup.ForecastId, StringComparison.Ordinal))
        {
            ForecastBook.Keep(site, seq, mapSha, file);
            return [];
        }

        var changed = new List<DateOnly>();
        foreach (var (day, readings) in file.Days)
        {
            var known = Join(site.Ledger.Readings.Between(stationId, day, day, seq - 1));
            var joined = ReadingMerge.Merge([known, readings]);
            if (!ReadingBlock.Write(known).AsSpan().SequenceEqual(ReadingBlock.Write(joined)))
            {
                site.Ledger.Readings.Put([new LedgerBlock(stationId, day, seq, mapSha, ReadingBlock.Write(readings))]);
                changed.Add(day);
            }
        }

        SetRead(site, seq, mapSha, file.Report);
        return changed;
    }

    /// <summary>Notes that a file was read to its end, and with what outcome.</summary>
    internal static void SetRead(OpenSite site, long seq, string mapSha, ReadingsReport report) => site.Ledger.Files.SetRead(new FileRead(
        seq, mapSha, report.RowsRead, report.RowsSetAside, report.RowsRefused, string.Join('\n', report.Problems)));

    /// <summary>Files that were read with another column map, or whose readings were deleted, are read again in order of arrival.</summary>
    public static void ReadAgainWhereNeeded(OpenSite site)
    {
        foreach (var station in site.Newest.Weather.Sources)
        {
            var maps = ColumnMaps.Of(station.Id, site.Versions);
            foreach (var file in site.Ledger.Files.NotReadWith(station.Id, maps.Sha))
            {
                using var bytes = new MemoryStream(site.Ledger.Files.ReadBytes(file.Seq), writable: false);
                var readings = Read(file.Name, bytes, maps);
                site.Ledger.Readings.Forget(file.Seq);
                Keep(site, station.Id, file.Seq, maps.Sha, readings);
            }
        }
    }

    /// <summary>Every station's readings that begin in these days, as known up to an input, ascending.</summary>
    public static IReadOnlyDictionary<string, IReadOnlyList<Reading>> Between(OpenSite site, DateOnly first, DateOnly last, long upTo = long.MaxValue) =>
        StationIds(site).ToDictionary(
            id => id,
            id => Join(site.Ledger.Readings.Between(id, first, last, upTo)),
            StringComparer.Ordinal);

    /// <summary>The last day of any station with a reading; null = there is none.</summary>
    public static DateOnly? LastDay(OpenSite site, long upTo = long.MaxValue) =>
        StationIds(site).Select(id => site.Ledger.Readings.LastDay(id, upTo)).Max();

    /// <summary>Of every version: days before an edit keep the stations that they had.</summary>
    private static IEnumerable<string> StationIds(OpenSite site) =>
        site.Versions.SelectMany(v => v.Site.Weather.Stations).Select(s => s.Id).Distinct(StringComparer.Ordinal);

    private static IReadOnlyList<Reading> Join(IReadOnlyList<LedgerBlock> blocks) =>
        blocks.Count == 0 ? [] : ReadingMerge.Merge(blocks.Select(block => ReadingBlock.Read(block.Body)));
}
