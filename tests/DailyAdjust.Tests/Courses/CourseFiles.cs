using System.Globalization;
using System.Text;
using DailyAdjust.Tests.Plain;

namespace DailyAdjust.Tests.Courses;

/// <summary>An invented course of any size as the files that a person would bring: description, stations, weather by the hour, logbook.</summary>
internal static class CourseFiles
{
    private const string Kinds = "ABCDEFGH";

    /// <summary>Inches an hour that a gallon a minute is on a square foot: 60 min x 231 in³ / 144 in².</summary>
    private const double GpmOverSquareFeet = 96.25;

    private static readonly (string Name, string Kc, string Depth, string Soil)[] _areas =
    [
        ("greens", "cool-season-optimal", "6 in", "green-mix"),
        ("tees", "cool-season-optimal", "7 in", "sandy-loam"),
        ("fairways", "cool-season-optimal", "10 in", "clay-loam"),
        ("rough", "cool-season-deficit", "12 in", "clay-loam"),
    ];

    /// <summary>Everything under its name; the weather as one file a year.</summary>
    public static IReadOnlyDictionary<string, string> Of(CourseSize size)
    {
        var dice = new Dice(size.Seed);
        var files = new SortedDictionary<string, string>(StringComparer.Ordinal)
        {
            ["site.yaml"] = Site(size, dice),
            ["stations.csv"] = Stations(size, dice),
            ["logbook.csv"] = Logbook(size, dice),
        };
        for (var year = size.From.Year; year <= size.Through.Year; year++)
        {
            var (from, through) = (Later(size.From, new(year, 1, 1)), Earlier(size.Through, new(year, 12, 31)));
            files[string.Create(CultureInfo.InvariantCulture, $"yard-{year}.csv")] = CourseWeather.Hourly(from, through, size.Seed);
        }

        return files;
    }

    /// <summary>Writes them as a site: the description in its folder, the rest in its inbox, at rest for long.</summary>
    public static void Put(CourseSize size, string folder)
    {
        var inbox = Directory.CreateDirectory(Path.Combine(folder, "inbox")).FullName;
        foreach (var (name, text) in Of(size))
        {
            var path = Path.Combine(name is "site.yaml" or "stations.csv" ? folder : inbox, name);
            File.WriteAllText(path, text);
            File.SetLastWriteTimeUtc(path, new DateTime(2026, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        }
    }

    private static string Site(CourseSize size, Dice dice)
    {
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $$"""
            site:
              name: Invented course {{size.Seed}}
              latitude: {{dice.Between(30, 46)}}
              longitude: {{dice.Between(-100, -75)}}
              elevation: {{dice.Whole(50, 1500)}} m
              time_zone: America/Chicago
              units: us
              start: {{size.From:yyyy-MM-dd}}
              start_soil: full
            window: { opens: "19:00", closes: "08:00" }
            pump: { capacity: {{Math.Max(400, size.Stations * 3)}} gpm }
            weather:
              stations:
                - id: yard
                  files: "yard-*.csv"
                  format: csv
                  time: { column: Time, pattern: "yyyy-MM-dd HH:mm", clock: standard, stamp: end }
                  interval: 1 h
                  wind_height: 2 m
                  columns:
                    air_temperature: "Temp (C)"
                    relative_humidity: "RH (%)"
                    wind_speed: "Wind (m/s)"
                    solar_radiation: "Solar (W/m2)"
                    rain: "Rain (mm)"
              gauges:
                - { id: yard, station: yard }
            soils:
              green-mix: { available_water: 1.1 in/ft, field_capacity: 17 %, intake_rate: 0.8 in/h, surface_storage: 0.35 in }
              sandy-loam: { available_water: 1.5 in/ft, field_capacity: 24 %, intake_rate: 0.4 in/h, surface_storage: 0.3 in }
              clay-loam: { available_water: 1.9 in/ft, field_capacity: 33 %, intake_rate: 0.25 in/h, surface_storage: 0.26 in, curve_number: 74 }
            areas:

            """));
        foreach (var area in _areas)
        {
            text.Append(string.Create(CultureInfo.InvariantCulture, $"  {area.Name}: {{ grass: cool_season, kc: {area.Kc}, root_depth: {area.Depth}, soil: {area.Soil}, allowable_depletion: 50 %, efficiency: {dice.Whole(65, 85)} % }}\n"));
        }

        text.Append("controllers:\n");
        for (var box = 1; box <= size.Controllers; box++)
        {
            text.Append(string.Create(CultureInfo.InvariantCulture, $"  - {{ id: B{box}, place: post {box}, route: {box}, percent: {{ applies: program, min: 10 %, max: 200 %, step: 5 % }}, minutes: {{ step: 1 min, rounding: nearest }}, overlap: together, programs: ["));
            for (var program = 0; program < size.Programs; program++)
            {
                var start = new TimeOnly(19, 0).AddMinutes((program * 150) + (box % 6 * 20));
                var days = dice.OneOf("every day", "odd", "even", "[mon, wed, fri]", "[tue, thu, sat]");
                text.Append(string.Create(CultureInfo.InvariantCulture, $"{(program == 0 ? "" : ", ")}{{ id: {Kinds[program]}, name: {_areas[program % _areas.Length].Name} {box}, starts: [\"{start:HH:mm}\"], days: {days} }}"));
            }

            text.Append("] }\n");
        }

        return text.ToString();
    }

