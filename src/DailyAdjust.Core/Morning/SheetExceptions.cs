using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>What today is otherwise than on an ordinary day, beside what the advice of each program says itself.</summary>
public sealed record SheetExceptions
{
    /// <summary>Water to be run by hand in time; what has been run is taken off, what is done is gone.</summary>
    public IReadOnlyList<HandRunOrder> HandRuns { get; init; } = [];

    public IReadOnlyList<GrowInLine> GrowIns { get; init; } = [];

    /// <summary>Boxes whose rain switch is shut, or was at a start of the last 24 hours.</summary>
    public IReadOnlyList<ShutBox> Shut { get; init; } = [];

    /// <summary>Boxes of a season that is not open, in walking order.</summary>
    public IReadOnlyList<SeasonBox> Season { get; init; } = [];

    /// <summary>Null = no stage of the drought plan is in force.</summary>
    public StageLine? Stage { get; init; }

    /// <summary>Cold and wind of the night.</summary>
    public IReadOnlyList<NightCaution> Night { get; init; } = [];

    /// <summary>Stations and starts that belong in their programs again, in walking order.</summary>
    public IReadOnlyList<PutBack> PutBack { get; init; } = [];

    /// <summary>Stations that were to stand still in the last two days and of which nobody said whether they did.</summary>
    public IReadOnlyList<TakenOutRun> TakenOutRuns { get; init; } = [];
}

/// <summary>A depth to be brought by hand-started runs.</summary>
/// <param name="Kind">Water-in or flush.</param>
/// <param name="Where">As it was entered.</param>
/// <param name="DepthMm">In all, mm.</param>
/// <param name="Due">By when, UTC.</param>
/// <param name="IsLate">That time has passed and it was not all run.</param>
/// <param name="By">Who ordered it; empty = not said.</param>
/// <param name="Note">Why.</param>
/// <param name="Stations">Those that are not done, in walking order.</param>
public sealed record HandRunOrder(LogKind Kind, Place Where, double DepthMm, DateTimeOffset Due, bool IsLate, string By, string Note, IReadOnlyList<HandRunStation> Stations)
{
    /// <summary>When it begins, UTC; null = it has begun.</summary>
    public DateTimeOffset? Begins { get; init; }

    /// <summary>Orders that keep water off the same ground before it is due: people have to say which of them goes first.</summary>
    public IReadOnlyList<StandingOrder> Against { get; init; } = [];

    /// <summary>Watering rules of the place that forbid some or all of the time until it is due. They come first.</summary>
    public IReadOnlyList<Restriction> Rules { get; init; } = [];
}

/// <summary>What one station still has to run.</summary>
/// <param name="Station">Which.</param>
/// <param name="Name">What people call it.</param>
/// <param name="LeftMm">Depth still to be brought, mm.</param>
/// <param name="Minutes">In all, on the controller's step.</param>
/// <param name="Cycles">In so many runs, 1 or more.</param>
/// <param name="CycleMinutes">Of each but the last.</param>
/// <param name="SoakMinutes">Between two of them; 0 where there is one.</param>
public sealed record HandRunStation(StationKey Station, string Name, double LeftMm, double Minutes, int Cycles, double CycleMinutes, double SoakMinutes);

/// <summary>A grow-in today.</summary>
/// <param name="Program">Which.</param>
/// <param name="Day">1 on its first date.</param>
/// <param name="Days">Of how many.</param>
/// <param name="Last">Its last date.</param>
/// <param name="Starts">From today's round on; where it is over, the program's own.</param>
/// <param name="Minutes">Of each start; empty where it is over.</param>
/// <param name="IsChange">Otherwise than yesterday: to be keyed in.</param>
/// <param name="IsOver">The program's own starts and minutes are to be keyed in again.</param>
public sealed record GrowInLine(
    ProgramKey Program, int Day, int Days, DateOnly Last, IReadOnlyList<TimeOnly> Starts, IReadOnlyList<GrowInMinutes> Minutes, bool IsChange, bool IsOver)
{
    /// <summary>Its first start where it begins after today's round and before the next visit's, UTC: today somebody keys it in for then; null = it has begun.</summary>
    public DateTimeOffset? Begins { get; init; }

    /// <summary>Of the starts that are keyed in, those before today's round that must not run: whoever comes early leaves them out too.</summary>
    public IReadOnlyList<TakenOutStart> OutBeforeRound { get; init; } = [];

    /// <summary>Somebody has to key in its starts and minutes today.</summary>
    public bool IsKeyedIn => !IsOver && (IsChange || Day == 1 || Begins is not null);
}

/// <summary>Stations that run equally long.</summary>
public sealed record GrowInMinutes(IReadOnlyList<StationKey> Stations, double Minutes);

/// <summary>A rain switch that kept valves shut.</summary>
/// <param name="Controller">The box.</param>
/// <param name="Span">Since when, until when, by which gauge and rain.</param>
/// <param name="Starts">Starts of the last 24 hours that are taken not to have run, and that nobody has answered.</param>
public sealed record ShutBox(string Controller, ShutSpan Span, IReadOnlyList<ShutStart> Starts);

public sealed record ShutStart(ProgramKey Program, DateOnly Date, DateTimeOffset At);

/// <summary>A box in a season that is not open.</summary>
/// <param name="Controller">The box.</param>
/// <param name="State">closing, closed, drained or charging.</param>
/// <param name="Since">UTC; null = not known.</param>
/// <param name="CheckedOn">When somebody ticked it off; null = nobody has.</param>
/// <param name="CheckedBy">Who; empty = not said.</param>
public sealed record SeasonBox(string Controller, string State, DateTimeOffset? Since, DateOnly? CheckedOn, string CheckedBy);

/// <summary>The stage in force.</summary>
/// <param name="Stage">Name, dates, who and why.</param>
/// <param name="Described">Its days, hours and limit; null = the description knows no such stage.</param>
/// <param name="Ceilings">Of every area, in the order of the site.</param>
public sealed record StageLine(StageInForce Stage, DroughtStage? Described, IReadOnlyList<AreaCeiling> Ceilings);
