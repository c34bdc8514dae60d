using DailyAdjust.Core.Weather;
using LedgerBlock = DailyAdjust.Ledger.Derived.ReadingDay;

namespace DailyAdjust.Service.Sites;

/// <summary>Readings in the ledger: blocks by station, day and file, joined in the order of arrival.</summary>
public static class ReadingsBook
{
    /// <summary>Files that were read with another column map, or whose readings were deleted, are read again in order of arrival.</summary>
    public static void ReadAgainWhereNeeded(OpenSite site)
    {
        foreach (var source in site.Newest.Weather.Sources)
        {
            var maps = ColumnMaps.Of(source.Id, site.Versions);
            foreach (var file in site.Ledger.Files.NotReadWith(source.Id, maps.Sha))
            {
                site.Ledger.Readings.Forget(file.Seq);
                using var bytes = StoredCopy.Of(site, file.Seq);
                var known = !source.IsForecast && file.BaseSeq is { } begin && string.Equals(site.Ledger.Files.Get(begin).Source, source.Id, StringComparison.Ordinal) ? file.BaseLength : 0;
                using var reading = new FileReading(file.Name, known, maps, () => bytes.Open());
                new ReadingsKeeper(site, source.Id, file.Seq, maps.Sha).Keep(reading);
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

    /// <summary>Blocks of one station and day, or several, as one list, ascending.</summary>
    public static IReadOnlyList<Reading> Join(IReadOnlyList<LedgerBlock> blocks) =>
        blocks.Count == 0 ? [] : ReadingMerge.Merge(blocks.Select(block => ReadingBlock.Read(block.Body)));
}
