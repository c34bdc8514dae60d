using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Reports;

public sealed class SheetMailTests
{
    [Fact]
    public void The_subject_says_site_date_and_how_many_changes()
    {
        Assert.Equal("c changes, Wed 15 July: 5 changes at 4 boxes (skip 1 and change 4)", Of("c changes", InventedSites.With(AdviceKind.Set, AdviceKind.Skip)).Subject);
        Assert.Equal("a nothing, Wed 15 July: no dial to turn", Of("a nothing", InventedSites.Calm()).Subject);
        Assert.Equal("a nothing, Wed 15 July, issue 2 (replaces issue 1): no dial to turn", Of("a nothing", InventedSites.Calm(), issue: 2).Subject);
        Assert.Equal("g, Wed 15 July: no sound advice, leave every dial as it is set", Of("g", InventedMorning.WithoutAdvice()).Subject);
        var exceptions = InventedExceptions.Build();
        Assert.Contains("no dial to turn; ", Of("e", InventedSites.Calm() with { BoxesToVerify = exceptions.BoxesToVerify }).Subject, StringComparison.Ordinal);
        Assert.EndsWith(" to verify", Of("e", InventedSites.Calm() with { BoxesToVerify = exceptions.BoxesToVerify }).Subject, StringComparison.Ordinal);
        Assert.EndsWith(" to run by hand", Of("f", InventedSites.Calm() with { RunByHand = exceptions.RunByHand }).Subject, StringComparison.Ordinal);
    }

    [Fact]
    public void What_asks_for_something_is_what_silence_must_not_hide()
    {
        var asks = InventedSites.EveryUrgency().ToDictionary(s => s.Site!.Name, s => new SheetMail(s.Newest!.AdviceJson().Span, s.Site!).AsksForSomething, StringComparer.Ordinal);
        Assert.Equal(["a nothing", "b questions", "h old sheet"], asks.Where(s => !s.Value).Select(s => s.Key).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Two_sheets_ask_the_same_whatever_else_they_know()
    {
        var calm = InventedSites.With(AdviceKind.Set);
        var first = Of("s", calm);
        Assert.True(first.AsksTheSameAs(Of("s", calm with { AsOf = calm.AsOf.AddMinutes(30), Freshness = InventedMorning.Build().Freshness }, issue: 2)));
        Assert.False(first.AsksTheSameAs(Of("s", calm with { Programs = [calm.Programs[0] with { Percent = calm.Programs[0].Percent + 5 }, .. calm.Programs.Skip(1)] }, issue: 2)));
        Assert.False(first.AsksTheSameAs(Of("s", calm with { RunByHand = InventedExceptions.Build().RunByHand }, issue: 2)));
        Assert.False(first.AsksTheSameAs(Of("s", calm with { BoxesToVerify = InventedExceptions.Build().BoxesToVerify }, issue: 2)));
    }

    [Fact]
    public void A_stop_rule_starts_and_the_hose_list_are_asked()
    {
        var sheet = InventedMorning.Build();
        var first = Of("s", sheet);
        var ruled = sheet.Programs.First(p => p.StopRule is not null);
        Assert.False(first.AsksTheSameAs(Of("s", Programs(sheet, p => p == ruled ? p with { StopRule = null } : p), issue: 2)));
        Assert.False(first.AsksTheSameAs(Of("s", Programs(sheet, p => p == ruled ? p with { StopRule = p.StopRule! with { RainMm = p.StopRule.RainMm + 5 } } : p), issue: 2)));
        Assert.False(first.AsksTheSameAs(Of("s", sheet with { Driest = [] }, issue: 2)));
        Assert.True(first.AsksTheSameAs(Of("s", sheet with { Driest = [.. sheet.Driest.Select(d => d with { DepletionMm = d.DepletionMm + 1 })] }, issue: 2)));

        static MorningSheet Programs(MorningSheet sheet, Func<ProgramAdvice, ProgramAdvice> change) => sheet with { Programs = [.. sheet.Programs.Select(change)] };
    }

    [Theory]
    [InlineData("Mill\r\nBcc: x@example.org", "Mill Bcc: x@example.org")]
    [InlineData("a\u2028b\u2029c\u0085d\0e", "a b c d e")]
    [InlineData("\u202Ekeerc\u202C lliM", "keerc lliM")]
    [InlineData("  Größe   高尔夫 \u26F3 ", "Größe 高尔夫 \u26F3")]
    [InlineData("\ud800 alone", "alone")]
    [InlineData("", "")]
    public void A_text_from_outside_becomes_one_harmless_line(string text, string line)
    {
        Assert.Equal(line, MailWords.OneLine(text));
    }

    [Fact]
    public void A_text_that_nobody_would_read_is_cut()
    {
        Assert.InRange(MailWords.OneLine(new string('x', 100_000)).Length, 100, 210);
    }

    [Fact]
    public void Many_recipients_are_told_in_one_sentence()
    {
        var date = new DateOnly(2026, 7, 15);
        Assert.Equal("The mail of sheet 2026-07-15/1 to a@x has not gone out yet, 1 try so far: the line failed.", MailWords.NotYet(["a@x"], date, 1, 1, "the line failed"));
        Assert.Equal("The mail of sheet 2026-07-15/2 to a, b, c and 2 more has been refused and is not tried again: 550 no.", MailWords.Refused(["a", "b", "c", "d", "e"], date, 2, "550 no"));
        Assert.Equal("The mail of sheet 2026-07-15/1 to a has perhaps not arrived: no answer. Ask whether it is there.", MailWords.Uncertain(["a"], date, 1, "no answer"));
        Assert.Equal("The mail of sheet 2026-07-15/1 to a and b has been given up: too old.", MailWords.GivenUp(["a", "b"], date, 1, "too old"));
    }

    private static SheetMail Of(string name, MorningSheet sheet, int issue = 1)
    {
        var site = InventedSites.Of(name, sheet, issue);
        return new(site.Newest!.AdviceJson().Span, site.Site!);
    }
}
