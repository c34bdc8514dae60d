using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Morning;

/// <summary>Everything that one morning's report says, as data: metric, UTC instants, in the order in which it is read.</summary>
public sealed record MorningSheet
{
    public required Site Site { get; init; }

    public required DateOnly Date { get; init; }

    public required DateTimeOffset AsOf { get; init; }

    public required Freshness Freshness { get; init; }

    /// <summary>By controller in walking order, then in the controller's order.</summary>
    public required IReadOnlyList<ProgramAdvice> Programs { get; init; }

    public required Overnight Overnight { get; init; }

    /// <summary>What was due to run in the night before this morning: lines to tick.</summary>
    public required IReadOnlyList<DueRun> DueRuns { get; init; }

    /// <summary>Neediest first.</summary>
    public required IReadOnlyList<DryZone> Driest { get; init; }

    /// <summary>Wettest first, by what drained and ran off in 72 hours.</summary>
    public required IReadOnlyList<WetZone> Wettest { get; init; }

    public required IReadOnlyList<StandingOrder> StandingOrders { get; init; }

    public SheetExceptions Exceptions { get; init; } = new();

    /// <summary>Null = the night left nothing to make up for.</summary>
    public RunByHand? RunByHand { get; init; }

    /// <summary>Boxes to verify after a power loss, in walking order.</summary>
    public IReadOnlyList<BoxToVerify> BoxesToVerify { get; init; } = [];

    /// <summary>Settings that their box cannot show and that nobody has corrected: not used.</summary>
    public IReadOnlyList<ImpossibleSetting> SettingsNotUsed { get; init; } = [];

    /// <summary>Null = no clock of a box is to be moved.</summary>
    public ClockChange? ClockChange { get; init; }

    public required NightFit Fit { get; init; }

    public required IReadOnlyList<AreaMoisture> Areas { get; init; }

    public required IReadOnlyList<Outlook> Outlook { get; init; }

    /// <summary>Programs that nobody visits today and that would be changed, the costliest to leave first.</summary>
    public IReadOnlyList<VisitWorth> IfVisited { get; init; } = [];

    public required WaterUsed Water { get; init; }

    /// <summary>Every program's percentages since the season began, in the order of <see cref="Programs"/>; empty before its first day.</summary>
    public IReadOnlyList<ProgramSeason> Season { get; init; } = [];

    /// <summary>What is known otherwise now than to the sheet before this one; null = nothing is.</summary>
    public Corrections? Corrections { get; init; }

    /// <summary>What base minutes to look at: zones that would drain because others drive the program.</summary>
    public IReadOnlyList<Phrase> Pointers { get; init; } = [];

    public SheetGround Ground { get; init; } = new();

    /// <summary>Null = nothing is forecast.</summary>
    public SheetForecast? Forecast { get; init; }

    /// <summary>Null = the first look of its date.</summary>
    public SecondLook? SecondLook { get; init; }
}

/// <summary>How fresh the sheet's knowledge is.</summary>
public sealed record Freshness
{
    /// <summary>End of the newest reading used, UTC; null = there is none.</summary>
    public DateTimeOffset? WeatherThrough { get; init; }

    /// <summary>The station of the newest day of weather that a station knows; empty = none of the last days.</summary>
    public string Station { get; init; } = "";

    /// <summary>No sound advice, why and since when; null = all is well.</summary>
    public Phrase? NoAdvice { get; init; }

    /// <summary>The first date that the trouble began on.</summary>
    public DateOnly? NoAdviceSince { get; init; }

    /// <summary>What was assumed or estimated in the last days, oldest first.</summary>
    public IReadOnlyList<AssumedNote> AssumedNotes { get; init; } = [];

    /// <summary>The same as plain sentences.</summary>
    public IReadOnlyList<Phrase> Assumed => [.. AssumedNotes.Select(n => n.Sentence)];

    /// <summary>What the checks of weather set aside in the last days, plain sentences, at most 6.</summary>
    public IReadOnlyList<Phrase> SetAside { get; init; } = [];

