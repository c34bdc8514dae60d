using System.Globalization;
using System.Text;
using DailyAdjust.Core.Explain;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Replay;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Sites;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Text;
using DailyAdjust.Tests.Courses;
using DailyAdjust.Tests.Files.Readings;
using DailyAdjust.Tests.Plain;
using DailyAdjust.Tests.Reports;

namespace DailyAdjust.Tests.Recorded;

/// <summary>Invented courses through every calculation of Core: what each of them gives, as text.</summary>
internal static class RecordedCases
{
    private const int Mornings = 150;
    private const int Weathers = 48;

    /// <summary>Names of the cases, each made anew from its name alone.</summary>
    public static IReadOnlyList<(string Name, Func<string> Result)> All { get; } =
    [
        .. Enumerable.Range(1, Mornings).Select(seed => (Name("morning", seed), (Func<string>)(() => Morning(seed)))),
        .. Enumerable.Range(1, Mornings).Select(seed => (Name("books", seed), (Func<string>)(() => Books(seed)))),
        .. Enumerable.Range(1, Mornings / 3).Select(seed => (Name("steps", seed), (Func<string>)(() => Steps(seed)))),
        .. Enumerable.Range(1, Mornings / 3).Select(seed => (Name("plan", seed), (Func<string>)(() => Plan(seed)))),
        .. Enumerable.Range(1, Mornings).Select(seed => (Name("rich", seed), (Func<string>)(() => Rich(seed, isCoarse: false)))),
        .. Enumerable.Range(1, Mornings).Select(seed => (Name("coarse", seed), (Func<string>)(() => Rich(seed, isCoarse: true)))),
        .. Enumerable.Range(1, Weathers).Select(seed => (Name("weather", seed), (Func<string>)(() => Weather(seed)))),
    ];

    private static string Name(string kind, int seed) => string.Create(CultureInfo.InvariantCulture, $"{kind} {seed}");

    /// <summary>Two mornings, one of them with rounds that nobody answered, as data and in words.</summary>
    private static string Morning(int seed)
    {
        var course = RandomCase.Of(seed);
        var text = new StringBuilder();
        foreach (var inputs in (MorningInputs[])[course.Morning(course.Weather[^1].Date), Unanswered(course, course.Weather[^2].Date)])
        {
            text.Append(Said(inputs, MorningCalculation.Run(inputs)));
        }

        return text.ToString();
    }

    /// <summary>A morning and a later look of it where everything that can be said was said, the way to its numbers, and the books.</summary>
    private static string Rich(int seed, bool isCoarse)
    {
        var course = RichCase.Of(seed, isCoarse);
        var text = new StringBuilder();
        foreach (var hour in (TimeOnly[])[course.Site.Report.At[0], course.Site.Report.At[1]])
        {
            var inputs = RichCase.Morning(course, course.Weather[^2].Date, hour, seed, isCoarse);
            var sheet = MorningCalculation.Run(inputs);
            text.Append(Said(inputs, sheet));
            foreach (var program in sheet.Programs)
            {
                text.Append(Dump.Of(ProgramSteps.Of(inputs, sheet, program.Key)));
            }
        }

        return text.Append(Dump.Of(Balance.Run(course.Balance).Days)).Append(Dump.Of(WaterBooksCalculation.Of(new WaterBooksInputs(course.Balance, course.Site.Start.AddDays(2))))).Append(Dump.Of(BaseProgramCheck.Of(course.Site))).ToString();
    }

    /// <summary>A sheet as data and in words, and the visits of its morning.</summary>
    private static string Said(MorningInputs inputs, MorningSheet sheet) => Dump.Of(sheet) + FullText(sheet) + VisitsText.Write(MorningCalculation.Visits(inputs), boxes: null);

    private static string FullText(MorningSheet sheet) => Encoding.UTF8.GetString(MorningReport.Render(sheet, InventedMorning.Issue)[ReportFiles.FullText].Span);

    private static MorningInputs Unanswered(RandomCase course, DateOnly date)
    {
        var plain = course.Morning(date);
        return plain with
        {
            Sheets = [.. course.Sheets.Where(s => s.Date < date)],
            Log = [.. course.Log.Where(e => e.Time.Instant(course.Site.Clock) <= plain.AsOf)],
        };
    }

    private static string Books(int seed)
    {
        var course = RandomCase.Of(seed);
        return Dump.Of(Balance.Run(course.Balance).Days)
            + Dump.Of(WaterBooksCalculation.Of(new WaterBooksInputs(course.Balance, course.Site.Start.AddDays(2))))
            + Dump.Of(ReplayCalculation.Run(new ReplayInputs { Site = course.Site, Weather = course.Weather, From = course.Site.Start, To = course.Weather[^1].Date, RainKnownAhead = seed % 2 == 0 }));
    }

    private static string Steps(int seed)
    {
        var course = RandomCase.Of(seed);
        var inputs = Unanswered(course, course.Weather[^1].Date);
        var sheet = MorningCalculation.Run(inputs);
        var text = new StringBuilder();
        foreach (var program in sheet.Programs)
        {
            text.Append(Dump.Of(ProgramSteps.Of(inputs, sheet, program.Key)));
        }

        foreach (var station in course.Site.Stations)
        {
            text.Append(Dump.Of(ZoneDaySteps.Of(course.Balance, station.Key)));
        }

        return text.ToString();
    }

