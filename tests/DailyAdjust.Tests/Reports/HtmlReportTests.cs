using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports;
using Xunit;

namespace DailyAdjust.Tests.Reports;

public sealed class HtmlReportTests
{
    private static string Page { get; } = Readable(Rendered.File(ReportFiles.Html));

    [Fact]
    public void The_parts_stand_in_the_order_in_which_they_are_read()
    {
        string[] parts =
        [
            "Open 5 boxes", "<b>Not answered:</b>", "<b>Not confirmed:</b>", "<b>Please note:</b>", "Weather through 04:00 today", "Round: what to change today, before 13:00",
            "Visit 7, leave 3, off 1", "<h2>Overnight</h2>", "<h2>Did it run?", "<h2>Take hose and probe</h2>", "<h2>Wet ground: carts and mowers</h2>", "<h2>In force</h2>",
            "<h2>Does the night fit?</h2>", "<h2>Moisture by area</h2>", "<h2>Why, program by program</h2>", "<h2>If nobody visits and no rain falls</h2>",
            "<h2>Water used</h2>", "<h2>The season so far", "<h2>Cautions</h2>", "Words on this sheet",
        ];
        var places = parts.Select(p => Page.IndexOf(p, StringComparison.Ordinal)).ToList();
        Assert.All(parts.Zip(places), p => Assert.True(p.Second >= 0, p.First));
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public void It_is_one_file_without_script_or_outside_address()
    {
        Assert.DoesNotContain("<script", Page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("://", Page, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\s(src|href|on\w+)=", Page);
        Assert.DoesNotContain("@import", Page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("url(", Page, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("default-src 'none'", Page, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_from_files_are_escaped_wherever_they_stand()
    {
        var sheet = InventedMorning.Build();
        const string Evil = "<img src=x>\"'&";
        var page = Rendered.File(ReportFiles.Html, sheet with
        {
            Programs = [.. sheet.Programs.Select(p => p with { Name = Evil, Reason = Phrase.Verbatim(Evil) })],
            Driest = [.. sheet.Driest.Select(d => d with { Name = Evil, Why = Phrase.Verbatim(Evil) })],
            Wettest = [.. sheet.Wettest.Select(w => w with { Name = Evil })],
            Areas = [.. sheet.Areas.Select(a => a with { Area = Evil })],
            StandingOrders = [.. sheet.StandingOrders.Select(o => o with { Where = Evil, What = Phrase.Verbatim(Evil) })],
            Site = sheet.Site with { Name = Evil },
        });
        Assert.DoesNotContain("<img", page, StringComparison.Ordinal);
        Assert.Contains("&lt;img src=x&gt;", page, StringComparison.Ordinal);
        Assert.NotNull(AsXml(page));
    }

    [Fact]
    public void Every_element_is_closed() => Assert.NotNull(AsXml(Rendered.File(ReportFiles.Html)));

    [Fact]
    public void Each_dial_has_its_numbers_and_a_box_to_tick()
    {
        Assert.Equal(6, Regex.Count(Page, "aria-label=\"tick when done\""));
        Assert.Contains("<i>90 →</i> 60 %", Page, StringComparison.Ordinal);
        Assert.Contains("<i>100 % →</i> off", Page, StringComparison.Ordinal);
        Assert.Contains("<i>off →</i> 75 %", Page, StringComparison.Ordinal);
        Assert.Contains("Turn on again Sat 18 July if no rain falls.", Page, StringComparison.Ordinal);
        Assert.Contains("The dial ends at 75 %: 0.05 in or 6 min short a start.", Page, StringComparison.Ordinal);
        Assert.Contains("Must not run through Mon 20 July.", Page, StringComparison.Ordinal);
    }

    /// <summary>Whoever carries the round reads there when to switch off; so does whoever carries that of the page over all sites.</summary>
    [Fact]
    public void When_to_switch_off_after_rain_stands_with_the_change()
    {
        const string Rule = "Switch it off if gauge shop shows 0.22 in or more before 21:30 today.";
        var round = Page[Page.IndexOf("Round: what to change", StringComparison.Ordinal)..Page.IndexOf("Visit 7, leave 3", StringComparison.Ordinal)];
        Assert.Equal(1, Regex.Count(round, Regex.Escape(Rule)));
        Assert.InRange(round.IndexOf(Rule, StringComparison.Ordinal), round.IndexOf("<i>90 →</i> 60 %", StringComparison.Ordinal), round.IndexOf("<i>off →</i> 75 %", StringComparison.Ordinal));
        Assert.Contains(Rule, Readable(AllSites.Html([InventedSites.Of("Quarry Bend", InventedMorning.Build())])), StringComparison.Ordinal);
    }

    /// <summary>Starts at 05:10 yesterday came after yesterday's sheet of 04:50: they are asked about today, and belong to no night of two dates.</summary>
    [Fact]
    public void Did_it_run_says_since_when_starts_are_listed() =>
        Assert.Contains("<h2>Did it run? <small>starts since 04:50 yesterday</small></h2>", Page, StringComparison.Ordinal);

    [Fact]
    public void A_legend_names_only_what_is_drawn()
    {
        const string Key = "the watering window opens or closes.";
        Assert.DoesNotContain(Key, Page, StringComparison.Ordinal); // 21:30 to 01:20 lies inside
        var sheet = InventedMorning.Build();
        var late = sheet with { Fit = sheet.Fit with { Runs = [sheet.Fit.Runs[0] with { Finishes = InventedMorning.At(1, 6, 40) }] } };
        Assert.Contains(Key, Rendered.File(ReportFiles.Html, late), StringComparison.Ordinal);
    }

    [Fact]
    public void The_headline_says_how_many_places_the_hose_goes_to()
    {
        Assert.Contains("switch off 1. Take the hose to 2 places.</p>", Page, StringComparison.Ordinal);
        Assert.Contains("No place for the hose.</p>", Rendered.File(ReportFiles.Html, InventedMorning.Build() with { Driest = [] }), StringComparison.Ordinal);
        Assert.DoesNotContain("No place for the hose", Rendered.File(ReportFiles.Html, InventedMorning.WithoutAdvice() with { Driest = [] }), StringComparison.Ordinal);
    }

    [Fact]
    public void What_holds_at_every_box_and_which_to_verify_stands_before_the_first_of_the_round()
    {
        var page = Readable(Rendered.File(ReportFiles.Html, InventedExceptions.Build()));
        string[] order = ["Round: what to change today", "lock out before opening a box", "A (behind the second tee) lost power: verify", "<article class=\"stop\">"];
        var places = order.Select(p => page.IndexOf(p, StringComparison.Ordinal)).ToList();
        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
    }

    /// <summary>A blank that does not break is another sign to whatever reads what was typed.</summary>
    [Fact]
    public void Blanks_in_what_is_typed_stay_as_they_are()
    {
        var typed = Regex.Matches(Rendered.File(ReportFiles.Html, InventedExceptions.Build()), "<code>([^<]*)</code>").Select(m => m.Groups[1].Value).ToList();
        Assert.Contains(typed, t => Regex.IsMatch(t, "[0-9] (min|%)"));
        Assert.All(typed, t => Assert.DoesNotContain('\u00a0', t));
    }

    [Fact]
    public void Metered_water_says_between_which_readings_and_of_the_season_too()
    {
        Assert.Contains("<td>this month</td><td class=\"n\">650,000 gal</td><td class=\"n\">629,000 gal<small>30 Jun to 13 Jul</small></td>", Page, StringComparison.Ordinal);
        var sheet = InventedMorning.Build();
        var season = Readable(Rendered.File(ReportFiles.Html, sheet with { Water = sheet.Water with { MeteredSeason = new(new(2026, 4, 1), new(2026, 7, 13), 13_900_000) } }));
        Assert.Contains("<small>1 Apr to 13 Jul</small>", season, StringComparison.Ordinal);
        Assert.Contains("3,670,000 gal<small>", season, StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_that_the_reason_names_is_not_said_twice()
    {
        var sheet = InventedMorning.Build();
        var skip = sheet.Programs[1] with { Reason = Phrase.Verbatim("1.26 in of rain: look again on Sat 18 Jul, about 50 % if no rain falls"), NamedDay = InventedMorning.Date.AddDays(3) };
        var page = Readable(Rendered.File(ReportFiles.Html, sheet with { Programs = [skip] }));
        Assert.Contains("look again on Sat 18 Jul, about 50 % if no rain falls.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Turn on again", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_of_1500_stations_stays_under_250_kilobytes()
    {
        var sheet = InventedMorning.Build();
        var zones = sheet.Programs[2].Zones;
        var programs = Enumerable.Range(0, 120).Select(i => sheet.Programs[i % sheet.Programs.Count] with
        {
            Key = new ProgramKey("C" + i / 4, "P" + i % 4),
            Name = "Fairway stations " + i,
            Zones = [.. Enumerable.Range(0, 13).Select(z => zones[z % zones.Count] with { Name = "Station " + z })],
        });
        var dry = Enumerable.Range(0, 40).Select(i => sheet.Driest[i % 2]);
        List<ProgramAdvice> all = [.. programs];
        var page = Rendered.File(ReportFiles.Html, sheet with
        {
            Programs = all,
            Driest = [.. dry],
            Fit = new([.. all.Select((p, i) => new ProgramRun(sheet.Date, p.Key, InventedMorning.At(0, 20, 30).AddMinutes(i), InventedMorning.At(0, 21, 0).AddMinutes(i)))], [], [], [], []),
            Season = [.. all.Select((p, i) => new ProgramSeason(p.Key, new(2026, 3, 1), [.. Enumerable.Range(0, 136).Select(day => (double)((day + i) * 5 % 150))]))],
        });
        Assert.InRange(page.Length, 50_000, 250_000);
    }

    [Fact]
    public void Every_chart_has_title_description_and_a_table_behind_it()
    {
        var charts = AsXml(Rendered.File(ReportFiles.Html)).Descendants("figure").ToList();
        Assert.Equal(7, charts.Count);
        foreach (var chart in charts)
        {
            var svg = chart.Element("svg")!;
            var labels = svg.Attribute("aria-labelledby")!.Value.Split(' ');
            Assert.Equal(labels, (string[])[svg.Element("title")!.Attribute("id")!.Value, svg.Element("desc")!.Attribute("id")!.Value]);
            Assert.NotEmpty(svg.Element("desc")!.Value);
            Assert.NotEmpty(chart.Element("details")!.Descendants("td"));
        }

        Assert.All(charts.Where(IsArea), chart =>
        {
            Assert.Equal(16, chart.Descendants("tr").Count());
            Assert.Equal(15, chart.Element("svg")!.Elements("polyline").Single().Attribute("points")!.Value.Split(' ').Length);
        });
        Assert.Equal(4, charts.Count(IsArea));

        var ids = charts.SelectMany(c => c.Descendants().Attributes("id")).Select(a => a.Value).ToList();
        Assert.Equal(ids.Count, ids.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void A_chart_draws_dry_below_full_and_unknown_rain_as_a_question()
    {
        var range = AsXml(Rendered.File(ReportFiles.Html)).Descendants("figure").Last(IsArea).Element("svg")!;
        var heights = range.Element("polyline")!.Attribute("points")!.Value.Split(' ').Select(p => double.Parse(p.Split(',')[1], System.Globalization.CultureInfo.InvariantCulture)).ToList();
        Assert.True(heights[0] < heights[10], "the range dries out over the first days");
        Assert.True(heights[13] < heights[12], "and the rain fills it");
        Assert.Contains(range.Descendants("text"), t => string.Equals(t.Value, "?", StringComparison.Ordinal));
        Assert.Equal(2, range.Elements("rect").Count(r => string.Equals(r.Attribute("class")?.Value, "rain", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_same_site_in_metric_has_no_us_unit_left()
    {
        var text = Readable(Rendered.File(ReportFiles.Html, InventedMorning.Build(UnitSystem.Metric)));
        Assert.DoesNotMatch(@"\d (gal|gpm|°F)", text);
        Assert.Contains("4.8 mm", text, StringComparison.Ordinal);
        Assert.Contains("2.4 m³", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_sound_advice_it_says_so_first_and_lists_what_is_off_before_what_runs()
    {
        var page = Readable(Rendered.File(ReportFiles.Html, InventedMorning.WithoutAdvice()));
        string[] order = ["No sound advice: every dial as it is set.", "the newest weather is 3 days old. Since Tue 14 July.", "Off now, and this sheet cannot say when to turn them on", "<b>Tees (B/P3)</b>", "Running as set", "Visit 0, leave 0, off 0, as set 11"];
        var places = order.Select(p => page.IndexOf(p, StringComparison.Ordinal)).ToList();
        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public void No_form_of_the_report_calls_anything_safe()
    {
        foreach (var morning in Rendered.EveryMorning)
        {
            foreach (var file in MorningReport.Render(morning, InventedMorning.Issue).All)
            {
                Assert.DoesNotMatch(@"(?i)\bsafe", System.Text.Encoding.UTF8.GetString(file.Bytes.Span));
            }
        }
    }

    [Fact]
    public void An_empty_morning_still_makes_a_page()
    {
        var sheet = InventedMorning.Build();
        var page = Rendered.File(ReportFiles.Html, sheet with
        {
            Programs = [],
            DueRuns = [],
            Driest = [],
            Wettest = [],
            StandingOrders = [],
            Areas = [],
            Outlook = [],
            Pointers = [],
            Freshness = new Core.Morning.Freshness(),
            Overnight = new Core.Morning.Overnight([], null, null, null),
            Fit = new Core.Advice.NightFit([], [], [], [], []),
        });
        Assert.Contains("No box to open today.", page, StringComparison.Ordinal);
        Assert.Contains("No weather has come in yet.", page, StringComparison.Ordinal);
    }

    private static bool IsArea(XElement figure) => figure.Attribute("class") is null;

    /// <summary>The page with its character references resolved where they are harmless to read.</summary>
    internal static string Readable(string page) => Regex.Replace(page, "&#x([0-9A-F]+);", m => ((char)Convert.ToInt32(m.Groups[1].Value, 16)).ToString()).Replace('\u00a0', ' ');

    internal static XElement AsXml(string page)
    {
        var body = page[page.IndexOf("<body>", StringComparison.Ordinal)..(page.IndexOf("</body>", StringComparison.Ordinal) + 7)].Replace("<br>", "<br/>", StringComparison.Ordinal);
        using var reader = XmlReader.Create(new StringReader(body), new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit });
        return XElement.Load(reader);
    }
}