    /// <summary>Sensors that are doubtful though their values count, plain sentences, at most 6.</summary>
    public IReadOnlyList<Phrase> Doubts { get; init; } = [];

    /// <summary>Gauges and dates whose rain is unknown and asked for.</summary>
    public IReadOnlyList<UnknownRain> UnknownRain { get; init; } = [];

    /// <summary>Zones to probe before anything is cut or left out on them, in station order.</summary>
    public IReadOnlyList<AssumedZone> AssumedSoil { get; init; } = [];

    /// <summary>Sheets issued with changes that nobody has answered.</summary>
    public IReadOnlyList<OpenRound> UnansweredRounds { get; init; } = [];

    /// <summary>Sheets of the last two weeks that nobody answered though a later one was: the balance has them as not done. Ascending.</summary>
    public IReadOnlyList<DateOnly> PassedOverRounds { get; init; } = [];

    /// <summary>Programs whose setting nobody has ever confirmed.</summary>
    public IReadOnlyList<ProgramKey> NeverConfirmed { get; init; } = [];

    /// <summary>The last days of weather, newest last (up to 14).</summary>
    public IReadOnlyList<WeatherDay> RecentDays { get; init; } = [];

    /// <summary>Expected ETo of the sheet's date, mm; null = none.</summary>
    public double? ExpectedEtoMm { get; init; }
}

/// <summary>Something that was assumed or estimated.</summary>
/// <param name="Date">Of this day; null = of no one day.</param>
/// <param name="What">Without the date; with its full stop only where there is no date.</param>
public sealed record AssumedNote(DateOnly? Date, Phrase What)
{
    public Phrase Sentence => Date is { } date ? $"{DateWords.Date(date)}: {What}." : What;
}

/// <summary>Rain nobody knows; <paramref name="MeasuredPartMm"/> was measured all the same.</summary>
public sealed record UnknownRain(string Gauge, DateOnly Date, double MeasuredPartMm);

/// <summary>A zone whose moisture has only been assumed since a date: neither full nor probed since.</summary>
public sealed record AssumedZone(StationKey Station, string Name, DateOnly Since);

/// <summary>The night before this morning: from 18:00 of the day before (or its last known hour) to the as-of instant.</summary>
public sealed record Overnight(IReadOnlyList<OvernightRain> Rain, double? YesterdayEtoMm, double? LowestTemperatureC, DateTimeOffset? LowestAt);

/// <summary>Rain by gauge: the day before (whole), and since midnight; null where nothing is known of it.</summary>
public sealed record OvernightRain(string Gauge, double? YesterdayMm, double? SinceMidnightMm)
{
    /// <summary>Readings by hand that have a say in the two, by time.</summary>
    public IReadOnlyList<HandRain> ByHand { get; init; } = [];

    /// <summary>A reading since midnight was set aside, and nobody has said what fell in its time.</summary>
    public bool IsPartAside { get; init; }
}

/// <summary>A start that was due in the last 24 hours; <paramref name="Answered"/> when a `ran` entry covers it.</summary>
public sealed record DueRun(ProgramKey Program, string Name, DateOnly Date, DateTimeOffset Start, DateTimeOffset Finishes, Setting Setting, bool Answered)
{
    /// <summary>How far back from the sheet's instant is looked for starts.</summary>
    public static TimeSpan LookedBack { get; } = TimeSpan.FromHours(24);

    /// <summary>The program has other starts on that date: who answers names the hours.</summary>
    public bool IsOneOfSeveral { get; init; }
}

/// <summary>Ground to take hose and probe to.</summary>
/// <param name="ShortMm">Depth that would bring it back within its allowable depletion (and its room for rain), mm.</param>
/// <param name="VolumeL">That depth on its ground, L; null where the ground is unknown.</param>
public sealed record DryZone(StationKey Station, string Name, string Area, double DepletionMm, double AllowableMm, double ShortMm, double? VolumeL, Phrase Why)
{
    public HowSure Sure { get; init; } = new(null, false, 0, false);

