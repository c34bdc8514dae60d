using DailyAdjust.ServiceTests.Fallback;
using Xunit;

namespace DailyAdjust.ServiceTests.Orders;

/// <summary>Orders and exceptions through the real program: printed with owner, reason and end, back to normal by themselves.</summary>
public sealed class OrdersTests
{
    private const string Stage2 =
        """
        stages:
          - { name: stage 2, days: [sat], percent: 60 %, cut_order: [rough, fairways] }
        """;

    [Fact]
    public void Every_order_stands_on_the_sheet_with_who_why_and_the_days_left_and_does_what_it_says()
    {
        using var home = new FallbackHome().With(("controllers:", Stage2 + "\ncontrollers:"));
        var sheet = Morning(
            home,
            "2026-06-10",
            "2026-06-09 07:00,no-water,area:greens,,,2026-06-11 06:00,R. Vance,wetting agent",
            "2026-06-08 08:00,event,C1/P1,24,h,2026-06-11 18:00,Pat,club final",
            "2026-06-09 15:00,water-in,C1/8,0.25,in,2026-06-10 20:00,Pat,granular",
            "2026-06-09 15:00,flush,C1/1,1.5,in,2026-06-12,Pat,salts",
            "2026-06-09 06:30,grow-in,C1/P3,6 x 4 min,,2026-06-20,Pat,new sod",
            "2026-06-09 08:00,hold,C2/P1,,,2026-06-13,Lee,drain work",
            "2026-06-08,stage,site,stage 2,,2026-06-30,City,water order",
            "2026-06-09 10:00,pump,pump,400,gpm,2026-06-20,Lee,one pump out");

        Assert.Equal("off", sheet.Program("C1", "P2").GetProperty("advice").GetString());
        Assert.Contains("No water, wetting agent, until 06:00 Thu 11 June", sheet.Text, StringComparison.Ordinal);
        Assert.Equal("off", sheet.Program("C1", "P1").GetProperty("advice").GetString());
        Assert.Contains("event, club final", sheet.Program("C1", "P1").GetProperty("reason").GetString(), StringComparison.Ordinal);

        // 0.25 in at 0.40 in/h and 70 % are 53.6 min, of which the grow-in's starts of 15:00 and 17:00 brought 8; the ground takes 42 min at once.
        Assert.Contains("Water in by hand: 0.25 in at C1/8, by 20:00 today (granular, by Pat):", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("rough 1 (C1/8): 46 min, as 2 runs of at most 23 min", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("Flush salts down by hand: 1.50 in at C1/1", sheet.Text, StringComparison.Ordinal);

        var grows = sheet.Program("C1", "P3");
        Assert.Equal("leave", grows.GetProperty("advice").GetString());
        Assert.Contains("Grow-in through Sat 20 June: its starts and minutes are keyed by hand", grows.GetProperty("reason").GetString(), StringComparison.Ordinal);

        foreach (var standing in (string[])
        [
            "area greens: no water, wetting agent. Ordered by R. Vance. Until 06:00 tomorrow, 1 day left.",
            "Fairways 1-3 (C1/P1): event, club final. Ordered by Pat. From 18:00 today. Until 18:00 tomorrow, 1 day left.",
            "Fairways 4-6 (C2/P1): hold: drain work. Ordered by Lee. Through Sat 13 June, 3 days left.",
            "Rough 1-3 (C1/P3): grow-in: new sod. Ordered by Pat. Through Sat 20 June, 10 days left.",
            "the whole site: drought plan, stage 2: water order. Ordered by City. Through Tue 30 June, 20 days left.",
            "pump: reduced capacity: one pump out. Ordered by Lee. Through Sat 20 June, 10 days left.",
        ])
        {
            Assert.Contains(standing, sheet.Text, StringComparison.Ordinal);
        }

        Assert.Equal(6, sheet.Json.GetProperty("standing").GetArrayLength());
        Assert.Equal("rough", sheet.Json.GetProperty("exceptions").GetProperty("stage").GetProperty("ceilings").EnumerateArray().Single(c => c.GetProperty("percent").GetDouble() == 0).GetProperty("area").GetString());
    }

    [Fact]
    public void They_end_by_themselves()
    {
        using var home = new FallbackHome();
        Morning(home, "2026-06-09", "2026-06-08 07:00,hold,C1/P2,,,2026-06-10 12:00,Lee,leak", "2026-06-08 12:00,pause,C2,2,d,,Lee,");
        var held = home.Run("advice", "--date", "2026-06-09", "--format", "csv");
        Assert.Contains("2026-06-09,C1,P2,100,off,", held, StringComparison.Ordinal);
        var after = Morning(home, "2026-06-11");
        Assert.NotEqual("off", after.Program("C1", "P2").GetProperty("advice").GetString());
        Assert.DoesNotContain("hold", after.Text, StringComparison.Ordinal);

        // The box paused from noon of the 8th for two days: nothing at 05:20 on the 9th and 10th, the old setting again on the 11th.
        Morning(home, "2026-06-12");
        var days = CsvRows.Of(home.Run("balance", "--from", "2026-06-08", "--to", "2026-06-11", "--format", "csv"));
        double[] tee = [.. days.Rows.Where(r => IsStation(days, r, "C2", "2")).Select(r => days.Number(r, "irrigation_mm")!.Value)];
        Assert.True(tee[0] > 0 && tee[3] > 0, string.Join(' ', tee));
        Assert.Equal([0, 0], tee[1..3]);
    }

    [Fact]
    public void An_order_for_later_is_known_from_when_it_came_in()
    {
        using var home = new FallbackHome();
        home.Drop("yard-2026.csv", ExampleSite.WeatherUntil("2026-06-10 05:00"));
        home.Run("ingest", Path.Combine(home.Site.Inbox, "yard-2026.csv"));
        string At(string utc, params string[] arguments)
        {
            var result = InProcess.Run(new FixedTime(DateTimeOffset.Parse(utc, System.Globalization.CultureInfo.InvariantCulture)), [.. arguments, "--home", Path.GetDirectoryName(Path.GetDirectoryName(home.Site.Path))!]);
            return result.ExitCode == 0 ? result.Output : throw new InvalidOperationException(result.ToString());
        }

        // Entered on the 9th for the afternoon of the 10th: the sheet of the 10th, at 05:00, stops the start of 21:30.
        At("2026-06-09T15:00:00Z", "log", "no-water", "C1/P1", "--date", "2026-06-10", "--time", "18:00", "--until", "2026-06-11 06:00", "--note", "growth regulator");
        Assert.Contains("2026-06-10,C1,P1,100,off,", At("2026-06-10T10:00:00Z", "advice", "--date", "2026-06-10", "--format", "csv"), StringComparison.Ordinal);

        // The sheet of the 9th, as of 05:00 of that date, could not know it.
        Assert.DoesNotContain("growth regulator", At("2026-06-10T10:00:00Z", "advice", "--date", "2026-06-09"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_skip_on_a_box_that_can_pause_says_for_how_many_days_and_done_it_runs_again_by_itself()
    {
        using var home = new FallbackHome().With(("    place: left of the third tee\n", "    place: left of the third tee\n    pause: 5 d\n"));
        var sheet = Morning(home, "2026-06-12", "2026-06-05 10:45,setting,C1/P1,90,%,,,");
        var program = sheet.Program("C1", "P1");
        Assert.Equal("skip", program.GetProperty("advice").GetString());
        var days = program.GetProperty("pauseDays").GetInt32();
        Assert.InRange(days, 1, 5);
        Assert.Contains($"pause {days} day", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("The box runs by itself again from", sheet.Text, StringComparison.Ordinal);

        home.Run("log", "round", "2026-06-12", "done", "--date", "2026-06-12", "--time", "08:00");
        var tomorrow = Morning(home, "2026-06-13").Program("C1", "P1");
        Assert.Equal(("keep-off", 0d), (tomorrow.GetProperty("advice").GetString(), tomorrow.GetProperty("setting").GetDouble()));
        Assert.StartsWith("2026-06-1", tomorrow.GetProperty("pausedUntil").GetString(), StringComparison.Ordinal);
        Assert.Equal(90, Morning(home, "2026-06-17").Program("C1", "P1").GetProperty("setting").GetDouble());
    }

    [Fact]
    public void A_rain_switch_keeps_starts_from_running_and_says_so()
    {
        string[] IrrigationOfGreen1(params (string, string)[] edits)
        {
            using var home = new FallbackHome().With(edits);
            Morning(home, "2026-06-13");
            var rows = CsvRows.Of(home.Run("balance", "--from", "2026-06-09", "--to", "2026-06-12", "--format", "csv"));
            return [.. rows.Rows.Where(r => IsStation(rows, r, "C1", "1")).Select(r => rows.Text(r, "irrigation_mm"))];
        }

        var always = IrrigationOfGreen1();
        var switched = IrrigationOfGreen1(("    place: left of the third tee\n", "    place: left of the third tee\n    rain_switch: { at: 0.25 in, dry_after: 24 h }\n"));
        Assert.DoesNotContain(always, mm => double.Parse(mm, System.Globalization.CultureInfo.InvariantCulture) == 0);
        Assert.Contains(switched, mm => double.Parse(mm, System.Globalization.CultureInfo.InvariantCulture) == 0);
        Assert.Contains(switched, mm => always.Contains(mm, StringComparer.Ordinal));
    }

    [Fact]
    public void A_program_that_is_off_with_a_note_of_a_fault_is_asked_about()
    {
        using var home = new FallbackHome();
        var sheet = Morning(home, "2026-06-10", "2026-06-05 11:10,off,C1/P2,,,,Lee,", "2026-06-05 11:15,note,C1/P2,,,,Lee,valve 2 stuck open");
        Assert.Equal("keep-off", sheet.Program("C1", "P2").GetProperty("advice").GetString());
        Assert.Contains("Off with a note: mended or over? - Greens (C1/P2) is off since Fri 5 June: \"valve 2 stuck open\" (Lee). If that is mended or over: dailyadjust log checked C1", sheet.Text, StringComparison.Ordinal);
        home.Run("log", "checked", "C1", "--date", "2026-06-10", "--time", "09:00");
        Assert.Equal("resume", Morning(home, "2026-06-11").Program("C1", "P2").GetProperty("advice").GetString());
    }

    [Fact]
    public void A_note_on_the_box_that_it_is_mended_hands_its_program_back()
    {
        using var home = new FallbackHome();
        Assert.Equal("keep-off", Morning(home, "2026-06-10", "2026-06-05 11:10,off,C1/P2,,,,Lee,", "2026-06-05 11:15,note,C1/P2,,,,Lee,valve 2 stuck open").Program("C1", "P2").GetProperty("advice").GetString());
        home.Run("log", "note", "C1", "--date", "2026-06-10", "--time", "09:00", "--note", "valve mended");
        var sheet = Morning(home, "2026-06-11");
        Assert.Equal("resume", sheet.Program("C1", "P2").GetProperty("advice").GetString());
        Assert.Contains("Off since Fri 5 June, \"valve 2 stuck open\"; noted on C1 since, Wed 10 June: \"valve mended\". It is off and its ground now needs water", sheet.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("mended or over", sheet.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_note_of_a_fixed_head_that_is_broken_is_asked_about_and_one_that_only_says_mended_is_quoted()
    {
        using var home = new FallbackHome();
        var asked = Morning(home, "2026-06-10", "2026-06-05 11:10,off,C1/P2,,,,Lee,", "2026-06-05 11:15,note,C1/P2,,,,Lee,fixed spray head broken at 7");
        Assert.Equal("keep-off", asked.Program("C1", "P2").GetProperty("advice").GetString());
        Assert.Contains("Off with a note: mended or over? - Greens (C1/P2) is off since Fri 5 June: \"fixed spray head broken at 7\" (Lee).", asked.Text, StringComparison.Ordinal);

        using var other = new FallbackHome();
        var quoted = Morning(other, "2026-06-10", "2026-06-05 11:10,off,C1/P2,,,,Lee,", "2026-06-05 11:15,note,C1/P2,,,,Lee,head at 7 mended");
        Assert.Equal("resume", quoted.Program("C1", "P2").GetProperty("advice").GetString());
        Assert.Contains("Off since Fri 5 June; noted on C1/P2 since, Fri 5 June: \"head at 7 mended\".", quoted.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Backticks_of_a_note_stand_on_the_page_as_they_were_written()
    {
        using var home = new FallbackHome();
        var sheet = Morning(home, "2026-06-10", "2026-06-05 11:10,off,C1/P2,,,,Lee,", "2026-06-05 11:15,note,C1/P2,,,,Lee,valve `2` stuck open",
            "2026-06-10 04:00,spot,C1/3,9,%,,Lee,`checked` by Lee", "2026-06-09 04:00,hold,C2/P1,,,2026-06-14,Lee,`dailyadjust check` hangs");
        Assert.Contains("\"valve `2` stuck open\"", sheet.Text, StringComparison.Ordinal);
        var page = System.Net.WebUtility.HtmlDecode(File.ReadAllText(Path.Combine(home.Site.Path, "reports", "2026-06-10", "report.html")));
        Assert.Contains("\"valve `2` stuck open\"", page, StringComparison.Ordinal);
        Assert.Contains("<code>checked</code>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<code>2</code>", page, StringComparison.Ordinal);
        Assert.Contains("(`checked` by Lee)", page, StringComparison.Ordinal);
        Assert.Contains("hold: `dailyadjust check` hangs", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<code>dailyadjust check</code>", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_program_switched_off_for_the_storm_is_asked_about_in_words_that_fit()
    {
        using var home = new FallbackHome();
        var sheet = Morning(home, "2026-06-10", "2026-06-05 11:10,off,C1/P2,,,,Lee,thunderstorm");
        Assert.Equal("resume", sheet.Program("C1", "P2").GetProperty("advice").GetString());
        Assert.Contains("Off since Fri 5 June, \"thunderstorm\": turn it on only if that is mended or over.", sheet.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Closing_lists_what_is_to_be_done_at_every_box_until_it_is_ticked_off()
    {
        using var home = new FallbackHome();
        var sheet = Morning(home, "2026-06-10", "2026-06-09 09:00,season,site,closing,,,Lee,");
        Assert.Contains("Not ticked off: C1 (left of the third tee) and C2 (pump house fence).", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("Lock out the electricity of pump and box before you open either.", sheet.Text, StringComparison.Ordinal);
        Assert.Equal("off", sheet.Program("C1", "P2").GetProperty("advice").GetString());
        home.Run("log", "checked", "C1", "--date", "2026-06-10", "--time", "09:00");
        Assert.Contains("Not ticked off: C2 (pump house fence).", Morning(home, "2026-06-11").Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cautions: { cold: { below: 90 °F }, wind: { above: 1 mph } }", false)]
    [InlineData("cautions: { cold: { below: 90 °F, hold: true }, wind: { above: 1 mph, hold: true } }", true)]
    public void Cold_and_wind_are_told_and_hold_only_where_the_site_says_so(string cautions, bool holds)
    {
        using var home = new FallbackHome().With(("controllers:", cautions + "\ncontrollers:"));
        var sheet = Morning(home, "2026-06-10", "2026-06-08 11:00,setting,C2/P1,100,%,,,");
        Assert.Contains("Cold caution:", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("Wind caution:", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("last night; tonight is not forecast", sheet.Text, StringComparison.Ordinal);
        Assert.Equal(holds, sheet.Program("C1", "P1").GetProperty("advice").ValueEquals("off"));
    }

    private static bool IsStation(CsvRows rows, string[] row, string controller, string station) =>
        string.Equals(rows.Text(row, "controller"), controller, StringComparison.Ordinal) && string.Equals(rows.Text(row, "station"), station, StringComparison.Ordinal);

    private static FallbackSheet Morning(FallbackHome home, string date, params string[] log)
    {
        home.Drop("yard-2026.csv", ExampleSite.WeatherUntil(date + " 05:00"));
        if (log.Length > 0)
        {
            home.Drop("logbook.csv", string.Join('\n', ["time,kind,where,value,unit,until,by,note", .. log]) + "\n");
        }

        return home.Morning(date);
    }

    private sealed class FixedTime(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;
    }
}