    private static string Plan(int seed)
    {
        var dice = new Dice((ulong)seed);
        var site = RandomCase.Of(seed).Site;
        double[] eto = [.. Enumerable.Range(0, 12).Select(month => dice.Between(0.5, 3) + (4 * Math.Max(0, 5.5 - Math.Abs(month - 5.5)) / 5.5))];
        double[] rain = [.. Enumerable.Range(0, 12).Select(_ => dice.Between(0, 160))];
        var plan = BasePlan.Of(site, eto);
        IReadOnlyList<MonthRain?> effective = EffectiveRain.OfYear([], "", site.Start, rain);
        return Dump.Of(plan) + Dump.Of(NightSupply.Of(site, plan)) + Dump.Of(SeasonPercent.Of(site, eto, effective)) + Dump.Of(BaseProgramCheck.Of(site))
            + string.Concat(site.Controllers.Select(c => Dump.Of(DoorChart.Of(site, c.Id))));
    }

    /// <summary>Readings by the hour with everything that goes wrong with them, up to the sheet of the last morning.</summary>
    private static string Weather(int seed)
    {
        var from = new DateOnly(2026, 1 + (seed % 11), 1);
        var dice = new Dice((ulong)seed);
        var boxes = dice.Whole(1, 3);
        var size = new CourseSize { Seed = (ulong)seed, Stations = boxes * dice.Whole(4, 9), Controllers = boxes, Programs = 4, From = from, Through = from.AddDays(11) };
        var files = CourseFiles.Of(size);
        var site = Tight(SiteReader.Read("site.yaml", files["site.yaml"], "stations.csv", files["stations.csv"]).Site!, dice);
        var log = LogbookReader.Read("logbook.csv", files["logbook.csv"], site).Entries;
        var read = StationFile.Read(Spoilt(files[string.Create(CultureInfo.InvariantCulture, $"yard-{from.Year}.csv")], dice), site.Weather.Sources.First(), site.Clock);
        var (date, readings) = (size.Through, new Dictionary<string, IReadOnlyList<Reading>>(StringComparer.Ordinal) { ["yard"] = read.Readings });
        var asOf = site.Clock.ToInstant(date, new(5, 0));
        IReadOnlyList<SiteVersion> versions = [new(from, site)];
        var inputs = new WeatherDayInputs { Versions = versions, From = from, Through = date.AddDays(-1), Readings = readings, Log = [], AsOf = asOf };
        var days = WeatherDays.Compute(inputs);
        var text = new StringBuilder(Dump.Of(days));
        foreach (var day in days.Where(d => d.Date.Day % 3 == 0))
        {
            text.Append(Dump.Of(EtoSteps.Of(inputs with { From = day.Date, Through = day.Date, Before = [.. days.Where(d => d.Date < day.Date)] }, day)));
        }

        var newest = WeatherDays.Newest(site, asOf, readings);
        var sheet = MorningCalculation.Run(new MorningInputs
        {
            Versions = versions,
            Date = date,
            AsOf = asOf,
            Weather = days,
            RainSinceMidnight = WeatherDays.RainSinceMidnight(site, date, asOf, readings, [], []),
            RainSetAsideSinceMidnight = WeatherDays.RainSetAsideSinceMidnight(site, date, asOf, readings),
            EtoSoFar = seed % 3 == 0 ? WeatherDays.EtoSinceMidnight(site, date, asOf, readings) : null,
            NightReadings = [.. read.Readings.Where(r => r.End <= asOf && r.End > asOf.AddHours(-11))],
            NewestReadingEnd = newest?.End,
            NewestReadingStation = newest?.Station ?? "",
            Log = [.. log.Where(e => e.Time.Instant(site.Clock) <= asOf)],
        });
        return text.Append(FullText(sheet)).ToString();
    }

    /// <summary>A pump and a window into which not every night fits, and boxes that take programs together, one after another or not at all.</summary>
    private static Site Tight(Site site, Dice dice) => site with
    {
        PumpCapacityLPerMin = dice.Between(120, 900),
        Window = dice.Chance(0.5) ? site.Window : new WateringWindow(new(20, 0), new(dice.Whole(1, 6), 0)),
        Controllers = [.. site.Controllers.Select(c => c with { Overlap = dice.OneOf(Enum.GetValues<ProgramOverlap>()), PercentStep = dice.OneOf(1.0, 5, 10) })],
    };

    /// <summary>Rows that are lost, cells that are empty, sensors that stick, jump or turn against each other.</summary>
    private static string Spoilt(string csv, Dice dice)
    {
        var lines = csv.TrimEnd('\n').Split('\n').ToList();
        for (var spoils = dice.Whole(0, 5); spoils > 0; spoils--)
        {
            var (row, column, length) = (dice.Whole(1, lines.Count - 1), dice.Whole(1, 5), dice.Whole(1, 30));
            var how = dice.Whole(0, 4);
            var stuck = lines[row].Split(',')[column];
            for (var i = row; i < Math.Min(lines.Count, row + length); i++)
            {
                var cells = lines[i].Split(',');
                cells[column] = how switch
                {
                    0 => "",
                    1 => stuck,
                    2 => string.Create(CultureInfo.InvariantCulture, $"{dice.Between(-60, 1500)}"),
                    3 => string.Create(CultureInfo.InvariantCulture, $"{double.Parse(cells[column].Length == 0 ? "0" : cells[column], CultureInfo.InvariantCulture) * 1.6:0.0}"),
                    _ => cells[column],
                };
                lines[i] = string.Join(',', cells);
            }

            if (how == 4)
            {
                lines.RemoveRange(row, Math.Min(length, lines.Count - row));
            }

            if (lines.Count < 40)
            {
                break;
            }
        }

        return string.Join('\n', lines) + "\n";
    }
}
