using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Languages;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports;

/// <summary>A morning sheet arranged for reading: what every form of the report shows.</summary>
public sealed class SheetView
{
    public SheetView(MorningSheet sheet, SheetIssue issue)
        : this(sheet, issue, SheetLanguages.Of((sheet ?? throw new ArgumentNullException(nameof(sheet))).Site.Report.Language))
    {
    }

    public SheetView(MorningSheet sheet, SheetIssue issue, Language language)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(issue);
        Sheet = sheet;
        Issue = issue;
        Language = language;
        Words = new SiteWords(sheet.Site.Units, sheet.Site.Clock, sheet.Date);
        Boxes = RoundBox.Of(sheet.Programs, sheet.Site);
        StartBoxes = StartChanges.Boxes(sheet.Site, sheet.Programs, sheet.Exceptions);
        BoxActs = new BoxActs(sheet.Programs, sheet.Exceptions, Words, sheet.AsOf);
        AsSet = [.. sheet.Programs.Where(p => p.Advice == AdviceKind.AsSet)];
        NotAnswered = [.. sheet.Programs.Where(p => p.Unanswered is not null)];
        Counts = RoundCounts.Of(sheet.Programs);
    }

    public MorningSheet Sheet { get; }

    public SheetIssue Issue { get; }

    public SiteWords Words { get; }

    /// <summary>What the site's people read.</summary>
    public Language Language { get; }

    public string Id => CodeWords.SheetId(Sheet.Date, Issue.Number);

    /// <summary>Controllers with a dial to turn, in walking order.</summary>
    public IReadOnlyList<RoundBox> Boxes { get; }

    /// <summary>Controllers with starts or stations to take out, put back or key in, in walking order.</summary>
    public IReadOnlyList<string> StartBoxes { get; }

    /// <summary>What is to be done there.</summary>
    internal BoxActs BoxActs { get; }

    /// <summary>Programs without sound advice.</summary>
    public IReadOnlyList<ProgramAdvice> AsSet { get; }

    /// <summary>Programs with an earlier advice that nobody has answered.</summary>
    public IReadOnlyList<ProgramAdvice> NotAnswered { get; }

    public RoundCounts Counts { get; }

    public bool NoAdvice => Sheet.Freshness.NoAdvice is not null;

    /// <summary>A phrase in the sheet's language.</summary>
    public string Say(Phrase phrase)
    {
        ArgumentNullException.ThrowIfNull(phrase);
        return phrase.In(Language);
    }

    /// <summary>The controller of that id, or null where the site no longer has it.</summary>
    public Controller? ControllerOf(string id) => Sheet.Site.ControllerOf(id);

    /// <summary>"C2 (behind the ninth green)", or "C2" where nobody said where it stands.</summary>
    public string BoxLabel(string controller) => CommonWords.Box(controller, Sheet.Site);

    /// <summary>"Greens 5-7 (C2/P1)", or "C2/P1" where it has no name.</summary>
    public string Label(ProgramKey key) => Label(key, Sheet.Programs);

    /// <summary>The same among a sheet's programs as they were issued.</summary>
    internal static string Label(ProgramKey key, IReadOnlyList<ProgramAdvice> programs) => CommonWords.Named(programs.FirstOrDefault(p => p.Key == key)?.Name ?? "", key.ToString());
}
