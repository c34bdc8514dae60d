using System.Text;

namespace DailyAdjust.Reports.Tables;

/// <summary>CSV that a spreadsheet opens without running anything in it.</summary>
internal static class CsvText
{
    public static string Write(Table table)
    {
        var text = new StringBuilder().AppendJoin(',', table.Columns.Select(Quoted)).Append('\n');
        foreach (var row in table.Rows)
        {
            for (var i = 0; i < row.Count; i++)
            {
                text.Append(i > 0 ? "," : "").Append(Quoted(row[i].IsNumber ? row[i].Written : Guarded(row[i].Written)));
            }

            text.Append('\n');
        }

        return text.ToString();
    }

    /// <summary>
    /// A text that begins like a formula gets an apostrophe in front, which spreadsheets take as "this is text";
    /// tab and carriage return count too, because some programs drop them before they look.
    /// </summary>
    public static string Guarded(string text) =>
        text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' ? "'" + text : text;

    /// <summary>A cell's text as it stands between two commas.</summary>
    public static string Quoted(string text) =>
        text.AsSpan().IndexOfAny("\",\r\n") >= 0 || text.StartsWith(' ') || text.EndsWith(' ')
            ? "\"" + text.Replace("\"", "\"\"", StringComparison.Ordinal) + "\""
            : text;
}
