using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports;
using Xunit;

namespace DailyAdjust.Tests.Reports;

public sealed class TextReportTests
{
    [Fact]
    public void No_line_is_wider_than_a_terminal()
    {
        foreach (var morning in Rendered.EveryMorning)
        {
            Assert.All(Rendered.Lines(ReportFiles.FullText, morning).Concat(Rendered.Lines(ReportFiles.Text, morning)), line => Assert.InRange(line.Length, 0, 100));
        }
    }

    [Fact]
    public void It_says_what_to_do_where_and_why()
    {
        var text = Rendered.File(ReportFiles.FullText);
        Assert.Contains("Open 5 boxes: skip 1, change 4, turn on 1 and switch off 1.", text, StringComparison.Ordinal);
        Assert.Contains("1. A, behind the second tee\n   [ ] P2 Fairways 1-3: SKIP, 100 % → off", text, StringComparison.Ordinal);
        Assert.Contains("[ ] P1 Greens 4-6: SET 90 → 60 %", text, StringComparison.Ordinal);
        Assert.Contains("[ ] P1 Range north + P2 Range south: SET 80 → 105 %", text, StringComparison.Ordinal);
        Assert.Contains("station 2: 12 → 8.5 min", text, StringComparison.Ordinal);
        Assert.Contains("Visit 7, leave 3, off 1\n", text, StringComparison.Ordinal);
        Assert.Contains("hose on 0.12 in, about 640 gal", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_waits_for_an_answer_stands_before_the_round_with_its_answer()
    {
        var text = Rendered.File(ReportFiles.FullText);
        var round = text.IndexOf("ROUND:", StringComparison.Ordinal);
        Assert.InRange(text.IndexOf("dailyadjust log round 2026-07-13 done --site quarry-bend", StringComparison.Ordinal), 1, round);
        Assert.InRange(text.IndexOf("Not confirmed: Nursery (E/P2).", StringComparison.Ordinal), 1, round);
        Assert.InRange(text.IndexOf("shop-0713.csv was refused", StringComparison.Ordinal), 1, round);
    }

    [Fact]
    public void Without_sound_advice_it_says_why_since_when_and_what_is_off()
    {
        var text = Rendered.File(ReportFiles.FullText, InventedMorning.WithoutAdvice());
        Assert.Contains("No sound advice: every dial as it is set.", text, StringComparison.Ordinal);
        Assert.Contains("the newest weather is 3 days old. Since Tue 14 July.", text, StringComparison.Ordinal);
        var off = text.IndexOf("Off now, and this sheet cannot say when to turn them on: Tees (B/P3), E/P3.", StringComparison.Ordinal);
        var running = text.IndexOf("Running as set: Greens 1-3 (A/P1) 90 %", StringComparison.Ordinal);
        Assert.InRange(off, 1, running);
        Assert.Contains("Visit 0, leave 0, off 0, as set 11", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_dial_that_may_be_off_or_at_a_number_that_nobody_answered_is_said_to_be_either()
    {
        var sheet = InventedMorning.Build();
        var unanswered = new UnansweredAdvice(new(sheet.Date.AddDays(-1), null), AdviceKind.Resume, 140, new AlternativeAdvice(AdviceKind.Set, 60), new AlternativeAdvice(AdviceKind.KeepOff, 0));
        string Written(string file) => Rendered.File(file, sheet with
        {
            Programs = [.. sheet.Programs.Select(p => p.Key is { Controller: "B", Program: "P1" } ? p with { Present = Setting.Off, MayBeOn = true, Unanswered = unanswered } : p)],
        });
        Assert.Contains("[ ] P1 Greens 4-6: SET off or 140 % → 60 %", Written(ReportFiles.FullText), StringComparison.Ordinal);
        Assert.Contains("off or 140\u00a0% →", System.Net.WebUtility.HtmlDecode(Written(ReportFiles.Html)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_from_a_file_cannot_start_a_line_or_move_the_cursor()
    {
        var sheet = InventedMorning.Build();
        foreach (var file in new[] { ReportFiles.FullText, ReportFiles.Text })
        {
            var text = Rendered.File(file, sheet with { Freshness = sheet.Freshness with { Station = "a\u001b[2Jb\nVisit 0" } });
            Assert.DoesNotContain('\u001b', text);
            Assert.DoesNotContain("\nVisit 0", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Metric_sites_read_millimetres_and_litres()
    {
        var text = Rendered.File(ReportFiles.FullText, InventedMorning.Build(UnitSystem.Metric));
        Assert.Contains("hose on 3.0 mm, about 2.4 m³", text, StringComparison.Ordinal);
        Assert.Contains("14.4 °C", text, StringComparison.Ordinal);
        Assert.Contains("3,407 L/min", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_whose_rain_nobody_knows_is_not_everything_measured()
    {
        var sheet = InventedMorning.Ordinary();
        var measured = sheet with { Freshness = sheet.Freshness with { AssumedNotes = [], SetAside = [] } };
        var asked = measured with { Freshness = measured.Freshness with { UnknownRain = [new UnknownRain("east", sheet.Date.AddDays(-1), 0)] } };
        Assert.Contains("Everything measured.", Rendered.File(ReportFiles.FullText, measured), StringComparison.Ordinal);
        Assert.DoesNotContain("Everything measured.", Rendered.File(ReportFiles.FullText, asked), StringComparison.Ordinal);
    }
}
