using DailyAdjust.Core.Explain;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Advice;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Explain;

/// <summary>The advice of a later look of the day: what was measured of it, what is still expected, and how an hour's share follows from both.</summary>
public class LaterLookStepsTests
{
    /// <summary>Noon at the site of round numbers.</summary>
    private static readonly DateTimeOffset Noon = new(SmallCourse.Monday.ToDateTime(new(11, 57)), TimeSpan.Zero);

    /// <summary>Two starts a night from 14:00 on, somebody comes on Thursdays: several starts of the day lie on either side of what was measured.</summary>
    private static readonly SmallCourse Course = SmallCourse.OneStation(20) with
    {
        At = new(12, 30),
        EtoSoFar = new(4, Noon, "yard", IsSupplied: false),
        Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "14:00", "17:00", "22:00") with { Visit = new VisitDays.Weekdays([DayOfWeek.Monday, DayOfWeek.Thursday]) }] },
    };

    [Fact]
    public void The_measured_and_the_expected_part_are_named_and_come_to_the_day_s_reference_et()
    {
        var inputs = Course.Inputs();
        var sheet = MorningCalculation.Run(inputs);
        var steps = ProgramSteps.Of(inputs, sheet, sheet.Programs[0].Key)[0].Steps;
        Step Of(string symbol) => steps.First(s => s.Symbol.Is(symbol));
        Assert.Contains("measured from 00:00 to 11:57", Of("measured").Name, StringComparison.Ordinal);
        Assert.Contains("yard", Of("measured").Source, StringComparison.Ordinal);
        Assert.Contains("still expected", Of("ahead").Name, StringComparison.Ordinal);
        Assert.Equal(4, Of("measured").Value);
        Assert.Equal(5, Of("whole").Value);
        Assert.Equal(sheet.SecondLook!.RestMm, Of("ahead").Value);
        Assert.Equal(sheet.Freshness.ExpectedEtoMm, steps.Last(s => s.Symbol is "ETo" && s.Name.Contains("Mon 4 May", StringComparison.Ordinal)).Value);

        // Where the curve stands then follows from sunrise and sunset.
        Assert.Contains("rise", Of("then").Inputs.Select(i => i.Symbol));
    }

    [Fact]
    public void Every_share_of_the_day_before_and_after_what_was_measured_can_be_reckoned_from_named_numbers()
    {
        var kinds = new HashSet<AdviceKind>();
        foreach (var course in new[]
        {
            Course,
            Course with { RainSinceMidnight = [new(Noon.AddHours(-3), 6), new(Noon, 2)] },
            Course with { At = new(16, 0) },
            Course with { At = new(21, 0), EtoSoFar = new(6, Noon.AddHours(9), "yard", IsSupplied: true) },
            Course with { DepletionMm = [60] },
        })
        {
            var inputs = course.Inputs();
            var sheet = MorningCalculation.Run(inputs);
            Assert.True(ProgramStepsTests.Followed(inputs, kinds) > 20);
            AllNamed(ProgramSteps.Of(inputs, sheet, sheet.Programs[0].Key));
        }

        Assert.Contains(AdviceKind.Set, kinds);
    }

    [Fact]
    public void So_can_later_looks_of_the_example_site()
    {
        var kinds = new HashSet<AdviceKind>();
        var shares = 0;
        for (var date = new DateOnly(2026, 6, 6); date <= ExampleInputs.Last; date = date.AddDays(1))
        {
            foreach (var hour in new[] { 10, 16 })
            {
                var early = ExampleInputs.Morning(date);
                var through = ExampleSite.Clock.ToInstant(date, new(hour, 0));
                var inputs = early with { AsOf = through.AddMinutes(30), NewestReadingEnd = through, EtoSoFar = new EtoSoFar(hour == 10 ? 1.2 : 5.4, through, "yard", IsSupplied: false) };
                ProgramStepsTests.Followed(inputs, kinds);
                var sheet = MorningCalculation.Run(inputs);
                shares += sheet.Programs.Sum(p => AllNamed(ProgramSteps.Of(inputs, sheet, p.Key)));
            }
        }

        Assert.True(shares > 100, $"{shares} shares");
    }

    /// <summary>Everything that the equations of the day's shares need stands in a step before them, with that value.</summary>
    private static int AllNamed(IReadOnlyList<Section> sections)
    {
        var known = new Dictionary<string, double>(StringComparer.Ordinal);
        var shares = 0;
        foreach (var step in sections.SelectMany(s => s.Steps))
        {
            if (step.Symbol is "share")
            {
                shares++;
                Assert.All(step.Inputs, input => Assert.True(known.TryGetValue(input.Symbol, out var before) && Math.Abs(before - input.Value) <= 1e-12, $"{step.Name}: {input.Symbol}"));
            }

            if (step.Symbol.Length > 0 && step.Value is { } value)
            {
                known[step.Symbol] = value;
            }
        }

        return shares;
    }
}
