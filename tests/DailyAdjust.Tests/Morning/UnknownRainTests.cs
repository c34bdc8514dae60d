using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Advice;
using DailyAdjust.Tests.Irrigation;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>
/// Rain that nobody knows. The morning is 25 May 2026; since 1 May 0.5 mm a day were drawn and nothing ran, so that 12 mm are missing,
/// all that is allowable, and 12.5 by tonight: 125 %. The dial stands at 1 %, which keeps nothing within it.
/// </summary>
public class UnknownRainTests
{
    private const int Today = 24;
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");

    [Fact]
    public void It_never_raises_a_percentage_above_its_setting()
    {
        Assert.Equal((AdviceKind.Set, 125d), Said(Sheet(unknownOn: null)));
        var held = Sheet(unknownOn: 20);
        Assert.Equal((AdviceKind.Leave, 1d), Said(held));
        Assert.Equal("Some of the rain is unknown, so nothing is raised above its setting: enter the gauge.", held.Programs[0].Reason.ToString());
    }

    [Fact]
    public void What_is_turned_on_goes_no_higher_than_it_last_ran_and_the_sheet_says_so_in_other_words()
    {
        var advice = (Course(unknownOn: 20) with { Log = [new LogEntry { Time = new(OneZone.First, new(1, 0)), Kind = LogKind.Off, Where = Program }] }).Sheet().Programs[0];
        Assert.Equal((AdviceKind.Resume, 100d), (advice.Advice, advice.Percent!.Value)); // 125 % without the doubt
        Assert.Equal("Its ground needs water. Some of the rain is unknown, so it is turned on at no more than it last ran at, 100 %: enter the gauge.", advice.Reason.ToString());
    }

    [Fact]
    public void It_is_asked_for_as_long_as_it_holds_a_number_down()
    {
        var sheet = Sheet(unknownOn: 0);
        Assert.Equal(1, Said(sheet).Percent);
        Assert.Equal(("yard", OneZone.First), (Assert.Single(sheet.Freshness.UnknownRain).Gauge, sheet.Freshness.UnknownRain[0].Date));
    }

    [Fact]
    public void Ground_that_was_full_since_does_not_rest_on_it()
    {
        // 10 mm fell on the 2nd, when 0.5 was missing: since then 23 days of 0.5 mm, and tonight's.
        var sheet = Sheet(unknownOn: 0, soakedOn: 1);
        Assert.Equal((AdviceKind.Set, 120d), Said(sheet));
        Assert.Empty(sheet.Freshness.UnknownRain);
    }

    [Fact]
    public void Beyond_45_days_it_counts_no_more_wherever_the_balance_begins()
    {
        // 50 days of 0.24 mm are 12 missing, 12.24 by tonight. 46 days back is past what any sheet looks at; 45 is not.
        Assert.Equal((AdviceKind.Set, 120d), Said(Sheet(unknownOn: 4, today: 50, etoMm: 0.24)));
        Assert.Equal((AdviceKind.Leave, 1d), Said(Sheet(unknownOn: 5, today: 50, etoMm: 0.24)));
    }

    private static (AdviceKind Advice, double Percent) Said(MorningSheet sheet) => (sheet.Programs[0].Advice, sheet.Programs[0].Percent!.Value);

    private static MorningSheet Sheet(int? unknownOn, int? soakedOn = null, int today = Today, double etoMm = 0.5) => Course(unknownOn, soakedOn, today, etoMm).Sheet();

    private static SmallCourse Course(int? unknownOn, int? soakedOn = null, int today = Today, double etoMm = 0.5) => SmallCourse.OneStation(0, SmallCourse.Area with { AllowableDepletion = 0.12 }) with
    {
        Date = OneZone.First.AddDays(today),
        Weather = [.. Enumerable.Range(0, today).Select(n => n == unknownOn
            ? OneZone.Day(n, etoMm) with { Rain = [new("yard", null, [], RainBasis.Unknown, 0)] }
            : OneZone.Day(n, etoMm, n == soakedOn ? 10 : 0))],
        Log =
        [
            new LogEntry { Time = new(OneZone.First, new(1, 0)), Kind = LogKind.Off, Where = Program },
            new LogEntry { Time = new(OneZone.First.AddDays(today), new(1, 0)), Kind = LogKind.Setting, Where = Program, Value = 1, Unit = LogUnit.Percent },
        ],
    };
}
