using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Irrigation;

/// <summary>One start of one program in a site's day, with what every station of it shares.</summary>
internal readonly record struct DayStart(PlannedProgram Program, ProgramStart Start, double DrawnBy, Setting Setting)
{
    /// <summary>What a grow-in runs in it; null = the program's own start.</summary>
    public (GrowIn GrowIn, GrowInDay Day)? GrowIn { get; init; }

    /// <summary>Whether a rain switch keeps the valves shut.</summary>
    public bool IsShut { get; init; }

    /// <summary>False = nobody said anything about whether it, or any part of it, ran.</summary>
    public bool IsTold { get; init; }

    public DueStart Due => new(Program, Start, Setting.Percent) { GrowIn = GrowIn };
}

/// <summary>What decides which starts a day has, when their stations run and whether they do.</summary>
internal sealed record RunRules(SettingHistory Settings, RanHistory Ran, SeasonHistory Season, GrowIns GrowIns, RainSwitches Switches, NightRuns Laying);

/// <summary>
/// What all zones share on one site-local day: the draw curve, the program starts with their settings, whether the
/// system holds water. Built once per day, not per zone.
/// </summary>
internal sealed class DayOfSite
{
    /// <summary>No start's stations run on for longer after its date.</summary>
    private static readonly TimeSpan LongestNight = TimeSpan.FromDays(2);

    private static readonly List<DayStart> _none = [];

    private readonly RunRules _rules;
    private readonly HandWater _hand;
    private readonly IReadOnlyList<PlannedProgram> _programs;
    private readonly Dictionary<string, List<DayStart>> _starts = new(StringComparer.Ordinal);
    private (GaugeDay Rain, double[] DrawnBy)? _falls;
    private NightTimes? _times;
    private DayOfSite? _before;
    private bool? _hasSpans;

    public DayOfSite(Site site, DateOnly date, IReadOnlyList<PlannedProgram> programs, RunRules rules, HandWater hand)
    {
        Site = site;
        Date = date;
        _rules = rules;
        _hand = hand;
        _programs = programs;
        End = site.Clock.DayEnd(date);
        var sun = Sun.Day(site, date);
        Curve = new DrawCurve(sun.Sunrise, sun.Sunset);
        foreach (var program in programs)
        {
            foreach (var (start, growIn) in rules.GrowIns.InDay(program, date))
            {
                Add(program, start, growIn);
            }
        }
    }

    public Site Site { get; }

    public DateOnly Date { get; }

    public DateTimeOffset End { get; }

    public DrawCurve Curve { get; }

    /// <summary>The day's starts at one controller, by program in the controller's order; to be read only.</summary>
    public List<DayStart> StartsAt(string controller) => _starts.GetValueOrDefault(controller) ?? _none;

    public double ShareBy(DateTimeOffset at) => at >= End ? 1 : Curve.ShareBy(at);

    /// <summary>Adds the rain of a gauge to a zone's events.</summary>
    public void AddRain(List<WaterEvent> events, GaugeDay rain, double soilShare)
    {
        if (soilShare <= 0)
        {
            return;
        }

        var drawnBy = DrawnBy(rain);
        for (var i = 0; i < drawnBy.Length; i++)
        {
            var fall = rain.Falls[i];
            events.Add(new WaterEvent(fall.At, WaterKind.Rain, drawnBy[i], fall.Mm * soilShare));
        }
    }

    /// <summary>Minutes that a start gives a station when nothing keeps it from running.</summary>
    public static double MinutesDue(in DayStart start, double baseMinutes) => start.Setting.IsOff ? 0 : start.Due.Minutes(baseMinutes);

    /// <summary>Minutes that a station really ran in a start; where a rain switch kept it shut, those of which people say that they ran.</summary>
    public double MinutesRun(in DayStart start, ZonePlan zone, double baseMinutes)
    {
        if (start.Setting.IsOff)
        {
            return 0;
        }

        return MinutesDue(start, baseMinutes) * ShareTold(start, zone.Station, untold: start.IsShut ? 0 : 1);
    }

    /// <summary>Share of a station's minutes in a start that people say ran, 0 or more; what they say nothing of counts with a share of its own.</summary>
    public double ShareTold(in DayStart start, Station station, double untold)
    {
        if (!start.IsTold)
        {
            return untold;
        }

        var run = HasSpans ? TimesOf(start, station.Key) : null;
        return _rules.Ran.Share(start.Program.Key, station, start.Start.Date, start.Start.At, run is { } times ? (times.Begins, times.Ends) : null, untold);
    }

    /// <summary>When a station runs in a start; null = it has no minutes in it.</summary>
    public StationRun? TimesOf(in DayStart start, StationKey station) =>
        (_times ??= new NightTimes(_rules.Laying, Site.Controllers, StartsAt, controller => Before.StartsAt(controller)))
        .Of(start.Program.Key, start.Start, station);

    /// <summary>Of each fall; most zones ask of the same gauge.</summary>
    private double[] DrawnBy(GaugeDay rain)
    {
        if (_falls is not { } falls || !ReferenceEquals(falls.Rain, rain))
        {
            _falls = falls = (rain, [.. rain.Falls.Select(fall => ShareBy(fall.At))]);
        }

        return falls.DrawnBy;
    }

    private bool HasSpans => _hasSpans ??= _rules.Ran.HasSpanIn(Site.Clock.DayStart(Date), End + LongestNight);

    private DayOfSite Before => _before ??= new DayOfSite(Site, Date.AddDays(-1), _programs, _rules, _hand);

    private void Add(PlannedProgram program, ProgramStart start, (GrowIn GrowIn, GrowInDay Day)? growIn)
    {
        var controller = program.Key.Controller;
        if (_rules.Season.IsDrained(controller, start.At))
        {
            return;
        }

        var list = _starts.TryGetValue(controller, out var known) ? known : _starts[controller] = [];
        list.Add(new DayStart(program, start, Curve.ShareBy(start.At), _rules.Settings.At(program.Key, start.At).Setting)
        {
            GrowIn = growIn,
            IsShut = _rules.Switches.At(controller, start.At) is not null,
            IsTold = HasSpans || _rules.Ran.HasAnyOf(start.Date, controller),
        });
    }

    /// <summary>Whether anybody may have brought water to a controller's stations by hand, or probed there.</summary>
    public bool MayHaveHandAt(string controller) => _hand.MayBeAt(controller, Date);

    public double AddHand(List<WaterEvent> events, ZonePlan zone) => _hand.AddEvents(events, zone, Date, Curve, End);
}
