using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>Invented sites of every kind: hemispheres, clock changes, soils, boxes, programs.</summary>
internal static class RandomSites
{
    private static readonly (string Zone, double Latitude, double Longitude)[] Places =
    [
        ("America/New_York", 41.2, -74.1),
        ("America/Phoenix", 33.5, -112.1),
        ("America/St_Johns", 47.6, -52.7),
        ("America/Anchorage", 64.8, -147.7),
        ("America/Santiago", -33.5, -70.7),
        ("Atlantic/Reykjavik", 64.1, -21.9),
        ("Europe/Berlin", 52.5, 13.4),
        ("Asia/Kolkata", 18.9, 73.0),
        ("Australia/Sydney", -33.9, 151.2),
        ("Australia/Lord_Howe", -31.5, 159.1),
        ("Pacific/Auckland", -36.8, 174.8),
        ("Pacific/Kiritimati", 1.9, -157.4),
    ];

    public static Site Build(Dice dice)
    {
        var place = dice.OneOf(Places);
        Soil[] soils = [Soil(dice, "one"), Soil(dice, "two")];
        Area[] areas = [.. Enumerable.Range(0, dice.Whole(1, 3)).Select(i => Area(dice, "area" + i, dice.OneOf(soils)))];
        var controllers = Enumerable.Range(1, dice.Whole(1, 2)).Select(i => Controller(dice, "C" + i)).ToList();
        return new Site
        {
            Name = "random",
            LatitudeDeg = place.Latitude,
            LongitudeDeg = place.Longitude,
            ElevationM = 100,
            Clock = new(TimeZoneInfo.FindSystemTimeZoneById(place.Zone)),
            Units = UnitSystem.Metric,
            Start = Start(dice),
            StartSoil = dice.OneOf(StartSoil.Full, StartSoil.Allowable, StartSoil.Assumed),
            Report = new ReportPolicy
            {
                At = [dice.OneOf(new TimeOnly(4, 30), new TimeOnly(5, 0), new TimeOnly(6, 15))],
                RoundDoneBy = dice.OneOf(new TimeOnly(9, 0), new TimeOnly(13, 0), new TimeOnly(16, 30)),
                Satisfy = dice.OneOf(0.5, 0.8, 0.9, 1.0),
                SkipBelowPercent = dice.OneOf(0, 10, 25, 40),
                Worth = dice.OneOf(0, 0.05, 0.10, 0.25),
            },
            Weather = new WeatherSetup
            {
                Stations = [],
                Gauges = [new Gauge("hourly", "a"), new Gauge("daily", null)],
                Normals = dice.Chance(0.5) ? new([.. Enumerable.Range(0, 12).Select(_ => dice.Between(1, 7))], []) : null,
            },
            Soils = soils.ToDictionary(s => s.Name, StringComparer.Ordinal),
            Areas = areas,
            Controllers = controllers,
            Stations = [.. controllers.SelectMany(c => Stations(dice, c, areas))],
        };
    }

    /// <summary>The same site some days later: a deeper or shallower root zone, other minutes, one more station.</summary>
    public static Site Change(Dice dice, Site site)
    {
        var stations = site.Stations.Select(s => dice.Chance(0.4)
            ? s with
            {
                Area = s.Area with { RootDepthM = dice.Between(0.08, 0.35, 3) },
                BaseMinutes = s.BaseMinutes.ToDictionary(m => m.Key, m => m.Value + dice.Whole(0, 9), StringComparer.Ordinal),
            }
            : s).ToList();
        var model = stations[0];
        stations.Add(model with { Key = new(model.Key.Controller, "99"), Name = "new" });
        return site with { Stations = stations };
    }

    /// <summary>Half of the sites begin just before a clock change of one hemisphere or the other.</summary>
    private static DateOnly Start(Dice dice)
    {
        var date = dice.OneOf(
            new DateOnly(2026, 3, 3),
            new DateOnly(2026, 3, 24),
            new DateOnly(2026, 10, 20),
            new DateOnly(2026, 9, 1),
            new DateOnly(2025, 12, 25),
            new DateOnly(2024, 2, 20),
            new DateOnly(2026, 6, 10),
            new DateOnly(2026, 7, 14));
        return date.AddDays(dice.Whole(0, 4));
    }

    private static Soil Soil(Dice dice, string name) => new()
    {
        Name = name,
        AvailableWaterMmPerM = dice.Between(80, 190, 0),
        FieldCapacityPercent = dice.Chance(0.8) ? dice.Between(15, 38, 1) : null,
        IntakeRate = dice.Chance(0.7) ? new ApplicationRate(dice.Between(3, 18, 1)) : null,
        SurfaceStorage = new Depth(dice.Between(2, 9, 1)),
        CurveNumber = dice.Chance(0.6) ? dice.Whole(55, 95) : null,
    };

