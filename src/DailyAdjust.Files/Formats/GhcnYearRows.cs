using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>GHCN-Daily by year: CSV of eight cells without a header, a row is one value of one station and day.</summary>
internal static class GhcnYearRows
{
    private const int Cells = 8;
    private const int TimeCell = 7;

    /// <summary>Whether a line is a row, or the header that some copies have.</summary>
    public static bool IsLine(ReadOnlySpan<char> line)
    {
        var cells = new CsvCells(',');
        return cells.TrySplit(line) && cells.Count == Cells
            && (IsHeader(cells) || (GhcnElement.IsStation(cells[0]) && FormatText.IsDigits(cells[1]) && GhcnElement.IsName(cells[2])));
    }

    /// <summary>Reads from this line on.</summary>
    public static void Read(ReadOnlySpan<char> first, LineReader lines, WeatherSource source, FormatRows rows)
    {
        var stations = new StationFilter(source, rows);
        var values = new GhcnValue(rows, source);
        var cells = new CsvCells(',');
        var line = first;
        do
        {
            // A year of the whole world has millions of rows: those of other stations are not split.
            var code = line[..Math.Max(0, line.IndexOf(','))];
            if (!GhcnElement.IsStation(code) || stations.Takes(code, lines.Number))
            {
                Row(cells, line, lines, source.ObservedAt is null, values, rows);
            }
        }
        while (FormatText.TryNext(lines, rows, out line));
        stations.Finish();
    }

    private static void Row(CsvCells cells, ReadOnlySpan<char> line, LineReader lines, bool needsTime, GhcnValue values, FormatRows rows)
    {
        if (!cells.TrySplit(line) || cells.Count != Cells)
        {
            rows.Refuse("rows of another width", lines.Number, Math.Clamp(cells.Count, 1, Cells + 1), FormattableString.Invariant($"the row has {cells.Count} cells and needs {Cells}"), "The row is not used; get the file again");
        }
        else if (IsHeader(cells))
        {
            // Copies are put one behind the other, each with its header.
        }
        else if (!GhcnElement.IsStation(cells[0]))
        {
            rows.Refuse("rows without a station", lines.Number, 1, $"\"{Shown.Short(cells[0])}\" is not a station's code of 11 letters and digits", "The row is not used; get the file again");
        }
        else if (!FormatText.TryDate(cells[1], "yyyyMMdd", out var date))
        {
            rows.Refuse("rows without a date", lines.Number, 2, $"\"{Shown.Short(cells[1])}\" is not a date as 20260601", "The row is not used; get the file again");
        }
        else if (!GhcnElement.IsName(cells[2]))
        {
            rows.Refuse("rows without an element", lines.Number, 3, $"\"{Shown.Short(cells[2])}\" is not the name of an element", "The row is not used; get the file again");
        }
        else if (lines.Number == lines.OpenLine && cells[TimeCell].Length < 4)
        {
            rows.Refuse("rows that are cut", lines.Number, Cells, "the row may be cut: the file ends without ending this line", "The row is not used; drop the file again when it is complete");
        }
        else if (!GhcnTime.TryRead(cells[TimeCell], out var time) && needsTime && GhcnElement.Find(cells[2]) is not null)
        {
            rows.Refuse("rows without a time of observation", lines.Number, Cells, GhcnTime.What(cells[TimeCell]), GhcnTime.Hint);
        }
        else
        {
            var row = new RowValues(rows.Clock);
            values.Take(row, cells[2].ToString(), date, cells[3], (Flag(cells[4]), Flag(cells[5]), Flag(cells[6])), time, lines.Number, 4);
            rows.Row(row);
        }
    }

    private static bool IsHeader(CsvCells cells) =>
        cells[0].Equals("ID", StringComparison.OrdinalIgnoreCase) && cells[2].Equals("ELEMENT", StringComparison.OrdinalIgnoreCase);

    /// <summary>A blank where there is none; what is longer is no flag, which a question mark is neither.</summary>
    private static char Flag(ReadOnlySpan<char> cell) => cell.Length switch
    {
        0 => ' ',
        1 => cell[0],
        _ => '?',
    };
}
