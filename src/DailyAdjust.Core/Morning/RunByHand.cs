using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>What a night that failed left to be run by hand.</summary>
public sealed record RunByHand
{
    /// <summary>UTC; null = the site does not say when play begins.</summary>
    public DateTimeOffset? FirstPlay { get; init; }

    /// <summary>Boxes that run at the same time, one group after the other, the most important ground first.</summary>
    public required IReadOnlyList<HandGroup> Groups { get; init; }

    /// <summary>Needs water and cannot be done before play.</summary>
    public required IReadOnlyList<HandBox> NotBeforePlay { get; init; }

    /// <summary>Needs water, and asks alone more than the pump gives now.</summary>
    public required IReadOnlyList<MissedStation> BeyondPump { get; init; }

    /// <summary>Did not run, and can wait for its next start.</summary>
    public required IReadOnlyList<StationKey> CanWait { get; init; }

    /// <summary>Did not run, and must not now: an order, the season or a watering rule.</summary>
    public required IReadOnlyList<StationKey> MustNotRun { get; init; }
}

/// <summary>Boxes that run at the same time.</summary>
/// <param name="From">UTC.</param>
/// <param name="To">When the last of them is done, UTC.</param>
/// <param name="FlowLPerMin">The most they ask together; what is not known counts 0.</param>
/// <param name="CapacityLPerMin">The least the pump gives then; null = nothing limits it.</param>
/// <param name="Boxes">By priority of their ground, then in walking order.</param>
public sealed record HandGroup(DateTimeOffset From, DateTimeOffset To, double FlowLPerMin, double? CapacityLPerMin, IReadOnlyList<HandBox> Boxes);

/// <summary>What to start on one box: a program, or stations one after another.</summary>
/// <param name="Controller">Which.</param>
/// <param name="Program">All of it ran dry and is needed: it can be started as a whole; null = station by station.</param>
/// <param name="Percent">At which the program is to run; null = station by station.</param>
/// <param name="Stations">In the order in which they run.</param>
public sealed record HandBox(string Controller, string? Program, double? Percent, IReadOnlyList<MissedStation> Stations);

/// <summary>A station that did not get its water and needs it now.</summary>
/// <param name="Station">Which.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Area">Of its ground.</param>
/// <param name="MissedMinutes">Of the night, not rounded.</param>
/// <param name="RunMinutes">Of them run by hand since.</param>
/// <param name="Minutes">Left to run now, on the controller's step: never more than the ground has room for.</param>
/// <param name="FlowLPerMin">Null = unknown.</param>
public sealed record MissedStation(StationKey Station, string Name, string Area, double MissedMinutes, double RunMinutes, double Minutes, double? FlowLPerMin);
