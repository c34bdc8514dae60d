using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>Hot spots, probes, hand watering and minutes to change, for a terminal; nothing where there is nothing.</summary>
internal static class GroundText
{
    private const int MostLines = 6;

    public static void Write(TextLines lines, SheetView view)
    {
        foreach (var (title, group) in GroundWords.Of(view))
        {
            lines.Add($"{title}:");
            lines.AddList(group, MostLines);
        }
    }
}
