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
            lines.Add($"! {group.Title.Shaped(title => title.EndsWith('?') ? title : title + ':')}");
            lines.AddList(group.Lines, MostLines);
        }
    }
}
