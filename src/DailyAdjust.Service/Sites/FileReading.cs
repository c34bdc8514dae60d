using System.Collections.Concurrent;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Formats;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Service.Sites;

/// <summary>One day of a file, packed as the ledger keeps it: packed days wait in little room.</summary>
internal readonly record struct PackedDay(DateOnly Date, byte[] Body);

/// <summary>
/// A weather file that is being read on a thread of its own, while the one that owns the ledger keeps its bytes and then its days: some days at a time are packed
/// by whoever is free and handed over in their order, and no more than some of them wait.
/// </summary>
internal sealed class FileReading : IDisposable
{
    /// <summary>Of what is packed at a time.</summary>
    private const int FewestReadings = 4_000;

    /// <summary>As many as are read while the file's bytes are packed and kept: about 20 MB of readings if none of them is packed yet.</summary>
    private const int PacksWaiting = 32;

    private readonly BlockingCollection<Task<PackedDay[]>> _packs = new(PacksWaiting);
    private readonly CancellationTokenSource _stop = new();
    private readonly Task<ReadingsReport> _task;
    private List<ReadingDay> _unpacked = [];
    private int _readings;

    /// <param name="name">The file's name.</param>
    /// <param name="known">Bytes of its beginning that were read before.</param>
    /// <param name="maps">How it is read.</param>
    /// <param name="open">Its bytes, from the first on.</param>
    public FileReading(string name, long known, ColumnMaps maps, Func<Stream> open)
    {
        var stop = _stop.Token;
        _task = Task.Factory.StartNew(
            () =>
            {
                try
                {
                    var report = maps.Spans.Count == 1 ? ReadAsItComes(name, known, maps, open, stop) : ReadBySpans(name, known, maps, open, stop);
                    Pack(stop);
                    return report;
                }
                finally
                {
                    _packs.CompleteAdding();
                }
            },
            stop,
            TaskCreationOptions.LongRunning,
            TaskScheduler.Default);
    }

    /// <summary>
    /// The file's days; one comes again where rows are far out of order, and then only has those rows. Read to their end before <see cref="Report"/>.
    /// </summary>
    public IEnumerable<PackedDay> Days => _packs.GetConsumingEnumerable().SelectMany(pack => pack.GetAwaiter().GetResult());

    /// <summary>Counts and problems; of the newest map where several hold.</summary>
    /// <exception cref="IOException">The bytes could not be read.</exception>
    public ReadingsReport Report => _task.GetAwaiter().GetResult();

    public void Dispose()
    {
        _stop.Cancel();
        try
        {
            _task.Wait();
        }
        catch (AggregateException)
        {
            // Whoever wanted the report has seen why; nobody else does.
        }

        _stop.Dispose();
        _packs.Dispose();
    }

    private void Add(ReadingDay day, CancellationToken stop)
    {
        _unpacked.Add(day);
        _readings += day.Readings.Count;
        if (_readings >= FewestReadings)
        {
            Pack(stop);
        }
    }

    private void Pack(CancellationToken stop)
    {
        var days = _unpacked;
        (_unpacked, _readings) = ([], 0);
        _packs.Add(Task.Run(() => days.ConvertAll(day => new PackedDay(day.Date, ReadingBlock.Write(day.Readings))).ToArray(), stop), stop);
    }

    private ReadingsReport ReadAsItComes(string name, long known, ColumnMaps maps, Func<Stream> open, CancellationToken stop)
    {
        using var bytes = open();
        return WeatherFileReader.Read(name, bytes, maps.Newest.Source, maps.Newest.Clock, day => Add(day, stop), known);
    }

    /// <summary>
    /// Every day with the map that holds on it. Days from before an edit of the map, in a file that only the newest map can read, are read with that one.
    /// </summary>
    private ReadingsReport ReadBySpans(string name, long known, ColumnMaps maps, Func<Stream> open, CancellationToken stop)
    {
        var older = new HashSet<DateOnly>();
        foreach (var span in maps.Spans.Where(span => !ReferenceEquals(span, maps.Newest)))
        {
            using var bytes = open();
            WeatherFileReader.Read(
                name,
                bytes,
                span.Source,
                span.Clock,
                day =>
                {
                    if (day.Date >= span.From && day.Date < span.Until)
                    {
                        older.Add(day.Date);
                        Add(day, stop);
                    }
                },
                known);
        }

        using var whole = open();
        return WeatherFileReader.Read(
            name,
            whole,
            maps.Newest.Source,
            maps.Newest.Clock,
            day =>
            {
                if (!older.Contains(day.Date))
                {
                    Add(day, stop);
                }
            },
            known);
    }
}
