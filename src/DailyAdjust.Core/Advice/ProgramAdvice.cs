using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>One link of the chain behind an advice: in words, and as data.</summary>
/// <param name="Code">A stable short name: "rain", "need", "can-wait", "not-due", "good-enough", "shortfall", ...</param>
/// <param name="Words">A plain sentence in the site's units.</param>
/// <param name="Data">Metric numbers by name (unit in the name), ordinal order.</param>
public sealed record Reason(string Code, Phrase Words, IReadOnlyDictionary<string, double> Data)
{
    /// <summary>The program may be off because an earlier sheet said so and nobody answered.</summary>
    public const string MayBeOff = "may-be-off";

    /// <summary>One without numbers.</summary>
    internal static Reason Plain(string code, Phrase words) => With(code, words, new SortedDictionary<string, double>(StringComparer.Ordinal));

    /// <param name="code">Its short name.</param>
    /// <param name="words">Its sentence.</param>
    /// <param name="data">Its numbers.</param>
    internal static Reason With(string code, Phrase words, IReadOnlyDictionary<string, double> data) => new(code, words, data);

    /// <summary>The word that is to be logged, where a reason asks whether what was noted is mended.</summary>
    public static Phrase Checked { get; } = Phrase.Verbatim("`checked`");
}

/// <summary>One zone as one program sees it.</summary>
public sealed record ZoneAdvice
{
    public required StationKey Station { get; init; }

    public required string Name { get; init; }

    public required string Area { get; init; }

    /// <summary>The percentage that this zone alone would need; null where none was computed.</summary>
    public double? Percent { get; init; }

    /// <summary>Depletion at 00:00 of the sheet's date, mm.</summary>
    public required double DepletionMm { get; init; }

    /// <summary>mm.</summary>
    public required double AllowableMm { get; init; }

    public bool CanWait { get; init; }

    public bool Due { get; init; }

    /// <summary>Needs so much more than its area that the hose serves it better.</summary>
    public bool SetAside { get; init; }

    /// <summary>Set aside: the smallest percentage that meets half of its area's ground in this program; otherwise null.</summary>
    public double? AreaMedianPercent { get; init; }

    /// <summary>
    /// How far past its allowable depletion the advice leaves it before a start of the horizon but its first, or before the first start after it, mm; 0 = within it.
    /// skip and keep-off: with nothing given; 0 too for off, as-set and where no need was reckoned.
    /// </summary>
    public double ShortMm { get; init; }

    /// <summary>What of the advised number's water would drain from it, mm; 0 = nothing.</summary>
    public double DrainsMm { get; init; }
}

/// <summary>"40 tonight, about 75 after".</summary>
public sealed record AfterTonight(DateOnly On, double Percent);

/// <summary>Rain at the gauge before the next start from which the program would better be left off.</summary>
/// <param name="Gauge">The gauge of most of its ground.</param>
/// <param name="RainMm">mm, above 0.</param>
/// <param name="Before">The first start that the sheet speaks about, UTC.</param>
public sealed record StopRule(string Gauge, double RainMm, DateTimeOffset Before)
{
    /// <summary>Gauges of the rest of its ground, which must show as much; mostly none.</summary>
    public IReadOnlyList<string> AlsoAt { get; init; } = [];
}

/// <summary>A station that would run longer than its ground takes at once.</summary>
/// <param name="Minutes">Of one start at the advised number.</param>
public sealed record LongRun(StationKey Station, string Name, double Minutes, Irrigation.CycleAndSoak Split);

/// <summary>A round that nobody answered.</summary>
/// <param name="Date">Its sheet's date.</param>
/// <param name="Issue">Where a newer issue of that date speaks of another round; null = its newest.</param>
public readonly record struct OpenRound(DateOnly Date, int? Issue);

/// <summary>An advice of an earlier sheet that nobody has answered.</summary>
/// <param name="Round">Which sheet.</param>
/// <param name="Kind">What it said.</param>
/// <param name="Percent">Its number; null for skip and off.</param>
/// <param name="IfDone">What today's advice would be had it been done.</param>
/// <param name="AsLogged">What it would be had nothing been done since the logbook's last word.</param>
public sealed record UnansweredAdvice(OpenRound Round, AdviceKind Kind, double? Percent, AlternativeAdvice IfDone, AlternativeAdvice AsLogged)
{
    public DateOnly Sheet => Round.Date;

    /// <summary>Which issue of that date said it; null where a sheet that is read back does not tell.</summary>
    public int? Issue { get; init; } = Round.Issue;

    /// <summary>The date of the first sheet since the last answer that asked for a walk to it; <see cref="Sheet"/> where that is the only one.</summary>
    public DateOnly Since { get; init; } = Round.Date;

    /// <summary>skip: it said to pause the box for so many days; null = to switch it off.</summary>
    public int? PauseDays { get; init; }

    /// <summary>Where it, or one of the two, turns on a program that is off and has a note: a sentence that quotes the note, as <see cref="VisitWorth.NotedBefore"/> does; empty otherwise.</summary>
    public Phrase NotedBefore { get; init; } = Phrase.Empty;

    /// <summary>Where the controller has no percentage and it had a number: minutes as logged, and those it said, in station order.</summary>
    public IReadOnlyList<StationMinutes> NewMinutes { get; init; } = [];
}

/// <summary>The advice under one possibility.</summary>
public sealed record AlternativeAdvice(AdviceKind Kind, double? Percent)
{
    /// <summary>skip: the box would be paused for so many days; null = switched off.</summary>
    public int? PauseDays { get; init; }
}

