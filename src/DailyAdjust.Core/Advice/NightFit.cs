using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>One program's run of one start after the advice, UTC.</summary>
/// <param name="Date">The start's date.</param>
/// <param name="Program">Which.</param>
/// <param name="Begins">When its first station starts (pushed back where the controller stacks).</param>
/// <param name="Finishes">When its last station ends.</param>
public sealed record ProgramRun(DateOnly Date, ProgramKey Program, DateTimeOffset Begins, DateTimeOffset Finishes);

/// <summary>Two programs of one controller that run into each other.</summary>
/// <param name="LargestPercent">The largest percentage of the first that avoids it, on the controller's step; 0 = none does.</param>
public sealed record ProgramOverlapFound(string Controller, string First, string Second, DateOnly Date, double Minutes, double LargestPercent);

/// <summary>A run that leaves the watering window, UTC.</summary>
/// <param name="IsGrowIn">It waters new turf by day, as was ordered: no start of it is in the wrong place.</param>
public sealed record OutsideWindow(string Controller, string Program, DateOnly Date, DateTimeOffset Begins, DateTimeOffset Finishes, bool IsGrowIn);

/// <summary>Minutes in which all controllers together ask more than the pump gives, L/min.</summary>
public sealed record PumpExceeded(DateTimeOffset From, DateTimeOffset To, double FlowLPerMin, double CapacityLPerMin);

/// <summary>Two stations that must not run together and would, UTC.</summary>
/// <param name="Group">What the site calls what they share.</param>
/// <param name="First">The one that begins first.</param>
/// <param name="Second">The other.</param>
/// <param name="Date">Of the start in which the other runs.</param>
public sealed record StationClash(string Group, StationKey First, StationKey Second, DateOnly Date, DateTimeOffset From, DateTimeOffset To);

/// <summary>A number that was cut because the night is too short or the pump gives too little.</summary>
/// <param name="FromPercent">What the ground asks, on the dial.</param>
/// <param name="ToPercent">What fits; 0 = it stays off.</param>
/// <param name="Short">What is missing of a start; null where none of its zones was reckoned.</param>
/// <param name="StartThatFits">A first start, near the present one, at which it would not have to be cut; null = none was found.</param>
public sealed record FitCut(ProgramKey Program, double FromPercent, double ToPercent, Shortfall? Short, TimeOnly? StartThatFits)
{
    /// <summary>What a larger number would run into; null = it cannot be told.</summary>
    public CutCause? Cause { get; init; }

    /// <summary>That start fits only where the other starts that the sheet proposes are changed too.</summary>
    public bool HoldsWithOthers { get; init; }
}

/// <summary>Other starts at which a program adds nothing to what does not fit. Several of one fit hold together, and with the starts of its cuts.</summary>
/// <param name="Program">Which.</param>
/// <param name="From">Its first start now.</param>
/// <param name="To">Its first start then; its others move by as much.</param>
public sealed record StartMove(ProgramKey Program, TimeOnly From, TimeOnly To);

/// <summary>A run that may begin and is still on when an order or the hours of a watering rule forbid its water, UTC.</summary>
/// <param name="Program">Which.</param>
/// <param name="Start">Its start.</param>
/// <param name="Stations">Those that run into it; empty = all that the program has.</param>
/// <param name="From">From when on they must not run.</param>
/// <param name="To">When the last of them ends, or they may run again.</param>
/// <param name="EarlierBy">By how much it would have to start earlier to end in time; null = that is no way out, it would not fit beside the others and the starts that are proposed, or another start is proposed for it.</param>
/// <param name="Why">A plain clause.</param>
public sealed record ReachingRun(ProgramKey Program, ProgramStart Start, IReadOnlyList<StationKey> Stations, DateTimeOffset From, DateTimeOffset To, TimeSpan? EarlierBy, Phrase Why);

/// <summary>A station that alone asks more than the pump gives: no start, no fewer minutes and no other days help.</summary>
/// <param name="Program">That runs it.</param>
/// <param name="Station">Which.</param>
/// <param name="FlowLPerMin">What it asks, L/min.</param>
/// <param name="CapacityLPerMin">The most that the pump gives within 12 hours of its run, L/min.</param>
public sealed record BeyondPump(ProgramKey Program, StationKey Station, double FlowLPerMin, double CapacityLPerMin);

/// <summary>Whether the changed programs still fit the nights of the horizon.</summary>
public sealed record NightFit(
    IReadOnlyList<ProgramRun> Runs,
    IReadOnlyList<ProgramOverlapFound> Overlaps,
    IReadOnlyList<OutsideWindow> Window,
    IReadOnlyList<PumpExceeded> Pump,
    IReadOnlyList<FitCut> Cuts)
{
    /// <summary>Nothing of the nights themselves is in the way; orders and watering rules are another matter.</summary>
    public bool IsClean => Overlaps.Count + Pump.Count + Clashes.Count == 0 && Window.All(w => w.IsGrowIn);

    /// <summary>In the order of the site's groups, then of time.</summary>
    public IReadOnlyList<StationClash> Clashes { get; init; } = [];

    /// <summary>By controller, then by start.</summary>
    public IReadOnlyList<ReachingRun> Reaching { get; init; } = [];

    /// <summary>The least important ground first.</summary>
    public IReadOnlyList<StartMove> Moves { get; init; } = [];

    /// <summary>Programs with a part in what does not fit even with the moves: no other start was found for them. In walking order.</summary>
    public IReadOnlyList<ProgramKey> NoStartFits { get; init; } = [];

    /// <summary>Those of <see cref="NoStartFits"/> that do not run every day: starts were looked for on their own dates only.</summary>
    public IReadOnlyList<ProgramKey> KeptOnDate { get; init; } = [];

    /// <summary>Those of <see cref="NoStartFits"/> with a station that alone asks more than the pump gives; one station each.</summary>
    public IReadOnlyList<BeyondPump> BeyondPump { get; init; } = [];

    /// <summary>Programs with a part in what does not fit, for which no other start was looked for yet. In walking order.</summary>
    public IReadOnlyList<ProgramKey> NotLookedFor { get; init; } = [];
}
