using System.Text;

namespace DailyAdjust.Reports.Tables;

/// <summary>A table for a terminal: numbers to the right, texts to the left, two blanks between, "-" for unknown.</summary>
internal static class TableText
{
    public static string Write(Table table)
    {
        var widths = table.Columns.Select((name, i) => table.Rows.Select(r => Shown(r[i]).Length).Append(name.Length).Max()).ToArray();
        var isNumber = table.Columns.Select((_, i) => table.Rows.Any(r => r[i].IsNumber)).ToArray();
        var text = new StringBuilder();
        AppendLine(text, table.Columns, widths, isNumber);
        foreach (var row in table.Rows)
        {
            AppendLine(text, [.. row.Select(Shown)], widths, isNumber);
        }

        return text.ToString();
    }

    private static string Shown(Cell cell) => cell.Written.Length == 0 ? "-" : OneLine(cell.Written);

    private static void AppendLine(StringBuilder text, IReadOnlyList<string> cells, int[] widths, bool[] isNumber)
    {
        var line = cells.Select((cell, i) => isNumber[i] ? cell.PadLeft(widths[i]) : cell.PadRight(widths[i]));
        text.Append(string.Join("  ", line).TrimEnd()).Append('\n');
    }

    /// <summary>Nothing from a file may move the cursor or start a line of its own.</summary>
    public static string OneLine(string text)
    {
        foreach (var sign in text)
        {
            if (char.IsControl(sign))
            {
                return string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
            }
        }

        return text;
    }
}