    private static Area Area(Dice dice, string name, Soil soil) => new()
    {
        Name = name,
        Grass = "invented",
        Kc = [.. Enumerable.Range(0, 12).Select(_ => dice.Between(0.5, 1.05))],
        RootDepthM = dice.Between(0.10, 0.35, 3),
        Soil = soil,
        AllowableDepletion = dice.Between(0.3, 0.6),
        LeaveEmpty = dice.OneOf(0, 0.3, 0.3, 0.6),
        Efficiency = dice.Between(0.55, 0.9),
        RunAt = dice.OneOf(0, 0, 0.5, 1),
        Replace = dice.OneOf(1, 1, 0.85, 0.6),
    };

    private static Controller Controller(Dice dice, string id) => new()
    {
        Id = id,
        Route = dice.Whole(1, 9),
        Applies = dice.OneOf(PercentApplies.Program, PercentApplies.Program, PercentApplies.Program, PercentApplies.Controller),
        PercentMin = dice.OneOf(0, 0, 10, 20),
        PercentMax = dice.OneOf(100, 150, 200, 250),
        PercentStep = dice.OneOf(1, 5, 10, 20),
        MinutesStep = dice.OneOf(1, 1, 0.5, 5),
        Rounding = dice.OneOf(MinutesRounding.Nearest, MinutesRounding.Nearest, MinutesRounding.Down, MinutesRounding.Up),
        ClockStaysStandard = dice.Chance(0.2),
        Programs = [.. Enumerable.Range(1, dice.Whole(1, 3)).Select(i => Program(dice, "P" + i))],
    };

    private static WateringProgram Program(Dice dice, string id) => new()
    {
        Id = id,
        Starts = [.. Enumerable.Range(0, dice.OneOf(1, 1, 2, 3)).Select(_ => StartTime(dice)).Distinct().Order()],
        Days = dice.Whole(0, 5) switch
        {
            0 => new WaterDays.Weekdays([DayOfWeek.Monday, DayOfWeek.Wednesday, DayOfWeek.Saturday]),
            1 => new WaterDays.EveryNth(dice.Whole(2, 5), new(2026, 6, 7)),
            2 => new WaterDays.OddDays(),
            3 => new WaterDays.EvenDays(),
            _ => WaterDays.Every,
        },
        Visit = dice.Whole(0, 6) switch
        {
            0 => new VisitDays.Weekdays([DayOfWeek.Monday, DayOfWeek.Thursday]),
            1 => new VisitDays.Weekdays([DayOfWeek.Tuesday]),
            2 => new VisitDays.DayOfMonth(dice.OneOf(1, 15, 31)),
            _ => VisitDays.Daily,
        },
    };

    private static TimeOnly StartTime(Dice dice) => dice.Chance(0.2)
        ? dice.OneOf(new TimeOnly(0, 0), new TimeOnly(0, 30), new TimeOnly(1, 30), new TimeOnly(2, 0), new TimeOnly(2, 15), new TimeOnly(2, 30), new TimeOnly(23, 50))
        : new TimeOnly(dice.Chance(0.7) ? dice.OneOf(19, 20, 21, 22, 23, 1, 2, 3, 4, 5) : dice.Whole(6, 18), dice.Whole(0, 11) * 5);

    private static IEnumerable<Station> Stations(Dice dice, Controller controller, Area[] areas)
    {
        var count = dice.Whole(controller.Programs.Count, 7);
        for (var i = 0; i < count; i++)
        {
            // Every program has a station; some stations stand in two.
            var programs = new SortedSet<string>(StringComparer.Ordinal) { controller.Programs[i % controller.Programs.Count].Id };
            if (dice.Chance(0.2))
            {
                programs.Add(dice.OneOf([.. controller.Programs.Select(p => p.Id)]));
            }

            yield return new Station
            {
                Key = new(controller.Id, (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)),
                Area = dice.OneOf(areas),
                BaseMinutes = programs.ToDictionary(p => p, _ => dice.OneOf<double>(dice.Whole(4, 40), dice.Whole(10, 90), dice.Whole(5, 30) + 0.5), StringComparer.Ordinal),
                Rate = new ApplicationRate(dice.Between(5, 22, 1)),
                FlowLPerMin = dice.Chance(0.7) ? dice.Whole(60, 500) : null,
                GroundM2 = dice.Chance(0.95) ? dice.Whole(100, 3000) : null,
                Exposure = dice.OneOf(1, 1, 0.7, 0.85, 1.2, 1.3),
                Gauge = dice.OneOf("hourly", "hourly", "daily"),
                DistributionUniformity = dice.Chance(0.25) ? dice.Between(0.3, 1) : null,
            };
        }
    }
}
