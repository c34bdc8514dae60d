using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>The page of the largest course: 40 boxes, 160 programs, 1,520 stations, and on this morning every dial is to be turned.</summary>
public sealed class PageWeightTests
{
    private const int MostBytes = 250_000;

    [Fact]
    public void It_weighs_under_250_kB_and_every_change_stands_on_it()
    {
        var page = MorningReport.Render(Large(), InventedMorning.Issue)[ReportFiles.Html];
        Assert.InRange(page.Length, 100_000, MostBytes);
        Assert.Equal(160, System.Text.RegularExpressions.Regex.Count(System.Text.Encoding.UTF8.GetString(page.Span), "class=\"dial\"", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(5)));
    }

    private static MorningSheet Large()
    {
        var sheet = InventedMorning.Build();
        var change = sheet.Programs.Single(p => p.StopRule is not null);
        List<ProgramAdvice> programs = [.. Enumerable.Range(0, 160).Select(i => change with
        {
            Key = Key(i),
            Name = $"Fairways {i}",
            Percent = 60 + (5 * (i % 13)),
            Confirmed = false,
            Reason = $"Part of the present water would drain: fairway {i} near will be 0.16 in below full by Thu 16 July 20:15, allowable 0.79 in.",
            Zones = [.. Enumerable.Range(1, 10).Select(n => change.Zones[n % change.Zones.Count] with { Station = new(Key(i).Controller, $"{n}"), Name = $"fairway {i}-{n}" })],
        })];
        return sheet with
        {
            Site = sheet.Site with { Controllers = [.. Enumerable.Range(1, 40).Select(c => new Controller { Id = $"C{c}", Place = $"left of the cart path behind tee {c}", Route = c, Programs = [] })] },
            Programs = programs,
            DueRuns = [.. programs.Take(80).Select(p => sheet.DueRuns[0] with { Program = p.Key, Name = p.Name })],
            Driest = [.. Enumerable.Range(0, 300).Select(i => sheet.Driest[0] with { Station = new($"C{(i / 10) + 1}", $"{i % 10}"), Name = $"fairway {i}" })],
            Season = [.. programs.Select(p => new ProgramSeason(p.Key, sheet.Date.AddDays(-90), [.. Enumerable.Range(0, 90).Select(d => (double)(d / 7 * 10 % 150))]))],
            Fit = sheet.Fit with
            {
                Runs = [.. programs.Take(120).Select((p, i) => new ProgramRun(sheet.Date, p.Key, InventedMorning.At(0, 14 + (2 * (i % 4)), i % 60), InventedMorning.At(0, 16 + (2 * (i % 4)), 15 + (i % 40))))],
                Cuts = [.. programs.Select(p => sheet.Fit.Cuts[0] with { Program = p.Key })],
            },
        };
    }

    private static ProgramKey Key(int i) => new($"C{(i / 4) + 1}", $"P{(i % 4) + 1}");
}
