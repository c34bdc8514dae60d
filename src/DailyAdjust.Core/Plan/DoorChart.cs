using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>One station on a controller's chart.</summary>
/// <param name="Minutes">At 100 %, as the controller takes them, by program in their order; null = not in it.</param>
public sealed record DoorStation(string Id, string Name, string Area, IReadOnlyList<double?> Minutes);

/// <summary>One program on a controller's chart.</summary>
/// <param name="Finishes">When each start's last station ends at 100 %, were no other program in its way.</param>
public sealed record DoorProgram(string Id, string Name, IReadOnlyList<TimeOnly> Starts, WaterDays Days, IReadOnlyList<TimeOnly> Finishes);

/// <summary>What hangs on a controller's door: everything that a person keys in.</summary>
public sealed record DoorChart(Controller Controller, IReadOnlyList<DoorProgram> Programs, IReadOnlyList<DoorStation> Stations)
{
    /// <returns>Null where the site has no such controller.</returns>
    public static DoorChart? Of(Site site, string controllerId)
    {
        if (site.ControllerOf(controllerId) is not { } controller)
        {
            return null;
        }

        var stations = site.Stations.Where(s => string.Equals(s.Key.Controller, controllerId, StringComparison.Ordinal)).ToList();
        double? Minutes(Station station, string program) => station.BaseMinutes.TryGetValue(program, out var minutes) ? RunMinutes.At(controller, minutes, 100) : null;
        return new(
            controller,
            [.. controller.Programs.Select(p =>
            {
                var block = StartBlock.Of(controller, stations.Select(s => (s, Minutes(s, p.Id) ?? 0)));
                return new DoorProgram(p.Id, p.Name, p.Starts, p.Days, [.. p.Starts.Select(s => s.AddMinutes(block.Minutes))]);
            })],
            [.. stations.Select(s => new DoorStation(s.Key.Station, s.Name, s.Area.Name, [.. controller.Programs.Select(p => Minutes(s, p.Id))]))]);
    }

    /// <summary>Whether the same is to be keyed in, and the same printed.</summary>
    public bool IsSameAs(DoorChart other) =>
        string.Equals(Controller.Place, other.Controller.Place, StringComparison.Ordinal)
        && Controller.ClockStaysStandard == other.Controller.ClockStaysStandard
        && Controller.Applies == other.Controller.Applies
        && Programs.Count == other.Programs.Count
        && Programs.Zip(other.Programs).All(p => Same(p.First, p.Second))
        && Stations.Count == other.Stations.Count
        && Stations.Zip(other.Stations).All(s => Same(s.First, s.Second));

    private static bool Same(DoorProgram a, DoorProgram b) => (a.Id, a.Name) == (b.Id, b.Name)
        && a.Starts.SequenceEqual(b.Starts) && a.Finishes.SequenceEqual(b.Finishes)
        && (a.Days is WaterDays.Weekdays x && b.Days is WaterDays.Weekdays y ? x.Days.Order().SequenceEqual(y.Days.Order()) : a.Days == b.Days);

    private static bool Same(DoorStation a, DoorStation b) => (a.Id, a.Name, a.Area) == (b.Id, b.Name, b.Area) && a.Minutes.SequenceEqual(b.Minutes);
}

/// <summary>A chart with its number: a person at the door sees whether a newer one hangs in the office.</summary>
/// <param name="Revision">From 1; counts the versions of the site in which this controller's chart differs from the one before.</param>
/// <param name="From">The first date on which the version holds that brought this chart.</param>
public sealed record DoorCard(DoorChart Chart, int Revision, DateOnly From)
{
    /// <param name="history">Every version of the site in the order in which they were taken in, the newest last; at least one.</param>
    /// <param name="controllerId">A controller of the newest.</param>
    /// <exception cref="ArgumentException">The newest version has no such controller.</exception>
    public static DoorCard Of(IReadOnlyList<SiteVersion> history, string controllerId)
    {
        if (DoorChart.Of(history[^1].Site, controllerId) is null)
        {
            throw new ArgumentException("The newest version has no such controller.", nameof(controllerId));
        }

        DoorCard? card = null;
        foreach (var version in history)
        {
            if (DoorChart.Of(version.Site, controllerId) is { } chart && (card is null || !chart.IsSameAs(card.Chart)))
            {
                card = new(chart, (card?.Revision ?? 0) + 1, version.From);
            }
        }

        return card!;
    }
}
