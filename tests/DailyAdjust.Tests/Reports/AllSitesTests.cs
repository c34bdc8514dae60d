using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Index;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Reports;

public sealed class AllSitesTests
{
    private static readonly DateOnly Date = InventedMorning.Date;

    [Fact]
    public void Sites_stand_by_urgency_and_those_alike_by_name()
    {
        var sites = InventedSites.EveryUrgency();
        var view = new IndexView([.. sites, InventedSites.Of("B changes", InventedSites.With(AdviceKind.Set))]);
        Assert.Equal(
            ["h old sheet", "g no advice", "f by hand", "e verify", "d off or on", "B changes", "c changes", "b questions", "a nothing"],
            view.Sites.Select(s => s.Name));
        Assert.Equal(Enum.GetValues<Urgency>(), view.Sites.Select(s => s.Urgency).Distinct());
        Assert.Equal(Date, view.Today);
    }

    [Fact]
    public void Sites_of_one_name_are_told_apart_by_their_folders()
    {
        var site = InventedSites.Of("Quarry Bend", InventedSites.Calm());
        Assert.Equal(["Quarry Bend (east)", "Quarry Bend (west)"], new IndexView([site with { Id = "west" }, site with { Id = "east" }]).Sites.Select(s => s.Name));
    }

    [Theory]
    [InlineData(AdviceKind.Off, Urgency.OffOrOn)]
    [InlineData(AdviceKind.Resume, Urgency.OffOrOn)]
    [InlineData(AdviceKind.Skip, Urgency.Changes)]
    [InlineData(AdviceKind.Set, Urgency.Changes)]
    [InlineData(AdviceKind.KeepOff, Urgency.Nothing)]
    public void What_must_not_run_and_what_is_off_over_dry_ground_presses_more_than_another_number(AdviceKind advice, Urgency urgency) =>
        Assert.Equal(urgency, One(InventedSites.With(advice)).Urgency);

    [Fact]
    public void An_order_for_water_by_hand_presses_on_its_last_day_and_when_it_is_late()
    {
        Assert.Equal(Urgency.RunByHand, One(Ordered(InventedMorning.At(0, 20, 0))).Urgency);
        Assert.Equal(Urgency.RunByHand, One(Ordered(InventedMorning.At(1, 0, 0))).Urgency);
        Assert.Equal(Urgency.Nothing, One(Ordered(InventedMorning.At(1, 9, 0))).Urgency);
        Assert.Equal(Urgency.Nothing, One(Ordered(InventedMorning.At(0, 20, 0), begins: InventedMorning.At(0, 7, 0))).Urgency);
        var late = One(Ordered(InventedMorning.At(-1, 18, 0), isLate: true));
        Assert.Equal("Water in by hand: 0.25 in at area:greens, was due 18:00 yesterday and is not all run by the logbook.", Said(late).Single());

        static MorningSheet Ordered(DateTimeOffset due, bool isLate = false, DateTimeOffset? begins = null) => InventedSites.Calm() with
        {
            Exceptions = new() { HandRuns = [new(LogKind.WaterIn, new(PlaceKind.Area, "greens", ""), 6.35, due, isLate, "", "", []) { Begins = begins }] },
        };
    }

    [Fact]
    public void The_round_of_a_site_is_that_of_its_sheet()
    {
        foreach (var sheet in Rendered.EveryMorning)
        {
            var (site, own) = (One(sheet), new SheetView(sheet, InventedMorning.Issue));
            Assert.Equal(own.Counts, site.Counts);
            Assert.Equal(own.Boxes.Select(Acts), site.Boxes.Select(Acts));
        }

        static string Acts(RoundBox box) =>
            $"{box.Order} {box.Controller} {box.Place}: {string.Join("; ", box.Lines.SelectMany(l => l.Programs).Select(p => $"{p.Key} {p.Name} {p.Advice} {p.Present} {p.Percent} {p.PauseDays} {p.Unanswered?.Percent} {string.Join(' ', p.NewMinutes)}"))}";
    }

