using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>What is otherwise today, for a terminal; nothing on an ordinary day.</summary>
internal static class ExceptionsText
{
    private const int MostLines = 12;

    public static void Write(TextLines lines, SheetView view)
    {
        foreach (var group in ExceptionWords.Of(view))
        {
            lines.Add($"! {group.Title}:");
            foreach (var line in group.Lines.Take(MostLines))
            {
                lines.Add($"- {line}", indent: 2);
            }

            if (group.Lines.Count > MostLines)
            {
                lines.Add($"- and {SiteWords.Count(group.Lines.Count - MostLines)} more: see report.html", indent: 2);
            }
        }
    }
}
