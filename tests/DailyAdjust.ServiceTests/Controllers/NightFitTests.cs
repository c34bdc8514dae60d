using System.Text.Json;
using Xunit;

namespace DailyAdjust.ServiceTests.Controllers;

/// <summary>Whether the night holds what is advised, through the real program.</summary>
public sealed class NightFitTests
{
    private const string Dial = "{ applies: program, max: 200 %, step: 5 % }";
    private const string TwoPrograms = "controller,station,area,minutes P1,minutes P2,precipitation rate (mm/h),flow (L/min),area watered (m2)\nC1,1,greens,60,,10,100,600\nC1,2,rough,,60,10,100,600";
    private const string TwoBoxes = "controller,station,area,minutes P1,precipitation rate (mm/h),flow (L/min),area watered (m2)\nC1,1,greens,60,10,100,600\nC2,1,rough,60,10,100,600";

    [Theory]
    [InlineData("together", "2026-05-04T23:30")]
    [InlineData("stack", "2026-05-05T00:00")] // begins when the first has ended
    public void Programs_of_one_box_that_overlap(string overlap, string secondFinishes)
    {
        using var course = new SmallCourse(SmallCourse.Box("C1", Dial, $"overlap: {overlap}", ("P1", "\"22:00\""), ("P2", "\"22:30\"")), TwoPrograms);
        var sheet = course.Morning();
        var found = Assert.Single(sheet.Fit.GetProperty("overlaps").EnumerateArray());
        Assert.Equal(("P1", "P2", 30, 50), (found.GetProperty("first").GetString(), found.GetProperty("second").GetString(), found.GetProperty("minutes").GetDouble(), found.GetProperty("largestPercent").GetDouble()));
        Assert.Equal(secondFinishes, sheet.Program("C1/P2").GetProperty("finishes").GetString());
        Both(sheet, "P1 and P2 overlap by 30 min. Up to 50 % on P1 they do not.");
    }

    [Fact]
    public void A_run_outside_the_watering_hours()
    {
        using var course = new SmallCourse(SmallCourse.Box("C1", Dial, "min_run: 0 min", ("P1", "\"18:00\""), ("P2", "\"22:00\"")), TwoPrograms, "window: { opens: \"20:00\", closes: \"06:00\" }");
        var sheet = course.Morning();
        var found = Assert.Single(sheet.Fit.GetProperty("window").EnumerateArray());
        Assert.Equal(("P1", "2026-05-04T19:00"), (found.GetProperty("program").GetString(), found.GetProperty("finishes").GetString()));
        Both(sheet, "outside the watering window, ends");
    }