    /// <summary>Starts and stations to take out, to put back and to key in: the page is carried alone.</summary>
    [Fact]
    public void What_a_sheet_asks_for_at_a_box_beside_its_dials_stands_with_the_round()
    {
        var exceptions = InventedExceptions.Build();
        var early = new TakenOutStart(InventedMorning.At(0, 7, 0), Phrase.Verbatim("event, shotgun"), new LogTime(Date, new(9, 0)));
        var keyedIn = exceptions.Exceptions.GrowIns[0] with { OutBeforeRound = [early] };
        foreach (var sheet in Rendered.EveryMorning.Append(exceptions with { Exceptions = exceptions.Exceptions with { GrowIns = [keyedIn, keyedIn with { IsOver = true, IsChange = false }] } }))
        {
            Assert.Equal(BoxActWords.Of(new SheetView(sheet, InventedMorning.Issue).BoxActs).Select(Text), One(sheet).Acts.Select(Text));
        }

        var only = exceptions with { Programs = [.. exceptions.Programs.Where(p => !p.NeedsVisit)], BoxesToVerify = [] };
        var page = Page(InventedSites.Of("Quarry Bend", only));
        var round = page[page.IndexOf("Quarry Bend: round,", StringComparison.Ordinal)..];
        Assert.Contains("lock out before opening a box", round, StringComparison.Ordinal);
        Assert.Contains("take out stations 3 and 4, from 21:00 today on.", round, StringComparison.Ordinal);
        Assert.Contains("put back station 2, if it was taken out.", round, StringComparison.Ordinal);
        Assert.Contains("key in 3 starts (07:00 10:00 13:00) x 4 min, every day.", round, StringComparison.Ordinal);
        Assert.Equal(BoxActWords.Of(new SheetView(only, InventedMorning.Issue).BoxActs).Sum(g => g.Lines.Count), Regex.Count(round, "aria-label=\"tick when done\""));

        static string Text(ExceptionGroup group) => $"{group.Title}: {string.Join(" / ", group.Lines)}";
    }

