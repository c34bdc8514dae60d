using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>GHCN-Daily per station as CSV: a header, a row is a day, each element with its flags in a column beside it: "M,Q,S,time" (from memory).</summary>
internal static class GhcnAccessRows
{
    private const string Flags = "_ATTRIBUTES";

    private static readonly HeaderedCsv Layout = new(',', ["STATION", "DATE"], [.. GhcnElement.Names, .. GhcnElement.Names.Select(name => name + Flags)]);

    /// <summary>Whether a line is the header: any element has its flags beside it, and none of them is the mean that another format of the publisher has.</summary>
    public static bool IsHeader(string line) =>
        Layout.HasHeader([line]) && line.Contains(Flags, StringComparison.OrdinalIgnoreCase) && !line.Contains("TEMP" + Flags, StringComparison.OrdinalIgnoreCase);

    /// <summary>Reads from the header on.</summary>
    public static void Read(string header, LineReader lines, WeatherSource source, FormatRows rows)
    {
        var stations = new StationFilter(source, rows);
        var values = new GhcnValue(rows, source);
        Layout.Read(header, lines, rows, cells => Row(cells, stations, source.ObservedAt is null, values, rows));
        stations.Finish();
    }

    private static void Row(NamedCells cells, StationFilter stations, bool needsTime, GhcnValue values, FormatRows rows)
    {
        if (!GhcnElement.IsStation(cells["STATION"]))
        {
            rows.Refuse("rows without a station", cells.Line, cells.Column("STATION"), $"\"{Shown.Short(cells["STATION"])}\" is not a station's code of 11 letters and digits", "The row is not used; get the file again");
        }
        else if (!stations.Takes(cells["STATION"], cells.Line))
        {
            // Another station's.
        }
        else if (!FormatText.TryDate(cells["DATE"], "yyyy-MM-dd", out var date))
        {
            rows.Refuse("rows without a date", cells.Line, cells.Column("DATE"), $"\"{Shown.Short(cells["DATE"])}\" is not a date as 2026-06-01", "The row is not used; get the file again");
        }
        else
        {
            var row = new RowValues(rows.Clock);
            foreach (var name in GhcnElement.Names)
            {
                Value(row, name, cells, date, needsTime, values, rows);
            }

            rows.Row(row);
        }
    }

    private static void Value(RowValues row, string name, NamedCells cells, DateOnly date, bool needsTime, GhcnValue values, FormatRows rows)
    {
        var text = cells[name];
        if (text.IsEmpty)
        {
            return;
        }

        var flags = cells[name + Flags];
        if (!TrySplit(flags, out var parted, out var time))
        {
            rows.SetAside(row, name, cells.Line, cells.Column(cells.Has(name + Flags) ? name + Flags : name), flags, "are not its flags as \",,W,2400\"", "Without them it is not known whether the value passed its checks; get the file again");
        }
        else if (!GhcnTime.TryRead(time, out var observedAt) && needsTime)
        {
            rows.SetAside(row, name, cells.Line, cells.Column(name + Flags), time, "is not a time of observation as 0700, or may be either end of the date", "observed_at: in the site says it for the whole station");
        }
        else
        {
            values.Take(row, name, date, text, parted, observedAt, cells.Line, cells.Column(name));
        }
    }

    /// <summary>Three flags, each a character or none, and perhaps a time.</summary>
    private static bool TrySplit(ReadOnlySpan<char> text, out (char M, char Q, char S) flags, out ReadOnlySpan<char> time)
    {
        flags = (' ', ' ', ' ');
        time = [];
        Span<Range> parts = stackalloc Range[5];
        var count = text.Split(parts, ',');
        if (count is < 3 or > 4 || !TryFlag(text[parts[0]], out flags.M) || !TryFlag(text[parts[1]], out flags.Q) || !TryFlag(text[parts[2]], out flags.S))
        {
            return false;
        }

        time = count == 4 ? text[parts[3]].Trim() : [];
        return true;
    }

    private static bool TryFlag(ReadOnlySpan<char> text, out char flag)
    {
        text = text.Trim();
        flag = text.IsEmpty ? ' ' : text[0];
        return text.Length <= 1;
    }
}
