using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>Where the short text leaves something to the page.</summary>
internal static class ShortTextWords
{
    /// <summary>"and 3 more: see report.html".</summary>
    public static Phrase AndMore(int count) => $"and {SectionWords.More(count)}: see {ReportFiles.Html}";

    /// <summary>"Did it run? 12, see report.html", where not one of them has room.</summary>
    public static Phrase OnlyCounted(Phrase title, int count) => $"{Titled(title)} {SiteWords.Count(count)}, see {ReportFiles.Html}";

    /// <summary>"Also in report.html: Rain, In force."</summary>
    public static Phrase Also(IReadOnlyList<Phrase> titles) => $"Also in {ReportFiles.Html}: {Phrase.Join(", ", titles)}.";

    /// <summary>"Take hose and probe:", "Did it run?".</summary>
    public static Phrase Titled(Phrase title) => title.Shaped(text => text.EndsWith('?') ? text : text + ":");
}