    [Fact]
    public void What_the_hand_does_beside_a_number_stands_with_it_and_why_does_not()
    {
        var (set, off) = (InventedSites.With(AdviceKind.Set).Programs[0] with { StopRule = null }, InventedSites.With(AdviceKind.Off).Programs[0]);
        var on = set with
        {
            Advice = AdviceKind.Resume,
            Present = Setting.Off,
            Percent = 120,
            Fault = new Fault(InventedMorning.At(-2, 9, 0), "lateral broken", "", IsOwnNote: true),
            PausedUntil = InventedMorning.At(2, 7, 0),
            InPlace = new StartsInPlace(2, 200, 2, null),
        };
        string[] said =
        [
            Beside(on),
            Beside(set with { Percent = 90, Unanswered = new UnansweredAdvice(new(Date.AddDays(-1), null), AdviceKind.Set, 120, new(AdviceKind.Set, 90), new(AdviceKind.Leave, 90)) }),
            Beside(set),
        ];
        Assert.Equal(
            [
                "Off since Mon 13 July, \"lateral broken\": turn it on only if that is mended or over. The box is paused until 07:00 Fri 17 July: end the pause. More than the ground takes at once: in place of each start key in 2, 200 min from the beginning of one to that of the next, each with 1/2 of the base minutes. It may stay so: the water of a night is the same.",
                "Make sure it is on at 90 %.",
                "",
            ],
            said);

        // One dial for both: it runs for the one, so the other's starts are taken out.
        var course = InventedSites.Calm();
        var box = course.Site with { Controllers = [.. course.Site.Controllers.Select(c => string.Equals(c.Id, set.Key.Controller, StringComparison.Ordinal) ? c with { Applies = PercentApplies.Controller } : c)] };
        var page = Page(InventedSites.Of("Quarry Bend", course with { Site = box, Programs = [set, off with { Key = set.Key with { Program = "P9" } }] }));
        Assert.Contains("leave the dial, take its starts out", page, StringComparison.Ordinal);

        static string Beside(ProgramAdvice program)
        {
            var page = Page(InventedSites.Of("Quarry Bend", InventedSites.Calm() with { Programs = [program] }));
            return WebUtility.HtmlDecode(Regex.Match(page, "<div class=\"say\">(?<said>.*?)</div>", RegexOptions.Singleline | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)).Groups["said"].Value).Trim();
        }
    }

    [Fact]
    public void Each_dial_has_its_numbers_and_a_box_to_tick_and_leaves_its_reason_to_the_sheet()
    {
        var page = Page(InventedSites.Of("Quarry Bend", InventedMorning.Build()));
        Assert.Equal(6, Regex.Count(page, "aria-label=\"tick when done\""));
        Assert.Contains("<h2>Quarry Bend: round, before 13:00 <small>Sheet 2026-07-15/1</small></h2>", page, StringComparison.Ordinal);
        Assert.Contains("<i>90 →</i> 60 %", page, StringComparison.Ordinal);
        Assert.Contains("<i>off →</i> 75 %", page, StringComparison.Ordinal);
        Assert.Contains("behind the second tee", page, StringComparison.Ordinal);
        Assert.Contains("10 → <b>7 min</b>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("half of last night", page, StringComparison.Ordinal);
        Assert.Contains("Open 5 boxes: skip 1, change 4, turn on 1 and switch off 1, before 13:00.", page, StringComparison.Ordinal);
    }

    [Fact]
    public void What_stands_at_the_top_of_a_sheet_is_said_here_too()
    {
        var exceptions = InventedExceptions.Build();
        var all = Said(One(exceptions));
        Assert.Equal(
            [
                "Run by hand now: 5 stations did not get the night's water and cannot wait: begun 05:00, done 06:00. The list stands on the sheet.",
                "Verify these boxes: they lost power: A (behind the second tee) and B (=HYPERLINK(\"x\")).",
                "Clocks to move: A (behind the second tee) and B (=HYPERLINK(\"x\")).",
                "Starts and stations to take out, put back or key in: A (behind the second tee) and C (barn wall). Which, stands with the round.",
                "Not answered: the round of Mon 13 July. Its programs are judged both ways, done and not done.",
                "Not confirmed: Nursery (E/P2). Taken to run at 100 % until somebody reads the dial.",
                "Probe first: Green 6 back. How wet they were on Thu 25 June is only assumed, so nothing is cut or left out on that until rain or water fills them or a probe tells.",
                "Rain not known: gauge east, Tue 14 July (0.04 in of it was measured). It counts as none until somebody says.",
            ],
            all);
        Assert.Equal("No sound advice today: the newest weather is 3 days old. Since Tue 14 July. Every dial stays as it is set until weather comes in.", Said(One(InventedMorning.WithoutAdvice()))[0]);
    }

    [Fact]
    public void What_the_mornings_work_had_to_report_is_said_too()
    {
        var sheet = InventedSites.Calm();
        var json = MorningReport.Render(sheet, InventedMorning.Issue)[ReportFiles.AdviceJson];
        var site = Assert.Single(new IndexView([new() { Id = "q", Site = sheet.Site, Newest = new(Date, 2, sheet.Site, () => json) }]).Sites);
        Assert.Equal(Urgency.Questions, site.Urgency);
        Assert.Equal(["Please note: shop-0713.csv was refused: line 40 is cut off. It lies in inbox/refused with its reason."], Said(site));
    }

    [Fact]
    public void A_sheet_of_another_day_says_so_and_its_round_is_not_listed()
    {
        var old = InventedSites.Of("Old", InventedMorning.Build() with { Date = Date.AddDays(-1) });
        var page = Page(old, InventedSites.Of("New", InventedSites.Calm()));
        Assert.Contains("<b>No sheet:</b> None of Wed 15 July yet; it is due at 05:00. The newest is of Tue 14 July: its round is not listed here, for its numbers were that day's.", page, StringComparison.Ordinal);
        Assert.Contains("<a href=\"sites/Old/reports/2026-07-14/report.html\">Sheet 2026-07-14/1</a>", page, StringComparison.Ordinal);
        Assert.Contains("No dial to turn today, 2 sites. 1 site has no sheet for this day.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("tick when done", page, StringComparison.Ordinal);
        Assert.Contains("The morning of Wed 15 July was slept over: nothing was issued. The newest is of Tue 14 July", Page(old with { Missed = Date }), StringComparison.Ordinal);
    }

    [Fact]
    public void A_site_without_a_sheet_says_why()
    {
        var course = InventedCourse.Build(UnitSystem.Us);
        Assert.Contains("None was issued yet.", Page(new IndexSite { Id = "new", Site = course }), StringComparison.Ordinal);
        Assert.Contains("never read without errors: <code>dailyadjust check</code> says", Page(new IndexSite { Id = "new" }), StringComparison.Ordinal);
        Assert.Contains("Its records cannot be read: disk I/O error.", Page(new IndexSite { Id = "new", Trouble = "disk I/O error" }), StringComparison.Ordinal);
        Assert.Contains("<code>dailyadjust new</code>", Page(), StringComparison.Ordinal);
    }

    /// <summary>A sheet's record that is cut off, or says what no program of ours writes, keeps no other site from its round.</summary>
    [Theory]
    [InlineData("", "{")]
    [InlineData("\"advice\": \"set\"", "\"advice\": \"sprinkle\"")]
    [InlineData("\"date\": \"2026-07-15\"", "\"date\": \"today\"")]
    [InlineData("\"due\": \"2026-07-15T20:00\"", "\"due\": \"2026-07-15\"")]
    public void A_site_whose_record_is_damaged_says_so_and_the_others_keep_their_rounds(string old, string by)
    {
        var good = InventedSites.Of("Good", InventedMorning.Build());
        var sheet = InventedMorning.Build() with { Exceptions = new() { HandRuns = [new(LogKind.WaterIn, new(PlaceKind.Area, "greens", ""), 6.35, InventedMorning.At(0, 20, 0), IsLate: false, "", "", [])] } };
        var bad = InventedSites.Of("Bad", sheet);
        var json = Encoding.UTF8.GetString(bad.Newest!.AdviceJson().Span);
        Assert.Contains(old, json, StringComparison.Ordinal);
        var damaged = bad with { Newest = bad.Newest with { AdviceJson = () => Encoding.UTF8.GetBytes(old.Length == 0 ? by : json.Replace(old, by, StringComparison.Ordinal)) } };
        var view = new IndexView([damaged, good]);
        Assert.Equal([("Bad", Urgency.NoSheet, 0), ("Good", Urgency.OffOrOn, 5)], view.Sites.Select(s => (s.Name, s.Urgency, s.Boxes.Count)));
        Assert.StartsWith("No sheet: Its records cannot be read: its newest advice.json is damaged (", Said(view.Sites[0]).Single(), StringComparison.Ordinal);
        Assert.Contains("Good: round, before 13:00", Page(damaged, good), StringComparison.Ordinal);
    }

    [Fact]
    public void Only_our_own_notices_hold_commands()
    {
        const string Name = "`dailyadjust check` green";
        var sheet = InventedMorning.Build();
        var site = InventedSites.Of("Quarry Bend", sheet with { Freshness = sheet.Freshness with { UnknownRain = [new(Name, Date, 0)] } });
        var page = Page(site);
        Assert.Contains($"gauge {Name}", page.Replace("&#x60;", "`", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("<code>", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_round_that_is_carried_alone_has_its_sheet_its_caution_and_the_boxes_to_verify()
    {
        var view = new IndexView([InventedSites.Of("Quiet", InventedSites.Calm() with { BoxesToVerify = InventedExceptions.Build().BoxesToVerify }), InventedSites.Of("Calm", InventedSites.Calm())]);
        Assert.Equal(["Quiet"], view.Rounds.Select(s => s.Name));
        var page = Page(InventedSites.Of("Quiet", InventedSites.Calm() with { BoxesToVerify = InventedExceptions.Build().BoxesToVerify }));
        string[] order = ["Quiet: round, before 13:00 <small>Sheet 2026-07-15/1</small>", "lock out before opening a box", "A (behind the second tee) lost power: verify clock, weekday, programs and percentage."];
        var places = order.Select(p => page.IndexOf(p, StringComparison.Ordinal)).ToList();
        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public void Past_days_stand_by_site_and_month_the_newest_first_with_what_was_asked()
    {
        var site = InventedSites.Of("Quarry Bend", InventedMorning.Build(), issue: 2);
        var sheet = site.Days[0].Sheet!;
        var page = Page(site with
        {
            Days =
            [
                new(new(2026, 6, 30), sheet with { Date = new(2026, 6, 30), Issue = 1, Lines = [.. sheet.Lines.Where(l => !l.Asks)] }, HasRound: true),
                new(new(2026, 7, 1), null, HasRound: false),
                .. site.Days,
            ],
        });
        string[] order = ["July 2026 <small>2 sheets</small>", "2026-07-15/report.html\">Wed 15 Jul</a> issue 2, 5 boxes: skip 1,", "2026-07-01/report.html\">Wed 1 Jul</a>", "June 2026 <small>1 sheet</small>", "Tue 30 Jun</a> no box · <a href=\"sites/Quarry-Bend/reports/2026-06-30/round.csv\">"];
        var past = page[page.IndexOf("Past sheets", StringComparison.Ordinal)..];
        var places = order.Select(p => past.IndexOf(p, StringComparison.Ordinal)).ToList();
        Assert.All(order.Zip(places), p => Assert.True(p.Second >= 0, p.First));
        Assert.Equal(places.Order(), places);
        Assert.DoesNotContain("2026-07-01/round.csv", page, StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_one_file_without_script_or_outside_address_whatever_files_say()
    {
        const string Evil = "<img src=x>\"'&`x`";
        var sheet = InventedExceptions.Build();
        var site = InventedSites.Of(Evil, sheet with
        {
            Programs = [.. sheet.Programs.Select(p => p with { Name = Evil, Reason = Phrase.Verbatim(Evil) })],
            Freshness = sheet.Freshness with { NoAdvice = Phrase.Verbatim(Evil), UnknownRain = [new(Evil, Date, 0)] },
            Site = sheet.Site with { Controllers = [.. sheet.Site.Controllers.Select(c => c with { Place = Evil })] },
        });
        var page = AllSites.Html([site with { Id = "a b/../<script>?#" }, new() { Id = Evil, Trouble = Evil }]);
        Assert.DoesNotContain("<img", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("://", page, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\s(src|on\w+)=""", page);
        Assert.Contains("&lt;img src=x&gt;", page, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", page, StringComparison.Ordinal);
        var links = HtmlReportTests.AsXml(page).Descendants("a").Select(a => a.Attribute("href")!.Value).ToList();
        Assert.Equal(3, links.Count);
        Assert.All(links, link => Assert.StartsWith("sites/a%20b%2F..%2F%3Cscript%3E%3F%23/reports/2026-07-15/r", link, StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_sites_give_the_same_bytes_in_any_order_and_culture()
    {
        var sites = InventedSites.EveryUrgency();
        var expected = AllSites.Html(sites);
        Assert.Equal(expected, AllSites.Html([.. sites.Reverse().Select(s => s with { Days = [.. s.Days.Reverse()] })]));
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("ar-SA");
            Assert.Equal(expected, AllSites.Html(sites));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_sheet_of_an_earlier_program_that_lacks_keys_is_read_all_the_same()
    {
        const string Json = """
            {"site":"q","date":"2026-07-15","revision":1,"freshness":{"weatherThrough":null,"station":"","noAdvice":null},
             "programs":[{"controller":"A","program":"P1","setting":90,"advice":"set","percent":60,"reason":"dry"}]}
            """;
        var course = InventedCourse.Build(UnitSystem.Us);
        var site = Assert.Single(new IndexView([new() { Id = "q", Site = course, Newest = new(Date, 1, course, () => System.Text.Encoding.UTF8.GetBytes(Json)) }]).Sites);
        Assert.Equal((Urgency.Changes, 1, 0), (site.Urgency, site.Counts.Change, site.Warnings.Count));
    }

    [Fact]
    public void Three_sites_of_three_years_make_a_page_a_phone_still_opens()
    {
        var site = InventedSites.Of("Quarry Bend", InventedMorning.Build());
        var sheet = site.Days[0].Sheet!;
        var days = Enumerable.Range(0, 1095).Select(i => new IndexDay(Date.AddDays(-i), sheet with { Date = Date.AddDays(-i) }, HasRound: true)).ToList();
        var page = AllSites.Html([.. "abc".Select(c => site with { Id = c.ToString(), Days = days })]);
        Assert.Equal((2 * 3 * 1095) + 3, Regex.Count(page, "<a href="));
        Assert.InRange(page.Length, 500_000, 1_200_000);
    }

    private static SiteToday One(MorningSheet sheet) => Assert.Single(new IndexView([InventedSites.Of("Quarry Bend", sheet)]).Sites);

    private static IReadOnlyList<string> Said(SiteToday site) => [.. site.Warnings.Select(w => $"{w.Title}: {w.Text}")];

    private static string Page(params IndexSite[] sites) => HtmlReportTests.Readable(AllSites.Html(sites));
}