    private static string Stations(CourseSize size, Dice dice)
    {
        var text = new StringBuilder("controller,station,name,area");
        for (var program = 0; program < size.Programs; program++)
        {
            text.Append(CultureInfo.InvariantCulture, $",minutes {Kinds[program]}");
        }

        text.Append(",precipitation rate (in/h),flow (gpm),area watered (ft²),exposure\n");
        for (var i = 0; i < size.Stations; i++)
        {
            var (box, number) = ((i % size.Controllers) + 1, (i / size.Controllers) + 1);
            var program = number % size.Programs;
            text.Append(CultureInfo.InvariantCulture, $"B{box},{number},head {i + 1},{_areas[program % _areas.Length].Name}");
            for (var p = 0; p < size.Programs; p++)
            {
                text.Append(CultureInfo.InvariantCulture, $",{(p == program ? dice.Whole(6, 25) : "")}");
            }

            var (rate, flow) = (dice.Between(0.35, 0.75), dice.Whole(15, 60));
            text.Append(CultureInfo.InvariantCulture, $",{rate},{flow},{flow * GpmOverSquareFeet / rate:0},{dice.Between(0.8, 1.2, 1):0.0}\n");
        }

        return text.ToString();
    }

    /// <summary>Every dial was read when the season began, and some are turned every week.</summary>
    private static string Logbook(CourseSize size, Dice dice)
    {
        var text = new StringBuilder("time,kind,where,value,unit,until,by,note\n");
        for (var box = 1; box <= size.Controllers; box++)
        {
            text.Append(string.Create(CultureInfo.InvariantCulture, $"{size.From:yyyy-MM-dd} 06:00,setting,B{box},{dice.Whole(8, 14) * 10},%,,A. Hand,\n"));
        }

        for (var day = size.From.AddDays(7); day <= size.Through; day = day.AddDays(7))
        {
            var (box, program) = (dice.Whole(1, size.Controllers), Kinds[dice.Whole(0, size.Programs - 1)]);
            text.Append(string.Create(CultureInfo.InvariantCulture, $"{day:yyyy-MM-dd} 06:{dice.Whole(10, 59)},setting,B{box}/{program},{dice.Whole(6, 30) * 5},%,,A. Hand,\n"));
        }

        return text.ToString();
    }

    private static DateOnly Later(DateOnly a, DateOnly b) => a > b ? a : b;

    private static DateOnly Earlier(DateOnly a, DateOnly b) => a < b ? a : b;
}
