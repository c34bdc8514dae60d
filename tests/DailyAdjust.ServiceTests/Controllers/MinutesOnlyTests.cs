using Xunit;

namespace DailyAdjust.ServiceTests.Controllers;

/// <summary>A box without a percentage, through the real program: people key in minutes, and no word speaks of a dial. The zone needs an hour.</summary>
public sealed class MinutesOnlyTests
{
    private const string Stations = "controller,station,area,minutes P1,precipitation rate (mm/h)\nC1,1,greens,20,10";

    [Fact]
    public void The_sheet_gives_new_minutes_beyond_twice_those_of_stations_csv()
    {
        using var course = new SmallCourse(Box("{ applies: none }"), Stations);
        var sheet = course.Morning();
        Assert.Equal(("set", 300), sheet.Said("C1/P1"));
        foreach (var words in new[] { sheet.Text, sheet.Page })
        {
            Assert.Contains("Taken to run its minutes of stations.csv until somebody reads them at the box.", words, StringComparison.Ordinal);
            Assert.Contains("Read the minutes at the box and reckon their percent of those in stations.csv (20 of 25 min is 80 %)", words, StringComparison.Ordinal);
            Assert.Contains("NEW MINUTES 100 → 300 % of stations.csv", words, StringComparison.Ordinal);
            Assert.DoesNotContain("SET 100", words, StringComparison.Ordinal);
            Assert.DoesNotContain("The dial ends", words, StringComparison.Ordinal);
            Assert.DoesNotContain("Read the dials", words, StringComparison.Ordinal);
            Assert.DoesNotContain("reads the dial", words, StringComparison.Ordinal);
        }

        Assert.Contains("station 1: 20 → 60 min", sheet.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_in_the_description_is_told_for_what_it_is()
    {
        using var course = new SmallCourse(Box("{ applies: none, max: 150 % }"), Stations);

        // From 8 min a start; from 20 the 10 min more would not be worth a walk.
        course.Log("2026-05-03 09:00,setting,C1/P1,40,%,,Ana,");
        var sheet = course.Morning();
        Assert.Equal(("set", 150), sheet.Said("C1/P1"));
        foreach (var words in new[] { sheet.Text, sheet.Page })
        {
            Assert.Contains("No more than 150 % of the minutes in stations.csv is advised, ", words, StringComparison.Ordinal);
            Assert.Contains(" is needed: 5.0 mm or 30 min short a start.", words, StringComparison.Ordinal);
            Assert.DoesNotContain("The dial ends", words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Minutes_read_at_the_box_are_logged_as_their_percent_of_those_in_stations_csv()
    {
        using var course = new SmallCourse(Box("{ applies: none }"), Stations);
        foreach (var place in new[] { "C1/1", "C1/P1", "C1" })
        {
            var refused = course.Run("log", "setting", place, "30", "min", "--time", "2026-05-03 09:00");
            Assert.Equal(2, refused.ExitCode);
            Assert.Contains($"30 of 20 min is 150 %: write setting {(place is "C1" ? "C1" : "C1/P1")} 150.", refused.Error, StringComparison.Ordinal);
        }

        var logged = course.Run("log", "setting", "C1", "150", "--time", "2026-05-03 09:00");
        Assert.Equal((0, ""), (logged.ExitCode, logged.Error));
        var sheet = course.Morning();
        Assert.Contains("station 1: 30 → 60 min", sheet.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Not confirmed", sheet.Text, StringComparison.Ordinal);

        // A number written into round.csv is their percent too.
        Assert.Equal(0, course.Return(("P1", "290")).ExitCode);
        var next = course.Morning("2026-05-05");
        Assert.Equal(290, next.Program("C1/P1").GetProperty("setting").GetDouble());
        Assert.DoesNotContain("SET", next.Text, StringComparison.Ordinal);
    }

    /// <summary>From 8 min a start: what an unanswered round asked for, what stands at a box that is worth a visit, and the steps behind it.</summary>
    [Fact]
    public void Unanswered_rounds_visits_and_explain_speak_of_minutes_too()
    {
        using var course = new SmallCourse(Box("{ applies: none, max: 300 % }"), Stations);
        course.Log("2026-05-03 09:00,setting,C1/P1,40,%,,Ana,");
        course.Morning();
        var visits = course.Run("visits", "--date", SmallCourse.Monday).Output;
        Assert.Contains("C1/P1: new minutes, 300 % of stations.csv (station 1: 8 → 60 min); without it", visits, StringComparison.Ordinal);

        var explained = course.Run("explain", "C1/P1", "--date", SmallCourse.Monday).Output;
        Assert.Contains("now      40 % of the minutes in stations.csv\n", explained, StringComparison.Ordinal);
        Assert.Contains("advice   set 300 % of the minutes in stations.csv, exactly 300 %\n", explained, StringComparison.Ordinal);
        Assert.Contains("minutes  station 1: 8 → 60 min\n", explained, StringComparison.Ordinal);
        Assert.Contains("station 1: 8 -> 60 min", explained, StringComparison.Ordinal);

        var next = course.Morning("2026-05-05");
        foreach (var words in new[] { next.Text, next.Page })
        {
            Assert.Contains("Mon 4 May said: new minutes, 300 % of stations.csv (station 1: 8 → 60 min). Nobody has answered. If it was done, today says: leave its minutes (300 % of stations.csv).", words, StringComparison.Ordinal);
            Assert.Contains("An earlier sheet asked for these minutes and nobody answered; if they are keyed in, leave them.", words, StringComparison.Ordinal);
            Assert.DoesNotContain("60 → 60", words, StringComparison.Ordinal);
            Assert.DoesNotContain("said: set", words, StringComparison.Ordinal);
            Assert.DoesNotContain("says: set", words, StringComparison.Ordinal);
            Assert.DoesNotContain("leave it at", words, StringComparison.Ordinal);
        }

        var again = course.Run("explain", "C1/P1", "--date", "2026-05-05").Output;
        foreach (var text in new[] { visits, explained, again })
        {
            Assert.DoesNotContain("on the dial", text, StringComparison.Ordinal);
            Assert.DoesNotContain("the dial gives", text, StringComparison.Ordinal);
            Assert.DoesNotContain("step of the dial", text, StringComparison.Ordinal);
        }
    }

    private static string Box(string percent) => SmallCourse.Box("C1", percent, "route: 1", ("P1", "\"22:00\""));
}
