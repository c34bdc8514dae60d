using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Plain;

namespace DailyAdjust.Tests.Recorded;

/// <summary>An invented course with everything that a site and its logbook can hold: the plain calculation, which results are compared with elsewhere, knows less.</summary>
internal static class RichCase
{
    private const ulong Apart = 7_000_000;

    private static readonly string[] _notes =
        ["", "head 3 broken", "leak at the valve fixed", "still off", "valve 2 stuck, not mended", "replaced the coil", "soil dry at the collar", "fixed; runs again", "screen clogged"];

    /// <param name="seed">Any number.</param>
    /// <param name="isCoarse">As for <see cref="Dice"/>.</param>
    public static RandomCase Of(int seed, bool isCoarse)
    {
        var plain = RandomCase.Thrown(new Dice((ulong)seed, isCoarse));
        var dice = new Dice((ulong)seed + Apart, isCoarse);
        List<SiteVersion> versions = [.. plain.Versions.Select(v => v with { Site = Rich(v.Site, new Dice((ulong)seed + (2 * Apart), isCoarse)) })];
        List<LogEntry> entries = [.. Enumerable.Range(0, dice.Whole(8, 30)).Select(i => Entry(dice, plain, versions[0].Site) with { Ordinal = 1000 + i })];
        return plain with { Versions = versions, Log = [.. plain.Log, .. entries], Sheets = [.. plain.Sheets.Select(s => s with { Lines = [.. s.Lines.Select(l => Asides(dice, l, plain.Site))] })] };
    }

    /// <summary>What is known at an hour of a date: its rain and the night's weather, a forecast, and whatever was said or ordered by then.</summary>
    public static MorningInputs Morning(RandomCase course, DateOnly date, TimeOnly hour, int seed, bool isCoarse)
    {
        var (plain, site, dice) = (course.Morning(date), SiteVersions.On(course.Versions, date), new Dice((ulong)seed + (3 * Apart), isCoarse));
        var asOf = site.Clock.ToInstant(date, hour);
        var isLater = site.Report.IsLaterLook(site.Clock, date, asOf);
        return plain with
        {
            AsOf = asOf,
            RainSinceMidnight = [.. course.Weather.Single(w => w.Date == date).Rain.Where(g => g.Gauge.Is("hourly")).Select(g => Upto(g, asOf)), .. plain.RainSinceMidnight.Where(g => !g.Gauge.Is("hourly"))],
            NewestReadingEnd = asOf.AddMinutes(-dice.Whole(5, 3000)),
            NewestReadingStation = "a",
            EtoSoFar = isLater && dice.Chance(0.7) ? new EtoSoFar(dice.Between(0, 4), asOf.AddMinutes(-30), "a", IsSupplied: false) : null,
            NightReadings = [.. Enumerable.Range(1, 9).Select(h => Night(dice, asOf.AddHours(-h)))],
            Forecast = dice.Chance(0.6) ? [.. Enumerable.Range(0, 5).Select(day => Ahead(dice, site, date.AddDays(day)))] : [],
            ForecastIssued = asOf.AddHours(-dice.Whole(1, 40)),
            Sheets = [.. course.Sheets.Where(s => s.Date < date)],
            Log = [.. course.Log.Where(e => e.CountsFrom(site.Clock) <= asOf || (e.IsOrder && e.Time.Date <= date.AddDays(2)))],
        };
    }