    /// <summary>What the hose would bring had the unanswered rounds gone the other way than is drier; null = everything is answered, or it makes no difference.</summary>
    public OtherWay? OtherWay { get; init; }

    /// <summary>What to know before it is hosed, a plain clause; empty where there is nothing.</summary>
    public Phrase BeforeHose { get; init; } = Phrase.Empty;
}

/// <summary>The wetter of two possibilities.</summary>
/// <param name="IsIfDone">The unanswered rounds were done; else they were not.</param>
/// <param name="ShortMm">What the hose is to bring then, mm; 0 = nothing.</param>
public sealed record OtherWay(bool IsIfDone, double ShortMm);

/// <summary>Ground to keep carts and mowers off.</summary>
public sealed record WetZone(StationKey Station, string Name, string Area, double DrainedMm, double RanOffMm, double DepletionMm);

/// <summary>An order, season state, pause, stage, reduced pump or restriction that is in force or known to come, and its end.</summary>
/// <param name="Where">What it holds over.</param>
/// <param name="What">What it is, and why.</param>
/// <param name="Until">Its last date, or the date of <see cref="UntilClock"/>; null = open.</param>
public sealed record StandingOrder(string Where, Phrase What, DateOnly? Until)
{
    /// <summary>The time of day at which it ends; null = through that date.</summary>
    public TimeOnly? UntilClock { get; init; }

    /// <summary>When it begins, UTC; null = it is in force.</summary>
    public DateTimeOffset? Begins { get; init; }

    /// <summary>Who ordered it; empty = not said.</summary>
    public string By { get; init; } = "";
}

/// <summary>One area's ground, averaged by ground, over the last 14 days and today.</summary>
public sealed record AreaMoisture(string Area, double AllowableMm, double TotalAvailableMm, IReadOnlyList<AreaDay> Days);

/// <summary>One day of an area, mm, mean by ground.</summary>
public sealed record AreaDay(DateOnly Date, double DepletionMm, double? RainMm, double IrrigationMm, double DrainageMm);

/// <summary>If nobody visits and no rain falls: after this many days.</summary>
/// <param name="ZonesBeyond">Zones that went beyond their allowable depletion.</param>
/// <param name="Zones">Of how many.</param>
/// <param name="WorstName">The worst of them; empty when none.</param>
/// <param name="WorstBeyondMm">By how much, mm.</param>
/// <param name="DrainedMm">Mean depth that drained from irrigation, mm by ground.</param>
public sealed record Outlook(int Days, int ZonesBeyond, int Zones, string WorstName, double WorstBeyondMm, double DrainedMm);

/// <summary>Water used, estimated from minutes and flow, and metered, each by itself; litres.</summary>
public sealed record WaterUsed(double YesterdayL, double MonthL, double SeasonL, int StationsWithoutFlow)
{
    /// <summary>What the meters tell of the month; null = nothing.</summary>
    public MeteredWater? MeteredMonth { get; init; }

    /// <summary>What they tell since SeasonFrom; null = nothing.</summary>
    public MeteredWater? MeteredSeason { get; init; }

    /// <summary>What the allotment gives the month, were it used evenly over its year, L; null = the place has none.</summary>
    public double? AllotmentMonthL { get; init; }

    /// <summary>The date from which SeasonL counts: 1 January, or the first day reckoned.</summary>
    public DateOnly? SeasonFrom { get; init; }

    /// <summary>The month so far, by day.</summary>
    public IReadOnlyList<DayWater> Month { get; init; } = [];

    /// <summary>The same month of the year before, whole; empty where the balance does not reach back so far.</summary>
    public IReadOnlyList<DayWater> YearBefore { get; init; } = [];

    /// <summary>What the place may take: allotment, and the permit's day and month since SeasonFrom and its year, those that the site has.</summary>
    public IReadOnlyList<LimitUse> Limits { get; init; } = [];
}
