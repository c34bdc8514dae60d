using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports;

/// <summary>One line of a round box: a program, or all programs of a box that has one dial for all.</summary>
public sealed record RoundLine(IReadOnlyList<ProgramAdvice> Programs)
{
    public ProgramAdvice First => Programs[0];

    public bool IsWholeBox => Programs.Count > 1;
}

/// <summary>One controller to open, in walking order.</summary>
/// <param name="Order">1, 2, ... on this round.</param>
public sealed record RoundBox(int Order, string Controller, string Place, IReadOnlyList<RoundLine> Lines);

/// <summary>Programs by what happens to them. Visit + Leave + StaysOff + AsSet = all programs.</summary>
public sealed record RoundCounts(int Skip, int Change, int TurnOn, int SwitchOff, int Leave, int StaysOff, int AsSet)
{
    public int Visit => Skip + Change + TurnOn + SwitchOff;
}

/// <summary>A morning sheet arranged for reading: what every form of the report shows.</summary>
public sealed class SheetView
{
    public SheetView(MorningSheet sheet, SheetIssue issue)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(issue);
        Sheet = sheet;
        Issue = issue;
        Words = new SiteWords(sheet.Site.Units, sheet.Site.Clock, sheet.Date);
        Boxes = [.. sheet.Programs.Where(p => p.NeedsVisit)
            .GroupBy(p => p.Key.Controller, StringComparer.Ordinal)
            .Select((box, i) => new RoundBox(i + 1, box.Key, ControllerOf(box.Key)?.Place ?? "", Lines(box.Key, [.. box])))];
        AsSet = [.. sheet.Programs.Where(p => p.Advice == AdviceKind.AsSet)];
        NotAnswered = [.. sheet.Programs.Where(p => p.Unanswered is not null)];
        Counts = Count(sheet.Programs);
    }

    public MorningSheet Sheet { get; }

    public SheetIssue Issue { get; }

    public SiteWords Words { get; }

    public string Id => CodeWords.SheetId(Sheet.Date, Issue.Number);

    /// <summary>Controllers with a dial to turn, in walking order.</summary>
    public IReadOnlyList<RoundBox> Boxes { get; }

    /// <summary>Programs without sound advice.</summary>
    public IReadOnlyList<ProgramAdvice> AsSet { get; }

    /// <summary>Programs with an earlier advice that nobody has answered.</summary>
    public IReadOnlyList<ProgramAdvice> NotAnswered { get; }

    public RoundCounts Counts { get; }

    public bool NoAdvice => Sheet.Freshness.NoAdvice is not null;

    /// <summary>The controller of that id, or null where the site no longer has it.</summary>
    public Controller? ControllerOf(string id) => Sheet.Site.ControllerOf(id);

    /// <summary>"C2 (behind the ninth green)", or "C2" where nobody said where it stands.</summary>
    public string BoxLabel(string controller) =>
        ControllerOf(controller) is { Place.Length: > 0 } known ? $"{controller} ({known.Place})" : controller;

    /// <summary>"Greens 5-7 (C2/P1)", or "C2/P1" where it has no name.</summary>
    public string Label(ProgramKey key) => CommonWords.Named(Sheet.Programs.FirstOrDefault(p => p.Key == key)?.Name ?? "", key.ToString());

    private IReadOnlyList<RoundLine> Lines(string controller, IReadOnlyList<ProgramAdvice> programs)
    {
        var oneDial = programs.Count > 1
            && ControllerOf(controller)?.Applies == PercentApplies.Controller
            && programs.All(p => p.Advice == programs[0].Advice && p.Percent == programs[0].Percent && p.Present == programs[0].Present);
        return oneDial ? [new RoundLine(programs)] : [.. programs.Select(p => new RoundLine([p]))];
    }

    private static RoundCounts Count(IReadOnlyList<ProgramAdvice> programs)
    {
        var visits = programs.Where(p => p.NeedsVisit).ToList();
        var others = programs.Where(p => !p.NeedsVisit).ToList();
        var asSet = others.Count(p => p.Advice == AdviceKind.AsSet);
        var leave = others.Count(p => p.Advice == AdviceKind.Leave && !p.Present.IsOff);
        return new RoundCounts(
            visits.Count(p => p.Advice == AdviceKind.Skip),
            visits.Count(p => p.Advice == AdviceKind.Set),
            visits.Count(p => p.Advice == AdviceKind.Resume),
            visits.Count(p => p.Advice == AdviceKind.Off),
            leave,
            others.Count - asSet - leave,
            asSet);
    }
}
