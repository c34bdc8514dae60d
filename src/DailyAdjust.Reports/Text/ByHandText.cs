using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>What to run by hand after a night that failed, and boxes to verify, for a terminal; nothing on an ordinary day.</summary>
internal static class ByHandText
{
    private const int MostBoxes = 16;

    /// <summary>Lines of one box: its stations have to stand there.</summary>
    private const int MostOfOne = 8;

    public static void Write(TextLines lines, SheetView view)
    {
        if (view.Sheet.RunByHand is { } list)
        {
            lines.Blank();
            lines.Add($"{ByHandWords.Title(list).Shaped(title => title.ToUpperInvariant())}: {ByHandWords.Lead(list, view)}");
            foreach (var group in ByHandWords.Groups(list, view))
            {
                lines.Add(group.Title, indent: 2);
                lines.AddList(group.Lines, MostBoxes, "[ ]", indent: 4, MostOfOne);
            }

            lines.AddList(ByHandWords.Rest(list, view), MostBoxes, most: MostOfOne);
        }

        foreach (var group in BoxCheckWords.Of(view))
        {
            lines.Blank();
            lines.Add($"! {group.Title}:");
            lines.AddList(group.Lines, MostBoxes, most: MostOfOne);
        }
    }
}
