using Xunit;

namespace DailyAdjust.ServiceTests.Controllers;

/// <summary>`log` of what counts and is yet to be looked at, through the real program: total available water of the small course is 100 mm.</summary>
public sealed class LogQuestionsTests
{
    private const string Stations = "controller,station,area,minutes P1,minutes P2,precipitation rate (mm/h)\nC1,1,greens,60,,10\nC1,2,rough,,60,10\nC2,1,greens,60,,10";

    private static readonly string Boxes = SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"21:00\""), ("P2", "\"23:00\""))
        + "\n" + SmallCourse.Box("C2", "{ applies: program, max: 200 %, step: 5 % }", "pause: 7 d", ("P1", "\"22:00\""));

    [Fact]
    public void More_than_the_ground_holds_is_asked_about_and_taken()
    {
        using var course = new SmallCourse(Boxes, Stations);
        course.Morning();
        var usual = course.Run("log", "water-in", "area:greens", "100", "mm", "--time", "2026-05-04 03:00", "--until", "2026-05-04 18:00");
        Assert.Equal((0, ""), (usual.ExitCode, usual.Error));
        var much = course.Run("log", "water-in", "area:greens", "5", "in", "--time", "2026-05-04 03:30", "--until", "2026-05-04 18:00");
        Assert.Equal(0, much.ExitCode);
        Assert.Contains("127 mm is more than the ground of C1/1 ever holds (100 mm from dry to full): the rest drains below the roots", much.Error, StringComparison.Ordinal);
        Assert.Contains("Added: 2026-05-04 03:30 water-in area:greens 5 in", much.Output, StringComparison.Ordinal);
        Assert.Contains("WATER IN BY HAND: 127.0 MM AT AREA:GREENS", course.Morning().Text.ToUpperInvariant(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_box_that_cannot_pause_is_asked_about_and_one_that_can_is_not()
    {
        using var course = new SmallCourse(Boxes, Stations);
        course.Morning();
        var cannot = course.Run("log", "pause", "C1", "3", "d", "--time", "2026-05-04 13:00");
        Assert.Equal(0, cannot.ExitCode);
        Assert.Contains("C1 cannot pause by itself: site.yaml gives it no pause: the entry counts as it stands", cannot.Error, StringComparison.Ordinal);
        Assert.Contains("If it was switched off, log off (C1), which takes its place; if it does pause, write the most days into site.yaml (pause: 7 d)", cannot.Error, StringComparison.Ordinal);
        Assert.Equal("", course.Run("log", "pause", "C2", "3", "d", "--time", "2026-05-04 13:00").Error);

        // Off takes the place of the pause: it does not end by itself.
        Assert.Equal(0, course.Run("log", "off", "C1", "--time", "2026-05-04 13:01").ExitCode);
        var later = course.Morning("2026-05-08");
        Assert.Equal((0d, 100d), (later.Program("C1/P1").GetProperty("setting").GetDouble(), later.Program("C2/P1").GetProperty("setting").GetDouble()));
    }

    [Fact]
    public void A_number_for_a_whole_box_names_what_it_turns_on()
    {
        using var course = new SmallCourse(Boxes, Stations);
        course.Log("2026-05-03 09:00,setting,C1,40,%,,Ana,", "2026-05-03 10:00,off,C1/P2,,,,Ana,leak at 2", "2026-05-03 10:00,pause,C2,3,d,,Ana,");
        course.Morning();
        var one = course.Run("log", "setting", "C1/P1", "60", "--time", "2026-05-04 13:00");
        Assert.DoesNotContain("turns on", one.Output, StringComparison.Ordinal);
        var box = course.Run("log", "setting", "C1", "60", "--time", "2026-05-04 13:10");
        Assert.Contains(
            "Note: this turns on C1/P2 (off since 2026-05-03 10:00, \"leak at 2\"): from now on the balance takes it to run. Where one is still off, say so after it: `log off C1/P2`.",
            box.Output, StringComparison.Ordinal);
        var site = course.Run("log", "setting", "site", "60", "--time", "2026-05-04 13:20");
        Assert.Contains("turns on C2/P1 (paused)", site.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("C1/", site.Output.Split('\n')[1], StringComparison.Ordinal);

        // As the note says.
        Assert.Equal(0, course.Run("log", "off", "C1/P2", "--time", "2026-05-04 13:30").ExitCode);
        var sheet = course.Morning("2026-05-05");
        Assert.Equal([60d, 0d, 60d], new[] { "C1/P1", "C1/P2", "C2/P1" }.Select(p => sheet.Program(p).GetProperty("setting").GetDouble()));
    }

    /// <summary>Of a moisture meter a fraction is its percent; on a dial there is none.</summary>
    [Fact]
    public void Water_content_as_a_fraction_is_read_by_its_unit_and_never_as_a_dial_s_percent()
    {
        using var course = new SmallCourse(Boxes, Stations);
        course.Morning();
        Assert.Equal((0, ""), Of(course.Run("log", "probe", "C1/1", "0.25", "m³/m³", "--time", "2026-05-04 02:00")));
        var impossible = course.Run("log", "probe", "C1/1", "25", "m³/m³", "--time", "2026-05-04 02:10");
        Assert.Equal(2, impossible.ExitCode);
        Assert.Contains("it lies from 0 to 1 m³/m³", impossible.Error, StringComparison.Ordinal);
        var bare = course.Run("log", "probe", "C2/1", "0.25", "--time", "2026-05-04 02:20");
        Assert.Equal(0, bare.ExitCode);
        Assert.Contains("write 0.25 m³/m³, which is 25 %", bare.Error, StringComparison.Ordinal);

        // Field capacity is 30 %, the roots are 500 mm deep: 25 mm below full at 25 %.
        Assert.Contains("the probe 25.0 mm", course.Morning().Text, StringComparison.Ordinal);

        var returned = course.Return(("P1", "80 m³/m³"));
        Assert.Equal(2, returned.ExitCode);
        Assert.Contains("\"80 m³/m³\" is not an answer", returned.Output + returned.Error, StringComparison.Ordinal);

        static (int, string) Of(ProgramResult result) => (result.ExitCode, result.Error);
    }

    [Fact]
    public void Check_says_of_an_assumed_rate_what_is_missing()
    {
        const string Columns = "controller,station,area,minutes P1,precipitation rate (mm/h),flow (L/min),area watered (m²),rate known\n";
        using var both = new SmallCourse(SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"22:00\"")), Columns + "C1,1,greens,60,,50,300,\nC1,2,greens,60,10,50,300,");
        var unsaid = both.Run("check").Output;
        Assert.Contains("The precipitation rate follows from flow and area watered at every station, and counts as assumed because rate known does not say where they are from", unsaid, StringComparison.Ordinal);
        Assert.DoesNotContain("The precipitation rate is assumed", unsaid, StringComparison.Ordinal);

        using var neither = new SmallCourse(SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"22:00\"")), Columns + "C1,1,greens,60,10,,,\nC1,2,greens,60,11,50,300,assumed\nC1,3,greens,60,10,50,300,catalogue");
        var assumed = neither.Run("check").Output;
        Assert.Contains("The precipitation rate is assumed at C1/1, C1/2: catch cups (`dailyadjust audit`) would make its minutes right; a rate from a nozzle chart, or flow and area watered without a rate, come nearer.", assumed, StringComparison.Ordinal);
        Assert.DoesNotContain("follows from flow", assumed, StringComparison.Ordinal);
    }
}
