using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Which stations orders and watering rules take out of the starts of the nights; starts of a program with the same ones share one set, and are laid out once.</summary>
internal sealed class StationsOut(AdviceContext context)
{
    private readonly bool _isNone = context.Off.IsEmpty && context.Rules.Count == 0;
    private readonly Dictionary<(ProgramKey Program, DateTimeOffset At), IReadOnlySet<StationKey>?> _of = [];
    private readonly List<HashSet<StationKey>> _sets = [];

    /// <summary>Null = all of its stations run, or the start as a whole must not.</summary>
    public IReadOnlySet<StationKey>? Of(PlannedProgram program, ProgramStart start)
    {
        if (_isNone)
        {
            return null;
        }

        if (!_of.TryGetValue((program.Key, start.At), out var stations))
        {
            _of[(program.Key, start.At)] = stations = Shared(OrderHits.StationsOf(context, program, start));
        }

        return stations;
    }

    private HashSet<StationKey>? Shared(IReadOnlyList<StationKey> stations)
    {
        if (stations.Count == 0)
        {
            return null;
        }

        var known = _sets.Find(s => s.SetEquals(stations));
        if (known is null)
        {
            _sets.Add(known = [.. stations]);
        }

        return known;
    }
}
