using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Index;

namespace DailyAdjust.Tests.Reports;

/// <summary>Sites for the page over all of them, each with the sheet that an invented morning makes.</summary>
internal static class InventedSites
{
    private static readonly DateOnly Date = InventedMorning.Date;

    /// <summary>A site whose newest sheet is this one, with the files of that day in their folder.</summary>
    public static IndexSite Of(string name, MorningSheet sheet, int issue = 1)
    {
        var site = sheet.Site with { Name = name };
        var made = new SheetIssue { SiteId = Id(name), Number = issue, Replaces = issue > 1 ? issue - 1 : null };
        var lines = sheet.Programs.Select(p => new IssuedLine(p.Key, p.Advice, p.Percent, p.NeedsVisit));
        return new()
        {
            Id = Id(name),
            Site = site,
            Newest = new(sheet.Date, issue, site, () => MorningReport.Render(sheet with { Site = site }, made)[ReportFiles.AdviceJson]),
            Days = [new(sheet.Date, new(sheet.Date, issue, sheet.AsOf, [.. lines]), HasRound: true)],
        };
    }

    /// <summary>A morning on which nobody has to do or answer anything.</summary>
    public static MorningSheet Calm()
    {
        var sheet = InventedMorning.Build();
        return sheet with { Freshness = new Freshness { WeatherThrough = InventedMorning.At(0, 4, 0), ExpectedEtoMm = 5 }, Programs = [sheet.Programs[0]] };
    }

    /// <summary>The calm morning with other programs of the invented one.</summary>
    public static MorningSheet With(params AdviceKind[] advice) => Calm() with { Programs = [.. InventedMorning.Build().Programs.Where(p => advice.Contains(p.Advice))] };

    /// <summary>One site for every way to press, named so that the names alone would stand in another order.</summary>
    public static IReadOnlyList<IndexSite> EveryUrgency()
    {
        var exceptions = InventedExceptions.Build();
        return
        [
            Of("a nothing", Calm()),
            Of("b questions", Calm() with { Freshness = InventedMorning.Build().Freshness }),
            Of("c changes", With(AdviceKind.Set, AdviceKind.Skip)),
            Of("d off or on", With(AdviceKind.Set, AdviceKind.Resume)),
            Of("e verify", Calm() with { BoxesToVerify = exceptions.BoxesToVerify }),
            Of("f by hand", Calm() with { RunByHand = exceptions.RunByHand }),
            Of("g no advice", InventedMorning.WithoutAdvice()),
            Of("h old sheet", Calm() with { Date = Date.AddDays(-1) }),
        ];
    }

    public static string Id(string name) => name.Replace(' ', '-');
}
