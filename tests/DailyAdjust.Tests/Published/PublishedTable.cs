using System.Globalization;
using System.Text;

namespace DailyAdjust.Tests.Published;

/// <summary>A table of Published/, comma separated, with quoted cells; lines that begin with # are its source.</summary>
internal static class PublishedTable
{
    /// <summary>The rows after the header.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Rows(params string[] path) =>
        [.. File.ReadLines(Path.Combine([AppContext.BaseDirectory, "Published", .. path]))
            .Where(line => line.Length > 0 && line[0] != '#')
            .Skip(1)
            .Select(Cells)];

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static List<string> Cells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add(cell.ToString());
        return cells;
    }
}
