using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>What to run by hand after a night that failed, and boxes to verify, for a terminal; nothing on an ordinary day.</summary>
internal static class ByHandText
{
    private const int MostBoxes = 16;

    public static void Write(TextLines lines, SheetView view)
    {
        if (view.Sheet.RunByHand is { } list)
        {
            lines.Blank();
            lines.Add($"{ByHandWords.Title.ToUpperInvariant()}: {ByHandWords.Lead(list, view)}");
            foreach (var group in ByHandWords.Groups(list, view))
            {
                lines.Add(group.Title, indent: 2);
                Each(lines, group.Lines, "[ ]", indent: 4);
            }

            Each(lines, ByHandWords.Rest(list, view), "-", indent: 2);
        }

        foreach (var group in BoxCheckWords.Of(view))
        {
            lines.Blank();
            lines.Add($"! {group.Title}:");
            Each(lines, group.Lines, "-", indent: 2);
        }
    }

    private static void Each(TextLines lines, IReadOnlyList<string> all, string mark, int indent)
    {
        foreach (var line in all.Take(MostBoxes))
        {
            lines.Add($"{mark} {line}", indent, most: 8);
        }

        if (all.Count > MostBoxes)
        {
            lines.Add($"{mark} and {SiteWords.Count(all.Count - MostBoxes)} more: see report.html", indent);
        }
    }
}
