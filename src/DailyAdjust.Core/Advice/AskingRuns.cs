using DailyAdjust.Core.Irrigation;

namespace DailyAdjust.Core.Advice;

/// <summary>Which runs ask water of the pump, asked span by span in order of time: a run is looked at only while it is on.</summary>
internal sealed class AskingRuns
{
    private readonly List<Asking> _toCome;

    /// <summary>Begun and not over, in the order of the runs.</summary>
    private readonly List<Asking> _on = [];
    private int _next;

    /// <param name="runs">Of the nights.</param>
    public AskingRuns(IReadOnlyList<PlannedRun> runs) =>
        _toCome = [.. runs.Select((run, place) => new Asking(run, place)).Where(a => a.Spans.Count > 0).OrderBy(a => a.Spans[0].Begins)];

    /// <summary>Those with a station of known flow that is on in a span, in the order of the runs.</summary>
    /// <param name="from">UTC; not before that of the span asked before.</param>
    /// <param name="to">UTC, excluded.</param>
    public IReadOnlyList<PlannedRun> In(DateTimeOffset from, DateTimeOffset to)
    {
        for (; _next < _toCome.Count && _toCome[_next].Spans[0].Begins < to; _next++)
        {
            var place = _on.FindIndex(a => a.Place > _toCome[_next].Place);
            _on.Insert(place < 0 ? _on.Count : place, _toCome[_next]);
        }

        _on.RemoveAll(a => a.IsOver(from));
        return [.. _on.Where(a => a.Spans[a.At].Begins < to).Select(a => a.Run)];
    }

    private sealed class Asking
    {
        public Asking(PlannedRun run, int place)
        {
            (Run, Place) = (run, place);
            foreach (var station in run.Stations.Where(s => s.Station.FlowLPerMin is > 0))
            {
                if (Spans.Count > 0 && Spans[^1].Ends == station.Begins)
                {
                    Spans[^1] = (Spans[^1].Begins, station.Ends);
                }
                else
                {
                    Spans.Add((station.Begins, station.Ends));
                }
            }
        }

        public PlannedRun Run { get; }

        public int Place { get; }

        /// <summary>In which any of its stations asks water, in order of time.</summary>
        public List<(DateTimeOffset Begins, DateTimeOffset Ends)> Spans { get; } = [];

        /// <summary>The span that is on or comes next.</summary>
        public int At { get; private set; }

        public bool IsOver(DateTimeOffset at)
        {
            while (At < Spans.Count && Spans[At].Ends <= at)
            {
                At++;
            }

            return At == Spans.Count;
        }
    }
}
