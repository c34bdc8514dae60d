using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Sheets that nobody answers, morning after morning, on the course of round numbers.</summary>
public class OpenQuestionTests
{
    private const int Mornings = 14;
    private static readonly ProgramKey Program = new("C1", "P1");

    /// <summary>48 mm missing of which 50 may be, and a quarter of an hour a night where half an hour is drawn.</summary>
    private static readonly SmallCourse Drying = SmallCourse.OneStation(48, SmallCourse.Area with { LeaveEmpty = 0.8 }) with { Log = [Said(LogKind.Setting, 25)] };

    [Fact]
    public void Fourteen_mornings_without_an_answer_stay_bounded()
    {
        // Half of what the turf draws: as logged the ground dries out and would ask for ever more.
        var days = Silent(Drying, Mornings);
        Assert.All(days, d => Assert.Equal(25, d.Advice.Present.Percent));
        Assert.Contains(days, d => d.Advice.Unanswered is { AsLogged.Percent: >= 190 });
        Assert.All(days.Skip(1), d => Assert.NotNull(d.Advice.Unanswered));
        var numbers = days.Where(d => d.Advice.Advice is AdviceKind.Set or AdviceKind.Resume).Select(d => (d.Date, Percent: d.Advice.Percent!.Value)).ToList();
        Assert.True(numbers.Count > 5, $"{numbers.Count} numbers");
        foreach (var (before, after) in numbers.Zip(numbers.Skip(1)))
        {
            Assert.InRange(Math.Abs(after.Percent - before.Percent), 0, 5 * (after.Date.DayNumber - before.Date.DayNumber));
        }
    }

    [Fact]
    public void Without_the_bound_the_number_would_have_run_away()
    {
        // The check above can fail: the drier way of judging alone asks for the end of the dial.
        var days = Silent(Drying, Mornings);
        Assert.Equal(200, days[^1].Advice.Unanswered!.AsLogged.Percent);
        Assert.True(days[^1].Advice.Percent < 150, $"{days[^1].Advice.Percent} %");
    }

    [Fact]
    public void A_skip_that_was_obeyed_but_never_logged_comes_back_as_resume()
    {
        var course = SmallCourse.OneStation(0, SmallCourse.Area with { LeaveEmpty = 0.5, RunAt = 0.5 });
        var days = Silent(course, Mornings);
        Assert.Equal(AdviceKind.Skip, days[0].Advice.Advice);

        // It was switched off on the first day and draws 5 mm a day: past half of its 50 mm on the sixth evening.
        var resume = days.First(d => d.Advice.Advice == AdviceKind.Resume);
        Assert.InRange(resume.Date.DayNumber - days[0].Date.DayNumber, 4, 6);
        Assert.InRange(resume.Advice.Percent!.Value, 45, 75);
        Assert.All(days.TakeWhile(d => d.Date < resume.Date), d => Assert.Equal(AdviceKind.Skip, d.Advice.Advice));
        Assert.True(resume.Advice.NeedsVisit);
    }

    [Fact]
    public void Ground_of_somebody_who_does_as_the_sheets_say_and_never_logs_it_does_not_dry_on()
    {
        // Half an hour a night at 100 % brings the 5 mm that are drawn, so as logged the ground stays at 40 mm, not due before 45: skip. Carried out, it goes past its 50 mm.
        var course = SmallCourse.OneStation(40, SmallCourse.Area with { RunAt = 0.9, LeaveEmpty = 0.5 }, minutes: 30) with
        {
            Log = [Said(LogKind.Setting, 100)],
        };
        var days = Silent(course, 20);
        Assert.Equal(AdviceKind.Skip, days[0].Advice.Advice);
        var past = 0;
        foreach (var (_, advice, _, _) in days.Where(d => d.Advice.Unanswered is not null))
        {
            Assert.Equal(AdviceKind.Skip, advice.Unanswered!.AsLogged.Kind);
        }

        for (var i = 1; i < days.Count; i++)
        {
            // What is in the ground had every sheet been carried out.
            var carriedOut = days[i].Course with { Log = [.. days[i].Course.Log, .. days[i - 1].Sheets.Select(s => new LogEntry { Time = new(s.Date, new(12, 0)), Kind = LogKind.Round, Where = new(PlaceKind.Site, "", ""), Sheet = s.Date })] };
            var missing = carriedOut.Advice().Zones[0].DepletionMm;
            var byEvening = missing + 5;
            past += byEvening > 50 ? 1 : 0;
            Assert.InRange(missing, 0, 51);
            Assert.False(byEvening > 50 && days[i].Advice.Advice == AdviceKind.Skip, $"day {i}: {byEvening} mm missing by the evening");
        }

        Assert.True(past > 5, $"{past} evenings");
    }

