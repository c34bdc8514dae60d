using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Ledger.Inputs;
using LedgerBlock = DailyAdjust.Ledger.Derived.ReadingDay;

namespace DailyAdjust.Service.Sites;

/// <summary>Keeps what one file says beyond what was known before it: blocks of the days that it changes, one after another.</summary>
/// <param name="site">Opened for writing; a step is under way, or each call is one.</param>
/// <param name="stationId">Whose readings they are.</param>
/// <param name="seq">The file's input number.</param>
/// <param name="mapSha">What it is read with.</param>
internal sealed class ReadingsKeeper(OpenSite site, string stationId, long seq, string mapSha)
{
    /// <summary>The days of which earlier files may know something; a station's first file need not ask for each.</summary>
    private readonly (DateOnly First, DateOnly Last)? _before =
        site.Ledger.Readings.FirstDay(stationId, seq - 1) is { } first && site.Ledger.Readings.LastDay(stationId, seq - 1) is { } last ? (first, last) : null;

    private readonly HashSet<DateOnly> _kept = [];
    private (DateOnly First, DateOnly Last)? _changed;

    /// <summary>Keeps a file's days and what came of reading it.</summary>
    /// <returns>The first and the last day of weather that it changed; null = none.</returns>
    public (DateOnly First, DateOnly Last)? Keep(FileReading file)
    {
        if (string.Equals(stationId, WeatherSetup.ForecastId, StringComparison.Ordinal))
        {
            ForecastBook.Keep(site, seq, mapSha, file);
        }
        else
        {
            foreach (var day in file.Days)
            {
                Keep(day);
            }
        }

        var report = file.Report;
        site.Ledger.Files.SetRead(new FileRead(
            seq, mapSha, report.RowsRead, report.RowsSetAside, report.RowsRefused, string.Join('\n', report.Problems)));
        return _changed;
    }

    private void Keep(PackedDay day)
    {
        var isKept = _kept.Contains(day.Date);
        var body = isKept ? ReadingBlock.Write(ReadingMerge.Merge([Own(day.Date), ReadingBlock.Read(day.Body)])) : day.Body;

        // What this file said of the day first and takes back now has to be put right, whether or not earlier files know it.
        if (!isKept && _before is { } before && day.Date >= before.First && day.Date <= before.Last && IsKnown(day.Date, body))
        {
            return;
        }

        site.Ledger.Readings.Put([new LedgerBlock(stationId, day.Date, seq, mapSha, body)]);
        _kept.Add(day.Date);
        _changed = _changed is { } range
            ? (day.Date < range.First ? day.Date : range.First, day.Date > range.Last ? day.Date : range.Last)
            : (day.Date, day.Date);
    }

    /// <summary>Earlier files say all of it.</summary>
    private bool IsKnown(DateOnly date, byte[] body)
    {
        var known = ReadingsBook.Join(site.Ledger.Readings.Between(stationId, date, date, seq - 1));
        return known.Count > 0
            && ReadingBlock.Write(known).AsSpan().SequenceEqual(ReadingBlock.Write(ReadingMerge.Merge([known, ReadingBlock.Read(body)])));
    }

    private IReadOnlyList<Reading> Own(DateOnly date) =>
        ReadingsBook.Join([.. site.Ledger.Readings.Between(stationId, date, date, seq).Where(block => block.Seq == seq)]);
}
