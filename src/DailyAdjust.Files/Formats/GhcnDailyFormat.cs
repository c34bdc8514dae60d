using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>
/// GHCN-Daily (Global Historical Climatology Network, NOAA) in its three layouts, told apart by their first line: .dly, CSV by year, CSV per station.
/// A day is as its observer reads it.
/// </summary>
internal static class GhcnDailyFormat
{
    /// <summary>Airports measure wind at 10 m, common practice.</summary>
    private const double WindHeightM = 10;

    public static readonly PublicFormat Format = new(
        "ghcn-daily", "GHCN-Daily (NOAA): .dly, CSV by year, CSV per station", TimeSpan.FromDays(1), WindHeightM, GhcnElement.Quantities, Recognises, Read);

    private static bool Recognises(IReadOnlyList<string> first) =>
        first.Any(line => IsAny(line));

    private static void Read(LineReader lines, WeatherSource source, FormatRows rows)
    {
        if (!FormatText.TryNext(lines, rows, out var line))
        {
            return;
        }

        // A damaged first line must not cost the file: the layout is that of the first line which has one.
        for (var skipped = 0; !IsAny(line); skipped++)
        {
            rows.Refuse("lines above the first that is of the format", lines.Number, 1, "the line is none of GHCN-Daily", "The row is not used");
            if (skipped == 20 || !FormatText.TryNext(lines, rows, out line))
            {
                rows.RefuseFile(1, 1, "the file is not GHCN-Daily: neither .dly, nor CSV by year, nor CSV per station with its flags", "Get it from the publisher as it is, or use format: csv with a column map");
                return;
            }
        }

        if (GhcnMonthLines.IsLine(line))
        {
            GhcnMonthLines.Read(line, lines, source, rows);
        }
        else if (GhcnYearRows.IsLine(line))
        {
            GhcnYearRows.Read(line, lines, source, rows);
        }
        else
        {
            GhcnAccessRows.Read(line.ToString(), lines, source, rows);
        }
    }

    private static bool IsAny(ReadOnlySpan<char> line) =>
        GhcnMonthLines.IsLine(line) || GhcnYearRows.IsLine(line) || GhcnAccessRows.IsHeader(line.ToString());
}
