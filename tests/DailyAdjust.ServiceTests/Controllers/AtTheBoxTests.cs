using Xunit;

namespace DailyAdjust.ServiceTests.Controllers;

/// <summary>What a person at the box has to be told so that it is left as it should run, through the real program.</summary>
public sealed class AtTheBoxTests
{
    private const string Dial = "{ applies: program, max: 400 %, step: 5 % }";
    private const string Stations = "controller,station,name,area,minutes P1,precipitation rate (mm/h)\nC1,1,green 1,greens,60,10\nC1,2,green 2,greens,60,10";

    private static SmallCourse Greens(string more = "", string soil = "allowable") => new(SmallCourse.Box("C1", Dial, "route: 1", ("P1", "\"22:00\"")), Stations, more, soil);

    [Fact]
    public void A_station_that_a_hold_took_out_is_put_back_once_and_asked_about_until_somebody_answers()
    {
        const string Back = "C1/P1: put back station 2, if it was taken out. What kept it from running ends at 12:00 today: hold: bunker work.";
        const string Asked = "C1/P1, start of 22:00 yesterday, station 2: the numbers take it that it ran. If it was taken out, a line in logbook.csv: 2026-05-04,ran,C1/2,no";
        using var course = Greens();
        course.Log("2026-05-04 04:00,hold,C1/2,,,2026-05-05 12:00,Lee,bunker work");
        var monday = course.Morning();
        Assert.Contains("take out station 2, from 22:00 today on. Hold: bunker work.", monday.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Put back", monday.Text, StringComparison.Ordinal);

        var tuesday = course.Morning("2026-05-05");
        foreach (var written in new[] { tuesday.Text, tuesday.Page })
        {
            Assert.Contains(Back, written, StringComparison.Ordinal);
            Assert.Contains(Asked, written, StringComparison.Ordinal);
        }

        var back = Assert.Single(tuesday.Exceptions.GetProperty("putBack").EnumerateArray());
        Assert.Equal(("C1", "P1", "2026-05-05 12:00"), (back.GetProperty("controller").GetString(), back.GetProperty("program").GetString(), back.GetProperty("until").GetString()!.Replace('T', ' ')[..16]));
        Assert.Equal("2", Assert.Single(back.GetProperty("stations").EnumerateArray()).GetString());
        Assert.Equal("2026-05-04", Assert.Single(tuesday.Exceptions.GetProperty("takenOutRuns").EnumerateArray()).GetProperty("date").GetString());

        // Somebody has been there on Tuesday: nothing more to put back. Whether it stood still on Monday nobody has said.
        var wednesday = course.Morning("2026-05-06");
        Assert.DoesNotContain("Put back", wednesday.Text, StringComparison.Ordinal);
        Assert.Contains("2026-05-04,ran,C1/2,no", wednesday.Text, StringComparison.Ordinal);
        Assert.False(wednesday.Exceptions.TryGetProperty("putBack", out _));
    }

    [Fact]
    public void An_answer_ends_the_question_whether_a_station_stood_still()
    {
        using var course = Greens();
        course.Log("2026-05-04 04:00,hold,C1/2,,,2026-05-05 12:00,Lee,bunker work", "2026-05-04,ran,C1/2,no,,,,");
        course.Morning();
        Assert.DoesNotContain("Taken out:", course.Morning("2026-05-05").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_put_back_waits_until_the_program_may_run()
    {
        // A hold over the whole box on Tuesday and Wednesday: station 2 goes back on Thursday, when somebody can do something with it.
        using var course = Greens();
        course.Log("2026-05-04 04:00,hold,C1/2,,,2026-05-05 12:00,Lee,bunker work", "2026-05-05 04:00,hold,C1,,,2026-05-07 12:00,Lee,match");
        course.Morning();
        Assert.DoesNotContain("Put back", course.Morning("2026-05-05").Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Put back", course.Morning("2026-05-06").Text, StringComparison.Ordinal);
        Assert.Contains("put back station 2, if it was taken out. What kept it from running ended at 12:00 Tue 5 May", course.Morning("2026-05-07").Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"22:00\"", "in place of each start key in 2, 35 min from the beginning of one to that of the next, each with 1/2 of the base minutes (the longest then runs 27.5 min at")]
    [InlineData("\"22:00\", \"22:50\"", "in place of each start it would take 2, 35 min from the beginning of one to that of the next, but its own next start comes after 50 min. Only the first fits, with 1/2 of the base minutes (the longest then runs 27 min at 99 %)")]
    public void The_round_says_how_a_start_is_split_and_whether_that_fits(string starts, string said)
    {
        // 10 mm/h on 8 mm/h with 1 mm standing: 30 minutes at once, and 7.5 to soak in; 55 min are 2 of 27.5.
        using var course = new SmallCourse(
            SmallCourse.Box("C1", "{ applies: program, min: 99 %, max: 100 %, step: 1 % }", "route: 1", ("P1", starts)),
            "controller,station,name,area,minutes P1,precipitation rate (mm/h)\nC1,1,east bank,bank,55,10");
        course.Log("2026-05-04 04:00,setting,C1/P1,off,,,,");
        var sheet = course.Morning();
        Assert.Equal("resume", sheet.Said("C1/P1").Advice);
        Assert.Contains(said, sheet.Text, StringComparison.Ordinal);
        Assert.Contains(said, sheet.Page, StringComparison.Ordinal);
        Assert.Equal(2, sheet.Program("C1/P1").GetProperty("startsInPlace").GetProperty("starts").GetInt32());
    }

    [Fact]
    public void A_number_that_is_held_back_says_what_is_needed_and_both_things_that_may_be_on_the_dial()
    {
        using var course = Greens();
        course.Log("2026-05-04 04:00,setting,C1/P1,100,%,,,", "2026-05-04 04:00,hold,C1/P1,,,2026-05-05 12:00,Lee,match");
        course.Morning();
        var tuesday = course.Morning("2026-05-05");
        Assert.Equal(("resume", 105), tuesday.Said("C1/P1"));
        Assert.Matches("TURN ON, 100 % or off → 105 % .* make sure it is on at this number. This number moves from the one before by no more than a step a day; [0-9]+ % is needed if it is off.", tuesday.Text);
        Assert.Contains("the round of Mon 4 May. Its programs are judged both ways, done and not done.", tuesday.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("take it that nothing was changed", tuesday.Text + tuesday.Page, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_it_must_not_run_whichever_way_it_was_the_question_is_whether_it_was_switched_off()
    {
        using var course = Greens();
        course.Log("2026-05-04 04:00,hold,C1/P1,,,2026-05-06 12:00,Lee,match");
        course.Morning();
        var tuesday = course.Morning("2026-05-05");
        Assert.Contains("Mon 4 May said: must not run (switch off). Nobody has answered: was it switched off? It must not run today, whatever was done.", tuesday.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("If not:", tuesday.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_of_days_names_the_next_date_on_which_the_program_may_run()
    {
        using var course = Greens("restrictions: [ { name: odd days only, days: even, areas: [greens] } ]");
        var monday = course.Morning();
        Assert.Equal("2026-05-04", monday.Program("C1/P1").GetProperty("offUntil").GetString());
        Assert.Contains("Watering rule: odd days only, through Mon 4 May; its next start that may run is on Tue 5 May.", monday.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("further notice", monday.Text, StringComparison.Ordinal);
        Assert.NotEqual("off", course.Morning("2026-05-05").Said("C1/P1").Advice);
    }

    [Fact]
    public void Empty_pipes_are_not_asked_whether_they_ran()
    {
        using var course = Greens();
        course.Log("2026-05-04 09:00,season,site,drained,,,,", "2026-05-06 09:00,season,site,charging,,,,");
        course.Morning();
        Assert.DoesNotContain("Did it run?", course.Morning("2026-05-05").Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Did it run?", course.Morning("2026-05-06").Text, StringComparison.Ordinal);

        // Once water is let in again, a dial that was left on lets it run, and the balance books it.
        Assert.Contains("Did it run?", course.Morning("2026-05-07").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Ground_whose_water_ran_off_and_that_is_dry_is_no_wet_ground()
    {
        // 100 mm/h for 10 minutes: 16.7 mm, of which ground that takes 8 mm/h and holds 1 lets most run off.
        using var course = new SmallCourse(
            SmallCourse.Box("C1", "{ applies: program, max: 100 %, step: 5 % }", "route: 1", ("P1", "\"22:00\"")),
            "controller,station,name,area,minutes P1,precipitation rate (mm/h)\nC1,1,east bank,bank,10,100");
        course.Morning();
        var tuesday = course.Morning("2026-05-05");
        Assert.Contains("C1/1: hose on", tuesday.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Keep carts and mowers off", tuesday.Text + tuesday.Page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_grow_in_that_must_not_run_is_keyed_in_only_once_it_may()
    {
        using var course = Greens();
        course.Log("2026-05-04 04:00,grow-in,C1/P1,3 x 4 min,,2026-05-20,Lee,sod", "2026-05-04 04:00,hold,C1/P1,,,2026-05-05 12:00,Lee,match");
        Assert.Contains("day 1 of 17: it must not run now, see the round. Once it may run, and not before, key in 3 starts", course.Morning().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_start_that_an_order_takes_out_of_a_grow_in_is_asked_about_and_put_back()
    {
        using var course = Greens();
        course.Log("2026-05-04 04:00,grow-in,C1/P1,3 x 4 min,,2026-08-20,Lee,sod", "2026-05-05 04:00,no-water,area:greens,,,2026-05-05 15:30,Pat,foliar feeding");
        course.Morning();
        var tuesday = course.Morning("2026-05-05");
        Assert.Contains("No dial to turn today. Starts or stations to take out, put back or key in at C1: named after the round.", tuesday.Text, StringComparison.Ordinal);
        Assert.Contains("C1/P1: take out the start of 15:00 today. It must not run: no water, foliar feeding.", tuesday.Text, StringComparison.Ordinal);

        var wednesday = course.Morning("2026-05-06");
        foreach (var written in new[] { wednesday.Text, wednesday.Page })
        {
            Assert.Contains("C1/P1: put back the start of 15:00, if it was taken out.", written, StringComparison.Ordinal);
            Assert.Contains("C1/P1, start of 15:00 yesterday: the numbers take it that it ran. If it was taken out, a line in logbook.csv: 2026-05-05 15:00,ran,C1/P1,no,,2026-05-05 15:08", written, StringComparison.Ordinal);
        }

        // The line that the sheet gives takes that start out of the books, and only that one.
        double Irrigated(string day)
        {
            var rows = CsvRows.Of(course.Run("balance", "--from", day, "--to", day, "--format", "csv").Output);
            return rows.Rows.Sum(r => rows.Number(r, "irrigation_mm")!.Value);
        }

        var before = Irrigated("2026-05-05");
        course.Log("2026-05-05 15:00,ran,C1/P1,no,,2026-05-05 15:08,,");
        var thursday = course.Morning("2026-05-07");
        Assert.DoesNotContain("start of 15:00", thursday.Text, StringComparison.Ordinal);
        Assert.Equal(before * 2 / 3, Irrigated("2026-05-05"), 3);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)] // obeyed, or not, and never told
    public void A_skip_that_was_on_the_sheet_before_a_grow_in_was_ordered_does_not_keep_new_turf_dry(bool isTold)
    {
        using var course = Greens(soil: "full");
        Assert.Equal("skip", course.Morning().Said("C1/P1").Advice);
        course.Run("log", "grow-in", "C1/P1", "6 x 6 min", "--time", "2026-05-04 06:30", "--until", "2026-05-20", "--note", "sod");
        if (isTold)
        {
            course.Run("log", "round", "2026-05-04", "done", "--time", "2026-05-04 09:00");
        }

        Assert.Equal("resume", course.Morning("2026-05-05").Said("C1/P1").Advice);

        // Somebody's own word stops it.
        course.Run("log", "off", "C1/P1", "--time", "2026-05-05 10:00");
        Assert.Equal("keep-off", course.Morning("2026-05-06").Said("C1/P1").Advice);
    }

    [Fact]
    public void A_grow_in_that_a_hold_switched_off_is_turned_on_again_when_that_is_over()
    {
        using var course = Greens();
        course.Log("2026-05-03 12:00,grow-in,C1/P1,6 x 6 min,,2026-05-20,Lee,sod", "2026-05-04 04:00,hold,C1/P1,,,2026-05-04 16:00,Lee,match");
        Assert.Equal("off", course.Morning().Said("C1/P1").Advice);
        course.Run("log", "round", "2026-05-04", "done", "--time", "2026-05-04 09:00");
        Assert.Equal(("resume", 100), course.Morning("2026-05-05").Said("C1/P1"));
    }

    [Fact]
    public void Whoever_keys_in_a_grow_in_early_leaves_out_the_forbidden_start_of_the_same_morning_too()
    {
        // Six starts from 07:00, two hours apart; the round is done by 13:00.
        using var course = Greens("restrictions: [ { name: midday, hours: { from: \"10:30\", until: \"12:00\" } } ]");
        course.Log("2026-05-04 04:00,grow-in,C1/P1,6 x 6 min,,2026-05-20,Lee,sod");
        Assert.Contains("Leave out 11:00 on Mon 4 May: watering rule: midday.", course.Morning().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_program_with_another_start_to_come_on_that_date_is_answered_with_its_hours()
    {
        using var course = new SmallCourse(
            SmallCourse.Box("C1", Dial, "route: 1", ("P1", "\"04:00\", \"22:00\"")), Stations, "restrictions: [ { name: early, from: 2026-05-05, until: 2026-05-05, hours: { from: \"03:00\", until: \"05:00\" }, areas: [greens] } ]");
        course.Morning();
        var tuesday = course.Morning("2026-05-05");
        Assert.Contains("C1/P1, start of 04:00 today: the numbers take it that it ran. If it was taken out, a line in logbook.csv: 2026-05-05 04:00,ran,C1/P1,no,,2026-05-05 06:00", tuesday.Text, StringComparison.Ordinal);
        Assert.Contains("If one did not run, say so with a line in logbook.csv: 2026-05-04 22:00,ran,C1/P1,no,,2026-05-05 00:00", tuesday.Page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rule_of_days_with_an_end_names_the_next_date_between()
    {
        using var course = Greens("restrictions: [ { name: odd days only, days: even, until: 2026-06-30, areas: [greens] } ]");
        Assert.Contains("Watering rule: odd days only, through Mon 4 May; its next start that may run is on Tue 5 May.", course.Morning().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_skip_that_nobody_answered_is_to_be_turned_on_again_when_the_drier_of_both_grounds_needs_it()
    {
        using var course = new SmallCourse(SmallCourse.Box("C1", Dial, "route: 1\n    pause: 30 d", ("P1", "\"22:00\"")), Stations, soil: "full");
        var monday = course.Morning().Program("C1/P1");
        Assert.Equal("skip", monday.GetProperty("advice").GetString());
        var wanted = monday.GetProperty("lookAgain").GetString();

        // By the logbook Monday's water ran and it could wait longer; if the pause was set it did not.
        var tuesday = course.Morning("2026-05-05").Program("C1/P1");
        Assert.Equal(("skip", wanted), (tuesday.GetProperty("advice").GetString(), tuesday.GetProperty("lookAgain").GetString()));
        Assert.Equal(monday.GetProperty("pauseDays").GetInt32() - 1, tuesday.GetProperty("pauseDays").GetInt32());
    }
}
