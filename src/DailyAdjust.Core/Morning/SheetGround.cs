using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>What people found in the ground, what they water by hand, and base minutes that no percentage puts right.</summary>
public sealed record SheetGround
{
    /// <summary>Hot spots that somebody probed and nobody has hosed since, newest first.</summary>
    public IReadOnlyList<DrySpot> Spots { get; init; } = [];

    /// <summary>Reckoning and probe side by side, newest first.</summary>
    public IReadOnlyList<ProbedZone> Probes { get; init; } = [];

    /// <summary>Stations of areas watered by hand, in station order.</summary>
    public IReadOnlyList<HandWatered> ByHand { get; init; } = [];

    /// <summary>Stations set aside for weeks, in station order.</summary>
    public IReadOnlyList<MinutesToChange> Minutes { get; init; } = [];
}

/// <summary>How much a zone's figure rests on: it tells whether to probe before the hose.</summary>
/// <param name="Since">The last date on which it was full or probed; null = not in the days at hand.</param>
/// <param name="Probed">It was probed then; otherwise full.</param>
/// <param name="EstimatedDays">Of the last 7 days, how many whose reference ET or rain was not measured whole.</param>
/// <param name="RateAssumed">Nobody measured its precipitation rate, nor does it stand in a catalogue.</param>
public sealed record HowSure(DateOnly? Since, bool Probed, int EstimatedDays, bool RateAssumed);

/// <summary>A dry spot in a zone.</summary>
/// <param name="Percent">Water content by volume, %.</param>
/// <param name="MissingMm">Below field capacity over the root depth, mm; null = the soil has no field capacity.</param>
public sealed record DrySpot(StationKey Station, string Name, string Area, LogTime Time, double Percent, double? MissingMm, string Note);

/// <summary>What the balance said of a zone right before a probe, and what the probe said.</summary>
/// <param name="At">UTC.</param>
/// <param name="ReckonedMm">Missing by the balance, mm.</param>
/// <param name="ProbedMm">Missing by the probe, mm.</param>
public sealed record ProbedZone(StationKey Station, string Name, string Area, DateTimeOffset At, double ReckonedMm, double ProbedMm)
{
    /// <summary>Cut off the probe to keep it within what the soil holds, mm: below 0 = wetter than field capacity, above 0 = drier than wilting point.</summary>
    public double CutMm { get; init; }

    /// <summary>Of the last reading; empty = not said.</summary>
    public string Instrument { get; init; } = "";

    /// <summary>How deep its rods reach, m; null = not said.</summary>
    public double? RodLengthM { get; init; }

    /// <summary>How deep the roots reach, m.</summary>
    public required double RootDepthM { get; init; }

    /// <summary>Rods and roots end at the same depth.</summary>
    public bool RodsEndAtRoots => RodLengthM is { } rod && AreSameDepth(rod, RootDepthM);

    /// <summary>The zone's reading before this one was, by what was said, made with another moisture meter or other rods.</summary>
    public bool IsOtherInstrument { get; init; }

    /// <summary>Whether two depths in the soil are one to a person with a rule (to 1 mm), m.</summary>
    internal static bool AreSameDepth(double one, double other) => Math.Abs(one - other) < 0.001;
}

/// <summary>A station of an area watered by hand.</summary>
/// <param name="Since">The date on which it was last full, or the first of the days at hand.</param>
/// <param name="WasFull">It was full then.</param>
/// <param name="EtoMm">Reference ET of the days after <paramref name="Since"/>, mm.</param>
/// <param name="EtoL">The same on its ground, L; null where the ground is unknown.</param>
/// <param name="MissingMm">By the balance, rain and hose counted, mm.</param>
/// <param name="MissingL">The same on its ground, L.</param>
public sealed record HandWatered(StationKey Station, string Name, string Area, DateOnly Since, bool WasFull, double EtoMm, double? EtoL, double MissingMm, double? MissingL);

/// <summary>A station whose base minutes are too few: it has been set aside for weeks.</summary>
/// <param name="From">Base minutes at 100 %.</param>
/// <param name="To">Base minutes with which it would need what its area needs, cut to the controller's step.</param>
/// <param name="NeedPercent">Mean of what it alone would have needed on those mornings.</param>
/// <param name="MedianPercent">Mean of what half of its area's ground was met with on them.</param>
/// <param name="Since">The first of those mornings.</param>
/// <param name="Mornings">How many.</param>
public sealed record MinutesToChange(
    ProgramKey Program, StationKey Station, string Name, double From, double To, double NeedPercent, double MedianPercent, DateOnly Since, int Mornings);
