using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>A stop rule is the least rain that turns the whole decision: held against whole mornings with that rain in the gauges, step by step.</summary>
public class StopRuleTests
{
    private const double MostMm = 50;

    [Fact]
    public void On_random_sites_rain_below_it_leaves_the_program_running_and_any_from_it_on_stops_it()
    {
        List<string> wrong = [];
        int rules = 0, none = 0;
        for (var seed = 1; seed <= 120; seed++)
        {
            var random = RandomCase.Of(seed);
            var inputs = random.Morning(random.Weather[^1].Date);
            var (found, absent) = Hold(inputs, 0.5, string.Create(CultureInfo.InvariantCulture, $"seed {seed}"), wrong);
            (rules, none) = (rules + found, none + absent);
        }

        Assert.True(rules > 25 && none > 25, $"{rules} rules, {none} programs without one");
        Assert.True(wrong.Count == 0, $"{wrong.Count} of {rules} rules:\n" + string.Join('\n', wrong.Take(12)));
    }

    [Fact]
    public void Room_that_a_site_asks_to_be_full_before_it_skips_counts()
    {
        // 5 mm missing tonight, 2 given as set. With 2.5 mm of rain the need is 25 %; but as long as nothing drains it may run: up to 3 mm of rain.
        var course = SmallCourse.OneStation(0) with { Log = [Set(20)] };
        Assert.Equal(2.5, course.Advice().StopRule!.RainMm, 6);
        var patient = course with { Report = new ReportPolicy { SkipRoom = 0 } };
        Assert.Equal(3.5, patient.Advice().StopRule!.RainMm, 6);
        Assert.Empty(Wrong(patient));
    }

    [Fact]
    public void A_box_with_one_percentage_stops_when_all_of_it_can()
    {
        var box = SmallCourse.Box with
        {
            Applies = PercentApplies.Controller,
            Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "21:00")],
        };
        var course = new SmallCourse
        {
            Controller = box,
            Stations = [SmallCourse.Station(1, programs: "P1"), SmallCourse.Station(2, programs: "P2")],
            DepletionMm = [5, 15],
            Log = [Set(100)],
        };
        var rules = course.Sheet().Programs.Select(p => p.StopRule).ToList();
        Assert.Equal([17.5, 17.5], rules.Select(r => Math.Round(r!.RainMm, 6))); // the drier one's: 15 and 5 are missing, 2.5 may be
        Assert.All(rules, r => Assert.Equal(new TimeOnly(21, 0), TimeOnly.FromDateTime(r!.Before.UtcDateTime)));
        Assert.Empty(Wrong(course));
    }

    [Fact]
    public void Where_nobody_answered_it_is_the_rain_that_stops_it_whichever_way_it_was()
    {
        var yesterday = SmallCourse.Monday.AddDays(-1);
        var sheet = new IssuedSheet(yesterday, 1, new(yesterday.ToDateTime(new(5, 0)), TimeSpan.Zero), [new IssuedLine(new("C1", "P1"), AdviceKind.Set, 20, Asks: true)]);
        var course = SmallCourse.OneStation(20) with { Sheets = [sheet], Weather = [Dry(yesterday)] };
        var advice = course.Advice();
        Assert.NotNull(advice.Unanswered);
        Assert.NotNull(advice.StopRule);
        Assert.Empty(Wrong(course));
    }

    [Fact]
    public void Ground_on_two_gauges_needs_the_rain_in_both()
    {
        var course = new SmallCourse
        {
            Stations = [SmallCourse.Station(1), SmallCourse.Station(2, groundM2: 60) with { Gauge = "hill" }],
            DepletionMm = [5, 5],
            Report = new ReportPolicy { Satisfy = 1 },
        };
        var rule = course.Advice().StopRule!;
        Assert.Equal(("yard", "hill", 7.5), (rule.Gauge, Assert.Single(rule.AlsoAt), Math.Round(rule.RainMm, 6)));
        Assert.Empty(Wrong(course));

        // In one of the two alone it is not enough.
        Assert.NotEqual(AdviceKind.Skip, (course with { RainSinceMidnight = [new(rule.Before, rule.RainMm)] }).Advice().Advice);
    }

    private static WeatherDay Dry(DateOnly date) => new()
    {
        Date = date,
        Station = "yard",
        EtoMm = 5,
        Basis = EtoBasis.Hourly,
        Rain = [new("yard", 0, [], RainBasis.Measured, 0)],
    };

    private static LogEntry Set(double percent) => new()
    {
        Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)),
        Kind = LogKind.Setting,
        Where = new(PlaceKind.Controller, "C1", ""),
        Value = percent,
        Unit = LogUnit.Percent,
    };

    private static List<string> Wrong(SmallCourse course)
    {
        List<string> wrong = [];
        var (rules, _) = Hold(course.Inputs(), 0.5, "course", wrong);
        Assert.True(rules > 0, "no rule to hold");
        return wrong;
    }

    /// <summary>How many rules there are, and how many programs that run tonight have none; what does not hold goes into a list.</summary>
    private static (int Rules, int None) Hold(MorningInputs inputs, double stepMm, string name, List<string> wrong)
    {
        var sheet = MorningCalculation.Run(inputs);
        var clock = sheet.Site.Clock;
        var runs = sheet.Programs.Where(p => p.Advice is AdviceKind.Set or AdviceKind.Resume or AdviceKind.Leave && p.ExactPercent is not null).ToList();
        var rules = runs.Where(p => p.StopRule is { } r && clock.DateOf(r.Before) == inputs.Date).ToList();
        foreach (var before in rules.Select(p => p.StopRule!.Before).Distinct())
        {
            for (var step = 1; step * stepMm <= MostMm; step++)
            {
                // All around every rule, and every fourth step of the rest.
                if (step % 4 != 0 && !rules.Exists(p => Math.Abs((step * stepMm) - p.StopRule!.RainMm) < 3.1 * stepMm))
                {
                    continue;
                }

                var rained = MorningCalculation.Run(WithRain(inputs, before, step * stepMm)).Programs;
                foreach (var program in rules.Where(p => p.StopRule!.Before == before))
                {
                    var stops = rained.Single(p => p.Key == program.Key).Advice is AdviceKind.Skip or AdviceKind.KeepOff;
                    if (stops != (step * stepMm >= program.StopRule!.RainMm - 1e-6))
                    {
                        wrong.Add(string.Create(CultureInfo.InvariantCulture, $"{name} {program.Key}: the rule says {program.StopRule.RainMm:0.0} mm, and with {step * stepMm:0.0} mm it {(stops ? "stops" : "runs")}"));
                    }
                }
            }
        }

        return (rules.Count, runs.Count(p => p.StopRule is null));
    }

    private static MorningInputs WithRain(MorningInputs inputs, DateTimeOffset at, double mm) => inputs with
    {
        RainSinceMidnight = [.. inputs.RainSinceMidnight.Select(g => g with { RainMm = (g.RainMm ?? 0) + mm, Falls = [.. g.Falls, new RainFall(at, mm)] })],
    };
}