    [Fact]
    public void The_wetter_way_decides_what_can_be_left_out()
    {
        // As logged 31 mm are missing, of which 30 may be left empty; if 100 % was set on Saturday, 15.
        var course = SmallCourse.OneStation(0, SmallCourse.Area with { LeaveEmpty = 0.6, RunAt = 0.3 }) with
        {
            Log = [Said(LogKind.Setting, 20) with { Time = new(SmallCourse.Monday.AddDays(-3), new(9, 0)) }],
            Sheets = [Sheet(SmallCourse.Monday.AddDays(-2), AdviceKind.Set, 100)],
            Weather = [Day(-2), Day(-1)],
            DepletionMm = [25],
        };
        var advice = course.Advice();
        Assert.Equal((AdviceKind.Skip, AdviceKind.Skip), (advice.Advice, advice.Unanswered!.IfDone.Kind));
        Assert.NotEqual(AdviceKind.Skip, advice.Unanswered.AsLogged.Kind);
    }

    [Fact]
    public void The_drier_way_sends_the_hose()
    {
        var course = SmallCourse.OneStation(45) with
        {
            Log = [Said(LogKind.Setting, 100) with { Time = new(SmallCourse.Monday.AddDays(-3), new(9, 0)) }],
            Sheets = [Sheet(SmallCourse.Monday.AddDays(-2), AdviceKind.Skip, null)],
            Weather = [Day(-2), Day(-1)],
        };
        var dry = Assert.Single(course.Sheet().Driest);
        Assert.Equal(55, dry.DepletionMm, 0.5);

        // Had the skip not been done, 20 mm came in two nights: the ground is within its 50 mm, and the hose is for nothing.
        Assert.Equal(new OtherWay(IsIfDone: false, 0), dry.OtherWay);
    }

    [Fact]
    public void A_ceiling_of_the_place_is_kept_whatever_the_last_number_was()
    {
        var course = SmallCourse.OneStation(60) with
        {
            Sheets = [Sheet(SmallCourse.Monday.AddDays(-1), AdviceKind.Set, 200)],
            Restrictions = [new Restriction { Name = "stage 2", MostPercent = 70 }],
        };
        Assert.Equal((AdviceKind.Set, 70d), (course.Advice().Advice, course.Advice().Percent!.Value));
    }

    [Fact]
    public void An_unanswered_turn_on_may_have_been_done_so_leaving_it_out_asks_for_a_walk()
    {
        var off = SmallCourse.OneStation(0, SmallCourse.Area with { LeaveEmpty = 0.9 }) with
        {
            Log = [Said(LogKind.Off, null) with { Time = new(SmallCourse.Monday.AddDays(-3), new(9, 0)) }],
        };
        Assert.Equal((AdviceKind.KeepOff, false), (off.Advice().Advice, off.Advice().NeedsVisit));
        var asked = off with { Sheets = [Sheet(SmallCourse.Monday.AddDays(-1), AdviceKind.Resume, 80)] };
        Assert.Equal((AdviceKind.Skip, true), (asked.Advice().Advice, asked.Advice().NeedsVisit));
    }

    [Fact]
    public void Staying_near_an_earlier_number_is_no_reason_to_water_more_than_either_way_asks()
    {
        // Logged at 60 %, asked for 200 % yesterday, and the ground is nearly full: as logged 60 % is right, if it was done 50 % is.
        var course = SmallCourse.OneStation(1) with
        {
            Log = [Said(LogKind.Setting, 60) with { Time = new(SmallCourse.Monday.AddDays(-3), new(9, 0)) }],
            Sheets = [Sheet(SmallCourse.Monday.AddDays(-1), AdviceKind.Set, 200)],
        };
        var advice = course.Advice();
        Assert.Equal((AdviceKind.Leave, AdviceKind.Set), (advice.Unanswered!.AsLogged.Kind, advice.Unanswered.IfDone.Kind));
        Assert.Equal((AdviceKind.Set, 60d), (advice.Advice, advice.Percent!.Value));

        // At 65 %, which is right as well, more than the 60 that are wanted if it was done.
        var more = (course with { Log = [course.Log[0] with { Value = 65 }] }).Advice();
        Assert.Equal((AdviceKind.Set, 65d), (more.Advice, more.Percent!.Value));
        Assert.Equal("An earlier sheet's number was not answered; so this one moves from it by no more than a step a day; neither way needs more than 65 %.", more.Reason.ToString());
    }