    private static Site Rich(Site site, Dice dice)
    {
        List<Area> areas = [.. site.Areas.Select(a => a with { ByHand = dice.Chance(0.1), DistributionUniformity = dice.Chance(0.2) ? dice.Between(0.4, 0.9) : null })];
        List<Station> stations = [.. site.Stations.Select(s => s with { Area = areas.Find(a => string.Equals(a.Name, s.Area.Name, StringComparison.Ordinal))!, RateKnown = dice.OneOf(Enum.GetValues<RateKnown>()) })];
        WaterDays? days = dice.OneOf<WaterDays?>(null, new WaterDays.OddDays(), new WaterDays.Weekdays([DayOfWeek.Tuesday, DayOfWeek.Friday]));
        WateringWindow? hours = dice.Chance(0.5) ? new WateringWindow(new(dice.Whole(6, 10), 0), new(dice.Whole(15, 21), 0)) : null;
        return site with
        {
            Areas = areas,
            Stations = stations,
            Window = dice.Chance(0.6) ? new WateringWindow(new(dice.Whole(18, 22), 0), new(dice.Whole(2, 8), 0)) : null,
            PumpCapacityLPerMin = dice.Chance(0.6) ? dice.Whole(200, 1500) : null,
            Priority = dice.Chance(0.5) ? [.. areas.Select(a => a.Name).Reverse()] : [],
            Restrictions = dice.Chance(0.4) ? [new Restriction { Name = "order", DaysNotAllowed = days, HoursNotAllowed = days is null || dice.Chance(0.3) ? hours : null, MostPercent = dice.Chance(0.4) ? dice.Whole(3, 9) * 10 : null, Areas = dice.Chance(0.5) ? [areas[0].Name] : [], Until = dice.Chance(0.3) ? site.Start.AddDays(dice.Whole(3, 20)) : null }] : [],
            NotTogether = dice.Chance(0.3) && stations.Count > 3 ? [new StationGroup("branch", [stations[0].Key, stations[1].Key, stations[^1].Key])] : [],
            Stages = [new DroughtStage { Name = "two", MostPercent = dice.Whole(4, 9) * 10, CutOrder = [.. areas.Select(a => a.Name)] }, new DroughtStage { Name = "three", DaysNotAllowed = new WaterDays.EvenDays() }],
            Cautions = new WeatherCautions { ColdHolds = dice.Chance(0.3), WindHolds = dice.Chance(0.3) },
            WaterLimits = dice.Chance(0.5) ? new WaterLimits { YearBegins = dice.Whole(1, 12), AllotmentL = dice.Whole(100_000, 9_000_000), DayL = dice.Whole(10_000, 300_000), MonthL = 2_000_000, YearL = dice.Chance(0.5) ? 8_000_000 : null, RateLPerMin = dice.Chance(0.3) ? 700 : null } : new(),
            Report = site.Report with
            {
                At = [site.Report.At[0], new(15, 30)],
                FirstPlay = dice.Chance(0.5) ? new TimeOnly(7, 0) : null,
                SkipRoom = dice.Chance(0.3) ? dice.Between(0.1, 0.9) : null,
                OffWithNoteStaysOff = dice.Chance(0.3),
                VisitAlert = dice.Between(0.05, 0.5),
                WeatherMaxAge = TimeSpan.FromHours(dice.Whole(20, 60)),
            },
            Controllers = [.. site.Controllers.Select(c => c with
            {
                LeastRunMinutes = dice.Whole(1, 6),
                ShowsChange = dice.Chance(0.3),
                Overlap = dice.OneOf(Enum.GetValues<ProgramOverlap>()),
                StationGap = TimeSpan.FromSeconds(dice.OneOf(0, 0, 10, 60)),
                PauseDays = dice.OneOf(0, 0, 3, 7),
                RainSwitch = dice.Chance(0.4) ? new RainSwitch(dice.Between(2, 9), TimeSpan.FromHours(dice.Whole(6, 72))) { Gauge = dice.Chance(0.5) ? "hourly" : null } : null,
            })],
        };
    }

