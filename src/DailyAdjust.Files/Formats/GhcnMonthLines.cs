using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>GHCN-Daily as .dly: a line is a month of one element, 31 values of fixed width with their flags. A row is a line.</summary>
internal static class GhcnMonthLines
{
    private const int Width = 269;
    private const int FirstValue = 21;
    private const int Days = 31;

    /// <summary>Whether a line is of this layout.</summary>
    public static bool IsLine(ReadOnlySpan<char> line) =>
        line.Length is > FirstValue and <= Width && GhcnElement.IsStation(line[..11]) && FormatText.IsDigits(line[11..17]) && GhcnElement.IsName(line[17..FirstValue]);

    /// <summary>Reads from this line on.</summary>
    public static void Read(ReadOnlySpan<char> first, LineReader lines, WeatherSource source, FormatRows rows)
    {
        var stations = new StationFilter(source, rows);
        var values = new GhcnValue(rows, source);
        var line = first;
        do
        {
            Row(line, lines.Number, stations, values, rows);
        }
        while (FormatText.TryNext(lines, rows, out line));
        stations.Finish();
    }

    private static void Row(ReadOnlySpan<char> line, int number, StationFilter stations, GhcnValue values, FormatRows rows)
    {
        if (line.Length < 11 || !GhcnElement.IsStation(line[..11]))
        {
            rows.Refuse("lines without a station", number, 1, "the line does not begin with a station's code of 11 letters and digits", "The row is not used; get the file again");
        }
        else if (Whole(line) is not { } whole)
        {
            rows.Refuse("lines of another length", number, Math.Min(line.Length, Width) + 1, FormattableString.Invariant($"the line has {line.Length} characters and needs {Width}"), "The row is not used: what stands where is not certain; get the file again");
        }
        else if (!stations.Takes(line[..11], number))
        {
            // Another station's: asked only of a whole line, because a damaged one may show a code that is none of the file's.
        }
        else if (!TryMonth(whole, out var month))
        {
            rows.Refuse("lines without a month", number, 12, $"\"{Shown.Short(whole.AsSpan(11, 6))}\" is not a year and month", "The row is not used; get the file again");
        }
        else if (!GhcnElement.IsName(whole.AsSpan(17, 4)))
        {
            rows.Refuse("lines without an element", number, 18, $"\"{Shown.Short(whole.AsSpan(17, 4))}\" is not the name of an element", "The row is not used; get the file again");
        }
        else
        {
            rows.Row(Values(whole, number, month, values, rows));
        }
    }

    private static RowValues Values(ReadOnlySpan<char> line, int number, DateOnly month, GhcnValue values, FormatRows rows)
    {
        var row = new RowValues(rows.Clock);
        var name = line[17..FirstValue].ToString();
        var length = DateTime.DaysInMonth(month.Year, month.Month);
        for (var day = 0; day < Days; day++)
        {
            var at = FirstValue + (8 * day);
            var text = line.Slice(at, 5);
            if (day < length)
            {
                // Numbers stand at the right end of their five characters: one that does not is half of another.
                values.Take(row, name, month.AddDays(day), text.TrimStart(' '), (line[at + 5], line[at + 6], line[at + 7]), null, number, at + 1);
            }
            else if (!text.SequenceEqual("-9999") && GhcnElement.Find(name) is not null)
            {
                rows.SetAside(row, name, number, at + 1, text, "stands on a day that the month does not have", "Every day after the month's end has -9999; get the file again");
            }
        }

        return row;
    }

    /// <summary>Blanks that were cut off the end are put back, where they are sure to be blanks: a missing value has no flags.</summary>
    private static string? Whole(ReadOnlySpan<char> line) => line.Length switch
    {
        Width => line.ToString(),
        >= Width - 3 and < Width when line.Slice(Width - 8, 5).SequenceEqual("-9999") => line.ToString().PadRight(Width),
        _ => null,
    };

    private static bool TryMonth(ReadOnlySpan<char> line, out DateOnly month) =>
        FormatText.TryDate(string.Concat(line[11..17], "01"), "yyyyMMdd", out month);
}
