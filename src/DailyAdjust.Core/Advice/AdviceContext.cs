using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Advice;

/// <summary>What every program's advice on one morning shares. All of its log was entered by the as-of instant; orders may begin later.</summary>
internal sealed class AdviceContext
{
    private readonly Dictionary<DateOnly, DayOfSite> _days = [];
    private readonly Dictionary<DateOnly, double> _eto = [];
    private readonly Func<DateOnly, double> _expectedEto;
    private readonly HandWater _hand;
    private readonly RunRules _rules;

    public AdviceContext(
        Site site,
        DateOnly date,
        DateTimeOffset asOf,
        SettingHistory settings,
        IReadOnlyList<LogEntry> log,
        IReadOnlyDictionary<StationKey, double> depletionMm,
        IReadOnlyList<GaugeDay> rainSinceMidnight,
        Func<DateOnly, double> expectedEto,
        IReadOnlyList<WeatherDay> before,
        IReadOnlyList<OffOrder> weatherOrders,
        SiteLayout? layout = null)
    {
        Site = site;
        Date = date;
        AsOf = asOf;
        RoundDone = site.Report.StartsChangeFrom(site.Clock, date, asOf);
        Settings = settings;
        DepletionMm = depletionMm;
        RainSinceMidnight = rainSinceMidnight;
        _expectedEto = expectedEto;
        _hand = new HandWater(site.Clock, log);
        Layout = layout ?? SiteLayout.Of(new SitePlan(site));
        Season = new SeasonHistory(site.Clock, log);
        GrowIns = new GrowIns(site, log, Layout.Starts);
        Switches = new RainSwitches(site, before.SelectMany(d => d.Rain).Concat(rainSinceMidnight));
        Faults = new FaultNotes(site.Clock, log, settings);
        _rules = new RunRules(settings, new RanHistory(site.Clock, log), Season, GrowIns, Switches, Laying);
        Visits = new VisitCalendar(site, log);
        Off = new OffOrders(site.Clock, log, weatherOrders);
        Rules = [.. site.Restrictions, .. DroughtRules.Of(site, StageHistory.Of(log))];
    }

    public Site Site { get; }

    public DateOnly Date { get; }

    public DateTimeOffset AsOf { get; }

    public SettingHistory Settings { get; }

    public SeasonHistory Season { get; }

    public VisitCalendar Visits { get; }

    public OffOrders Off { get; }

    /// <summary>Watering rules of the place, those of a drought stage with them.</summary>
    public IReadOnlyList<Restriction> Rules { get; }

    public GrowIns GrowIns { get; }

    public RainSwitches Switches { get; }

    public FaultNotes Faults { get; }

    /// <summary>What is noted in the logbook as it is, where this morning is reckoned by one that supposes answers; it goes first. Null = the log is as it is.</summary>
    public FaultNotes? LoggedFaults { get; init; }

    /// <summary>Lays out what runs; keeps what it has laid.</summary>
    public NightRuns Laying => Layout.Laying;

    /// <summary>At 00:00 of the sheet's date.</summary>
    public IReadOnlyDictionary<StationKey, double> DepletionMm { get; }

    public IReadOnlyList<GaugeDay> RainSinceMidnight { get; }

    /// <summary>From the sheet's date on; may be empty.</summary>
    public IReadOnlyList<ForecastDay> Forecast { get; init; } = [];

    /// <summary>The site laid out.</summary>
    public SiteLayout Layout { get; }

    public IReadOnlyList<ZonePlan> Zones => Layout.Plan.Zones;

    public IReadOnlyList<PlannedProgram> Programs => Layout.Plan.Programs;

    /// <summary>Starts from here on run at what this sheet says: round_done_by, or after a later look the minute that follows it. UTC.</summary>
    public DateTimeOffset RoundDone { get; }

    /// <summary>A later look of the day: reference ET that was measured since midnight; null = none.</summary>
    public DrawnToday? Drawn { get; init; }

    public double ExpectedEtoMm(DateOnly date)
    {
        if (!_eto.TryGetValue(date, out var eto))
        {
            eto = _expectedEto(date);
            _eto[date] = eto = date == Date && Drawn is { } drawn ? drawn.TotalMm : eto;
        }

        return eto;
    }

    /// <summary>What the weather is expected to ask of a zone's unstressed ground on a date, mm.</summary>
    public double DemandMm(ZonePlan zone, DateOnly date) => ExpectedEtoMm(date) * zone.K(date);

    /// <summary>The share of a date's expected ETo that is drawn by an instant at which the draw curve stands at a share.</summary>
    public double ShareDrawn(DateOnly date, double share) => date == Date && Drawn is { } drawn ? drawn.ShareOf(share) : share;

    public GaugeDay? RainAt(string gauge)
    {
        // Asked for every zone and start: no closure.
        for (var i = 0; i < RainSinceMidnight.Count; i++)
        {
            if (string.Equals(RainSinceMidnight[i].Gauge, gauge, StringComparison.Ordinal))
            {
                return RainSinceMidnight[i];
            }
        }

        return null;
    }

    /// <summary>Adds what is known of a zone's rain and hand water on the sheet's date.</summary>
    public void AddKnown(List<WaterEvent> events, ZonePlan zone)
    {
        var day = Day(Date);
        if (RainAt(zone.Station.Gauge) is { } fallen)
        {
            // Rain as it fell: the day is not over, so nothing is taken off as intercepted or run off.
            day.AddRain(events, fallen, soilShare: 1);
        }

        day.AddHand(events, zone);
    }

    /// <summary>What all zones share on a day to come; later starts run at the present settings.</summary>
    public DayOfSite Day(DateOnly date)
    {
        if (!_days.TryGetValue(date, out var day))
        {
            _days[date] = day = new DayOfSite(Site, date, Programs, _rules, _hand);
        }

        return day;
    }

    /// <summary>A program's starts from an instant on, in order, lazily: those of a grow-in while one is in force.</summary>
    public IEnumerable<StartInForce> StartsOf(PlannedProgram program, DateTimeOffset from) => GrowIns.From(program, from);

    /// <summary>What a program's start at an instant runs at by the logbook.</summary>
    public Setting SettingAt(ProgramKey program, DateTimeOffset at) => Settings.At(program, at).Setting;

    /// <summary>What is noted of a program that is off; null = nothing. That nobody answered a sheet mends nothing.</summary>
    public Fault? FaultOf(ProgramKey program) => LoggedFaults?.Of(program, AsOf) ?? Faults.Of(program, AsOf);

    public IReadOnlyList<ZonePlan> ZonesOf(PlannedProgram program) => Layout.Plan.ZonesOf(program);

    /// <summary>Place of the program's most important area in the site's order of priority, 0 the first.</summary>
    public int RankOf(PlannedProgram program) => Layout.Plan.RankOf(program);
}