/// <summary>Minutes of a station before and after, where a controller has no percentage.</summary>
public sealed record StationMinutes(StationKey Station, double From, double To)
{
    /// <summary>Of a program's stations in their order; empty where the controller has a percentage.</summary>
    /// <param name="context">The morning.</param>
    /// <param name="program">Which.</param>
    /// <param name="present">What it runs at; off = 0 min.</param>
    /// <param name="percent">The number, percent of the minutes in stations.csv.</param>
    internal static IReadOnlyList<StationMinutes> Of(AdviceContext context, PlannedProgram program, Setting present, double percent) =>
        program.Controller.Applies != PercentApplies.None ? [] : [.. context.ZonesOf(program).Select(z => z.Station).Select(s => new StationMinutes(
            s.Key,
            RunMinutes.At(program.Controller, s.BaseMinutes[program.Key.Program], present.Percent),
            RunMinutes.At(program.Controller, s.BaseMinutes[program.Key.Program], percent)))];
}

/// <summary>What a number leaves undone of a start because the dial ends, or because it was cut to fit the night.</summary>
public sealed record Shortfall(double DepthMm, double Minutes, bool DialEnds);

/// <summary>The advice for one program, with everything that leads to it.</summary>
public sealed record ProgramAdvice
{
    public required ProgramKey Key { get; init; }

    public required string Name { get; init; }

    /// <summary>The setting that the balance takes to be on the program.</summary>
    public required Setting Present { get; init; }

    /// <summary>Somebody has confirmed a setting (logbook); otherwise it is taken to run at 100 %.</summary>
    public required bool Confirmed { get; init; }

    public required AdviceKind Advice { get; init; }

    /// <summary>set and resume: the number; leave and keep-off: the present setting (off = 0); null for skip, off, as-set.</summary>
    public double? Percent { get; init; }

    /// <summary>Before rounding, on a grid of 1e-4; null where none was computed.</summary>
    public double? ExactPercent { get; init; }

    /// <summary>First start at or after round_done_by, UTC; null = none in sight.</summary>
    public DateTimeOffset? NextStart { get; init; }

    /// <summary>When that start's last station ends at the advised setting, UTC.</summary>
    public DateTimeOffset? Finishes { get; init; }

    /// <summary>One plain sentence, behind <see cref="Condition"/> where there is one.</summary>
    public required Phrase Reason { get; init; }

    /// <summary>What changes what the hand does, as a sentence of its own: only if that is mended, or leave the dial; mostly empty.</summary>
    public Phrase Condition { get; init; } = Phrase.Empty;

    /// <summary><see cref="Reason"/> beside the act: without <see cref="Condition"/>, and not saying again that it must not run.</summary>
    public Phrase Because
    {
        get => field ?? Reason;
        init;
    }

    /// <summary>off: its box has one dial, and other programs on it run. The dial stays, and the program's starts are taken out.</summary>
    public bool LeavesDial { get; init; }

    public IReadOnlyList<Reason> Chain { get; init; } = [];

    public IReadOnlyList<ZoneAdvice> Zones { get; init; } = [];

    /// <summary>skip: the day on which it should resume if no rain falls. keep-off: the day on which it will be judged.</summary>
    public DateOnly? LookAgain { get; init; }

    /// <summary>off: when that ends; null = open.</summary>
    public DateOnly? OffUntil { get; init; }

    /// <summary>The hour of that date at which it ends; null = it holds through the date.</summary>
    public TimeOnly? OffUntilClock { get; init; }

    /// <summary>The date that <see cref="Reason"/> says what comes next on; null = it says none.</summary>
    public DateOnly? NamedDay { get; init; }

    public AfterTonight? After { get; init; }

    public StopRule? StopRule { get; init; }

    public Shortfall? Shortfall { get; init; }

    /// <summary>The dial shows the change from 100 %, not the percentage.</summary>
    public bool DialShowsChange { get; init; }

    /// <summary>The controller has no percentage: minutes are keyed in by station, and every number is percent of those in stations.csv.</summary>
    public bool MinutesOnly { get; init; }

    /// <summary>Where the controller has no percentage: the minutes to set.</summary>
    public IReadOnlyList<StationMinutes> NewMinutes { get; init; } = [];

    /// <summary>Stations whose run has to be split into cycles, in station order.</summary>
    public IReadOnlyList<LongRun> LongRuns { get; init; } = [];

    /// <summary>How its starts are split for them; null = they need not be.</summary>
    public StartsInPlace? InPlace { get; init; }

    public UnansweredAdvice? Unanswered { get; init; }

    /// <summary>It is on, or may be: an earlier sheet said to turn it on and nobody answered.</summary>
    public bool MayBeOn { get; init; } = true;

    /// <summary>Starts before the next visit that must not run though others may.</summary>
    public IReadOnlyList<TakenOutStart> TakenOut { get; init; } = [];

    /// <summary>Stations that must not run before the next visit though others of the program may.</summary>
    public IReadOnlyList<TakenOutStations> StationsOut { get; init; } = [];

    /// <summary>skip: the box can pause by itself, for so many days; null = it is to be switched off.</summary>
    public int? PauseDays { get; init; }

    /// <summary>It is paused and runs by itself again from then on, UTC; null = it is not paused.</summary>
    public DateTimeOffset? PausedUntil { get; init; }

    /// <summary>The first start of a grow-in that is ordered ahead and for which it has to be on, UTC; null = there is none, or it is on again before anyway.</summary>
    public DateTimeOffset? GrowInBegins { get; init; }

    /// <summary>It is off, and somebody noted what is wrong with it; null = nobody did.</summary>
    public Fault? Fault { get; init; }

    /// <summary>Somebody has to walk to the box for it.</summary>
    public bool NeedsVisit => Advice is AdviceKind.Set or AdviceKind.Resume || (Advice is AdviceKind.Skip or AdviceKind.Off && MayBeOn);
}