    private static LogEntry Entry(Dice dice, RandomCase course, Site site)
    {
        var time = new LogTime(site.Start.AddDays(dice.Whole(0, course.Weather.Count)), dice.Chance(0.15) ? null : new TimeOnly(dice.Whole(0, 23), dice.Whole(0, 59)));
        var box = dice.OneOf([.. site.Controllers]);
        var station = dice.OneOf([.. site.Stations.Where(s => string.Equals(s.Key.Controller, box.Id, StringComparison.Ordinal))]);
        Place at = new(PlaceKind.Station, box.Id, station.Key.Station), program = new(PlaceKind.Program, box.Id, dice.OneOf([.. box.Programs]).Id), whole = new(PlaceKind.Site, "", ""), here = new(PlaceKind.Controller, box.Id, ""), area = new(PlaceKind.Area, station.Area.Name, "");
        var (later, note) = (new LogTime(time.Date.AddDays(dice.Whole(1, 4)), dice.Chance(0.5) ? new TimeOnly(dice.Whole(0, 23), 0) : null), dice.OneOf(_notes));
        LogEntry New(LogKind kind, Place where, double? value = null, LogUnit unit = LogUnit.None) => new() { Time = time, Kind = kind, Where = where, Value = value, Unit = unit, Note = note, By = "A. Hand" };
        var sheet = course.Sheets.Count > 0 ? dice.OneOf([.. course.Sheets]) : null;
        return dice.Whole(0, 23) switch
        {
            0 => New(LogKind.Hold, dice.OneOf(program, here, area)) with { Until = later },
            1 => New(LogKind.NoWater, dice.OneOf(program, area, whole)) with { Until = time with { Date = time.Date.AddDays(1) } },
            2 => New(LogKind.WaterIn, dice.OneOf(program, area), dice.Between(1, 9, 1), LogUnit.Mm) with { Until = later },
            3 => New(LogKind.Event, dice.OneOf(here, whole), dice.Whole(2, 30) * 60, LogUnit.Minutes) with { Until = later },
            4 => New(LogKind.Flush, dice.OneOf(program, area), dice.Between(15, 60, 0), LogUnit.Mm) with { Until = later },
            5 => New(LogKind.GrowIn, program, dice.Whole(2, 8), LogUnit.Minutes) with { Times = dice.Whole(2, 6), Until = new LogTime(time.Date.AddDays(dice.Whole(3, 12)), null) },
            6 => New(LogKind.Stage, whole) with { Text = dice.OneOf("two", "three", "none"), Until = dice.Chance(0.4) ? later : null },
            7 => New(LogKind.Pause, dice.OneOf(program, here), dice.Whole(1, 5) * 1440, LogUnit.Minutes),
            8 => New(LogKind.Pump, new(PlaceKind.Pump, "", ""), dice.Whole(100, 900), LogUnit.LitresPerMin) with { Until = dice.Chance(0.5) ? later : null },
            9 => New(LogKind.Season, dice.OneOf(here, whole)) with { Text = dice.OneOf("open", "open", "closing", "closed", "drained", "charging") },
            10 => New(LogKind.Spot, dice.OneOf(at, area), dice.Between(3, 30, 1), LogUnit.Percent) with { Instrument = "meter one", RodLengthM = dice.OneOf(0.05, 0.2) },
            11 => New(LogKind.Power, dice.OneOf(here, whole)) with { Until = dice.Chance(0.5) ? time with { Date = time.Date.AddDays(1) } : null },
            12 => New(LogKind.Checked, dice.OneOf(here, whole)),
            13 or 14 => New(LogKind.Note, dice.OneOf(program, program, here, whole)),
            15 => New(LogKind.Off, program),
            16 => New(LogKind.Visit, dice.OneOf(here, whole)) with { Until = dice.Chance(0.6) ? new LogTime(time.Date.AddDays(dice.Whole(1, 4)), null) : null },
            17 => New(LogKind.Ran, dice.OneOf(at, program, here), dice.OneOf(0, 0, 50, 100), LogUnit.Percent) with { Until = time.Clock is null ? null : time with { Clock = time.Clock.Value.AddHours(3) } },
            18 => New(LogKind.Meter, dice.OneOf(new Place(PlaceKind.Pump, "", ""), here), 1_000_000 + (dice.Whole(0, 4000) * 100), LogUnit.Litres),
            19 => New(LogKind.Hose, at, dice.Between(1, 9, 1), LogUnit.Mm) with { Text = dice.OneOf("", LogEntry.OnSpot) },
            20 => New(LogKind.Setting, program, dice.OneOf(0, 300, 500), LogUnit.Percent),
            21 when sheet is not null => New(LogKind.Setting, program) with { Text = LogEntry.NotTurned, Sheet = sheet.Date, Issue = sheet.Issue },
            22 when sheet is not null => New(LogKind.Setting, program, dice.Whole(3, 30) * 5, LogUnit.Percent) with { Text = dice.OneOf("", LogEntry.Found), Sheet = sheet.Date, Issue = sheet.Issue },
            _ => New(LogKind.Probe, at, dice.Between(5, 35, 1), LogUnit.Percent) with { Instrument = dice.OneOf("meter one", "meter two"), RodLengthM = dice.OneOf(0.05, 0.12, 0.4) },
        };
    }

    /// <summary>A sheet that asked for a pause, for less than it wanted, or had set stations aside.</summary>
    private static IssuedLine Asides(Dice dice, IssuedLine line, Site site) => line with
    {
        PauseDays = line.Advice == AdviceKind.Skip && dice.Chance(0.4) ? dice.Whole(1, 4) : null,
        UncutPercent = line.Percent is { } percent && dice.Chance(0.2) ? percent + 30 : null,
        SetAside = dice.Chance(0.4) ? [.. site.Stations.Where(s => string.Equals(s.Key.Controller, line.Program.Controller, StringComparison.Ordinal)).Take(2).Select(s => new IssuedAside(s.Key.Station, dice.Whole(150, 300), dice.Whole(40, 100)))] : null,
    };

    private static GaugeDay Upto(GaugeDay day, DateTimeOffset asOf)
    {
        IReadOnlyList<RainFall> falls = [.. day.Falls.Where(f => f.At <= asOf)];
        return day with { Falls = falls, RainMm = falls.Sum(f => f.Mm), Basis = RainBasis.Measured };
    }

    private static Reading Night(Dice dice, DateTimeOffset begin) => new()
    {
        Begin = begin,
        End = begin.AddHours(1),
        AirTemperatureC = dice.Between(-3, 22, 1),
        RelativeHumidityPercent = dice.Whole(50, 100),
        WindSpeedMPerS = dice.Between(0, 9, 1),
        RainMm = dice.Chance(0.3) ? dice.Between(0, 6, 1) : 0,
    };

    private static ForecastDay Ahead(Dice dice, Site site, DateOnly date)
    {
        var (low, begin) = (dice.Between(-2, 18, 1), site.Clock.DayStart(date));
        return new ForecastDay(date, low + dice.Between(4, 16, 1), low)
        {
            TemperatureHours = 24,
            Rain = [.. Enumerable.Range(0, dice.Whole(0, 3)).Select(i => new RainAhead(begin.AddHours(6 * i), begin.AddHours((6 * i) + 6), dice.Between(0, 9, 1), dice.Whole(0, 10) * 10))],
            Night = new ForecastNight(dice.Between(-2, 15, 1), dice.Between(0, 8, 1), null),
        };
    }
}