    [Fact]
    public void One_answer_settles_all_of_them()
    {
        var days = Silent(Drying, 8);
        var course = days[^1].Course with { Date = days[^1].Date.AddDays(1), Weather = [.. days[^1].Course.Weather, Day(7)], Sheets = days[^1].Sheets };
        Assert.NotNull(course.Advice().Unanswered);
        var answered = course with { Log = [.. course.Log, new LogEntry { Time = new(days[^1].Date, new(14, 0)), Kind = LogKind.Setting, Where = new(PlaceKind.Program, "C1", "P1"), Value = 80, Unit = LogUnit.Percent }] };
        Assert.Null(answered.Advice().Unanswered);
        Assert.Equal(80, answered.Advice().Present.Percent);
    }

    [Fact]
    public void Ground_whose_moisture_is_only_assumed_is_turned_on_again_where_a_sheet_may_have_turned_it_off()
    {
        var course = SmallCourse.OneStation(5, SmallCourse.Area with { LeaveEmpty = 0.9, Soil = SmallCourse.Area.Soil with { FieldCapacityPercent = 30 } }) with
        {
            StartSoil = StartSoil.Assumed,
            Log = [Said(LogKind.Setting, 90) with { Time = new(SmallCourse.Monday.AddDays(-3), new(9, 0)) }],
        };
        Assert.Equal(AdviceKind.Leave, course.Advice().Advice);
        var advice = (course with { Sheets = [Sheet(SmallCourse.Monday.AddDays(-1), AdviceKind.Skip, null)] }).Advice();
        Assert.Equal((AdviceKind.Resume, 90d, true), (advice.Advice, advice.Percent!.Value, advice.NeedsVisit));
        Assert.StartsWith("How wet this ground is was only assumed", advice.Reason.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Morning after morning the sheet is issued and nobody says anything.</summary>
    private static List<(DateOnly Date, ProgramAdvice Advice, SmallCourse Course, IReadOnlyList<IssuedSheet> Sheets)> Silent(SmallCourse first, int mornings)
    {
        var issued = new List<IssuedSheet>();
        var days = new List<(DateOnly, ProgramAdvice, SmallCourse, IReadOnlyList<IssuedSheet>)>();
        for (var i = 0; i < mornings; i++)
        {
            var course = first with { Date = SmallCourse.Monday.AddDays(i), Weather = [.. Enumerable.Range(0, i).Select(Day)], Sheets = [.. issued] };
            var sheet = course.Sheet();
            var advice = sheet.Programs.Single();
            issued.Add(new IssuedSheet(sheet.Date, 1, sheet.AsOf, [new IssuedLine(Program, advice.Advice, advice.Percent, advice.NeedsVisit)]));
            days.Add((sheet.Date, advice, course, [.. issued]));
        }

        return days;
    }

    private static WeatherDay Day(int after) => new()
    {
        Date = SmallCourse.Monday.AddDays(after),
        Station = "shop",
        EtoMm = 5,
        Basis = EtoBasis.Daily,
        Rain = [new GaugeDay("yard", 0, [], RainBasis.Measured, 0)],
    };

    private static LogEntry Said(LogKind kind, double? percent) => new()
    {
        Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)),
        Kind = kind,
        Where = new(PlaceKind.Program, "C1", "P1"),
        Value = percent,
        Unit = percent is null ? LogUnit.None : LogUnit.Percent,
    };

    private static IssuedSheet Sheet(DateOnly date, AdviceKind advice, double? percent) => new(
        date, 1, new DateTimeOffset(date.ToDateTime(new(5, 0)), TimeSpan.Zero), [new IssuedLine(Program, advice, percent, Asks: true)]);
}