    [Fact]
    public void Boxes_that_together_ask_more_than_the_pump_gives()
    {
        // Nobody can make them short enough to miss one another: both start at once.
        using var course = new SmallCourse($"{SmallCourse.Box("C1", Dial, "route: 1", ("P1", "\"22:00\""))}\n{SmallCourse.Box("C2", Dial, "route: 2", ("P1", "\"22:10\""))}", TwoBoxes, "pump: { capacity: 150 L/min }");
        var sheet = course.Morning();
        var found = Assert.Single(sheet.Fit.GetProperty("pump").EnumerateArray());
        Assert.Equal(("2026-05-04T22:10", "2026-05-04T23:00", 200, 150), (found.GetProperty("from").GetString(), found.GetProperty("to").GetString(), found.GetProperty("flow").GetDouble(), found.GetProperty("capacity").GetDouble()));
        Both(sheet, "what runs asks 200 L/min, the pump gives 150 L/min.");
        var start = Assert.Single(sheet.Fit.GetProperty("startsThatFit").EnumerateArray());
        Assert.Equal(("C2", "P1", "23:10", "22:10"), (start.GetProperty("controller").GetString(), start.GetProperty("program").GetString(), start.GetProperty("firstStart").GetString(), start.GetProperty("insteadOf").GetString()));
        Both(sheet, "A first start that would fit: C2/P1 at 23:10 instead of 22:10.");
    }

    [Fact]
    public void What_no_other_start_mends_is_said()
    {
        using var course = new SmallCourse(
            $"{SmallCourse.Box("C1", Dial, "route: 1", ("P1", "\"22:00\""))}\n{SmallCourse.Box("C2", Dial, "route: 2", ("P1", "\"22:00\""))}", TwoBoxes, "pump: { capacity: 150 L/min }\nwindow: { opens: \"22:00\", closes: \"23:10\" }");
        var sheet = course.Morning();
        Assert.Equal(
            [("C1", true), ("C2", true)],
            sheet.Fit.GetProperty("noStartFits").EnumerateArray().Select(n => (n.GetProperty("controller").GetString(), n.GetProperty("lookedFor").GetBoolean())));
        Both(sheet, "C1/P1 and C2/P1: no first start within 12 hours of the present one fits while the others stay.");
    }

    [Fact]
    public void New_turf_that_is_watered_by_day_is_no_fault_of_the_night_and_what_a_rule_takes_out_stands_where_it_is_keyed_in()
    {
        using var course = new SmallCourse(
            SmallCourse.Box("C1", Dial, "route: 1", ("P1", "\"22:00\""), ("P2", "\"23:00\"")), TwoPrograms,
            "window: { opens: \"20:00\", closes: \"06:00\" }\nrestrictions: [ { name: city hours, areas: [greens], hours: { from: \"14:00\", until: \"16:00\" } } ]");
        course.Log("2026-05-04 04:00,grow-in,C1/P1,6 x 4 min,,2026-05-20,Pat,new sod");
        var sheet = course.Morning();
        Assert.NotEmpty(sheet.Fit.GetProperty("window").EnumerateArray());
        Assert.All(sheet.Fit.GetProperty("window").EnumerateArray(), w => Assert.True(w.GetProperty("growIn").GetBoolean()));
        Both(sheet, " x 4 min, every day. Leave out 15:00 on Mon 4 May: watering rule: city hours.");
        Assert.Contains("C1/P1 waters new turf outside the watering window, as was ordered: ", sheet.Page, StringComparison.Ordinal);
        Assert.DoesNotContain("outside the watering window, ends", sheet.Text + sheet.Page, StringComparison.Ordinal);
        Assert.DoesNotContain("no first start within", sheet.Text + sheet.Page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_that_is_still_on_when_an_event_or_the_hours_of_a_watering_rule_begin()
    {
        // An hour from 22:00. Twenty hours before 18:30 are 22:30; the rule begins at 22:45.
        using var course = new SmallCourse(
            SmallCourse.Box("C1", Dial, "overlap: stack", ("P1", "\"22:00\""), ("P2", "\"20:00\"")), TwoPrograms, "restrictions: [ { name: city hours, areas: [rough], hours: { from: \"20:45\", until: \"21:30\" } } ]");
        course.Log("2026-05-03 09:00,event,C1/P1,20,h,2026-05-05 18:30,Pat,club final");
        var sheet = course.Morning();
        Assert.Equal(
            [("P2", "2026-05-04T20:45", "watering rule: city hours"), ("P1", "2026-05-04T22:30", "event, club final")],
            sheet.Fit.GetProperty("reaching").EnumerateArray().Select(r => (r.GetProperty("program").GetString(), r.GetProperty("from").GetString(), r.GetProperty("why").GetString())));
        Both(sheet, "is still running from 22:30 to 23:00 today, when it must not (event, club final). Take that start out");
    }

    [Theory]
    [InlineData("[greens, rough]", "P2")]
    [InlineData("[rough, greens]", "P1")]
    public void Ground_named_last_is_cut_first_and_told_what_it_lacks(string priority, string cutProgram)
    {
        // An hour each, one after the other, and the window closes after an hour and a half: half an hour is 50 %, 5 mm.
        using var course = new SmallCourse(
            SmallCourse.Box("C1", Dial, "overlap: stack", ("P1", "\"22:00\""), ("P2", "\"22:00\"")), TwoPrograms, $"window: {{ opens: \"20:00\", closes: \"23:30\" }}\npriority: {priority}");
        var sheet = course.Morning();
        var cut = Assert.Single(sheet.Fit.GetProperty("cuts").EnumerateArray());
        Assert.Equal(
            (cutProgram, 100, 50, 5, 30),
            (cut.GetProperty("program").GetString(), cut.GetProperty("fromPercent").GetDouble(), cut.GetProperty("toPercent").GetDouble(), cut.GetProperty("shortDepthMm").GetDouble(), cut.GetProperty("shortMinutes").GetDouble()));
        Assert.Equal(("set", 50), sheet.Said("C1/" + cutProgram));
        var start = cut.GetProperty("startThatFits").GetString();
        Both(sheet, $"cut from 100 % to 50 %, because the watering window closes at 23:30 today; 5.0 mm or 30 min short a start. With a first start at {start} all of it would fit.");

        // The proposed start holds what it says.
        using var moved = new SmallCourse(
            SmallCourse.Box("C1", Dial, "overlap: stack", ("P1", cutProgram is "P1" ? $"\"{start}\"" : "\"22:00\""), ("P2", cutProgram is "P2" ? $"\"{start}\"" : "\"22:00\"")),
            TwoPrograms,
            $"window: {{ opens: \"20:00\", closes: \"23:30\" }}\npriority: {priority}");
        Assert.Empty(moved.Morning().Fit.GetProperty("cuts").EnumerateArray());
    }

    [Fact]
    public void A_pump_that_gives_less_by_the_logbook_until_its_end()
    {
        var boxes = $"{SmallCourse.Box("C1", Dial, "route: 1", ("P1", "\"22:00\""))}\n{SmallCourse.Box("C2", Dial, "route: 2", ("P1", "\"22:30\""))}";
        using var course = new SmallCourse(boxes, TwoBoxes, "pump: { capacity: 250 L/min }");
        course.Log("2026-05-03 09:00,pump,pump,150,L/min,2026-05-04,Ana,second pump is out");
        var reduced = course.Morning();

        // The rough begins while the greens are on: it gives what it can, the greens run in whole, and a start is proposed.
        var cut = Assert.Single(reduced.Fit.GetProperty("cuts").EnumerateArray());
        Assert.Equal(("C2", 25, "23:00"), (cut.GetProperty("controller").GetString(), cut.GetProperty("toPercent").GetDouble(), cut.GetProperty("startThatFits").GetString()));
        Assert.Equal(("leave", 100), reduced.Said("C1/P1"));
        using var whole = new SmallCourse(boxes, TwoBoxes, "pump: { capacity: 250 L/min }");
        whole.Log("2026-05-01 09:00,pump,pump,150,L/min,2026-05-03,Ana,second pump was out");
        Assert.Empty(whole.Morning().Fit.GetProperty("cuts").EnumerateArray());
    }

    [Fact]
    public void Rough_is_not_turned_on_at_the_expense_of_greens()
    {
        var boxes = $"{SmallCourse.Box("C1", Dial, "route: 1", ("P1", "\"22:00\""))}\n{SmallCourse.Box("C2", Dial, "route: 2", ("P1", "\"22:30\""))}";
        using var course = new SmallCourse(boxes, TwoBoxes, "pump: { capacity: 150 L/min }\npriority: [greens, rough]");
        course.Log("2026-05-03 09:00,off,C2/P1");
        var sheet = course.Morning();
        Assert.Equal("leave", sheet.Said("C1/P1").Advice);
        Assert.Equal("keep-off", sheet.Said("C2/P1").Advice);
        Both(sheet, "C2/P1: stays off instead of 100 %, because the pump gives no more from 22:30 today");
        Both(sheet, "With a first start at 23:00 all of it would fit.");
    }

    [Fact]
    public void Stations_that_must_not_run_together_on_two_boxes()
    {
        var boxes = $"{SmallCourse.Box("C1", Dial, "route: 1", ("P1", "\"22:00\""))}\n{SmallCourse.Box("C2", Dial, "route: 2", ("P1", "\"22:40\""))}";
        using var course = new SmallCourse(boxes, TwoBoxes, "not_together:\n  - { name: north lateral, stations: [c1/1, C2/1] }");
        var sheet = course.Morning();
        var found = Assert.Single(sheet.Fit.GetProperty("notTogether").EnumerateArray());
        Assert.Equal("""{"group":"north lateral","first":"C1/1","second":"C2/1","date":"2026-05-04","from":"2026-05-04T22:40","to":"2026-05-04T23:00"}""", JsonSerializer.Serialize(found));
        Both(sheet, "stations C1/1 and C2/1 would run together and must not (north lateral). Move a start.");
        Assert.Contains("C1/1 and C2/1 must not run together (north lateral) and do at 100 % already, on 28 of 28 days", course.Run("check").Output, StringComparison.Ordinal);

        using var apart = new SmallCourse(boxes.Replace("22:40", "23:00", StringComparison.Ordinal), TwoBoxes, "not_together:\n  - { name: north lateral, stations: [C1/1, C2/1] }");
        var well = apart.Morning();
        Assert.Empty(well.Fit.GetProperty("notTogether").EnumerateArray());
        Assert.Contains("No stations run together that must not.", well.Page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_group_is_told_where_it_names_no_station()
    {
        using var course = new SmallCourse(SmallCourse.Box("C1", Dial, "route: 1", ("P1", "\"22:00\""), ("P2", "\"23:00\"")), TwoPrograms, "not_together:\n  - { name: north lateral, stations: [C1/1, C1/9] }\n  - { name: south, stations: [C1/1] }");
        var checkedSite = course.Run("check");
        Assert.Equal(2, checkedSite.ExitCode);
        Assert.Contains("not_together: there is no station \"C1/9\"", checkedSite.Output, StringComparison.Ordinal);
        Assert.Contains("names one station", checkedSite.Output, StringComparison.Ordinal);
    }

    /// <summary>The same words on the page and in the text.</summary>
    private static void Both(SmallCourse.Sheet sheet, string words)
    {
        Assert.Contains(words, sheet.Page, StringComparison.Ordinal);
        Assert.Contains(words, sheet.Text, StringComparison.Ordinal);
    }
}
