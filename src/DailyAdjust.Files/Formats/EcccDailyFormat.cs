using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>
/// Environment and Climate Change Canada, daily CSV: with a block of the station's particulars above the header (older files) or without (newer ones).
/// The day is the climatological day of the station, which the file does not say; it is taken for the site's calendar day unless the site names a time of observation.
/// </summary>
internal static class EcccDailyFormat
{
    private static readonly (string Name, string Flag, WeatherQuantity Quantity)[] Columns =
    [
        ("Mean Temp (°C)", "Mean Temp Flag", WeatherQuantity.AirTemperature),
        ("Max Temp (°C)", "Max Temp Flag", WeatherQuantity.AirTemperatureMax),
        ("Min Temp (°C)", "Min Temp Flag", WeatherQuantity.AirTemperatureMin),
        ("Total Precip (mm)", "Total Precip Flag", WeatherQuantity.Rain),
    ];

    private static readonly HeaderedCsv Layout = new(
        ',', ["Date/Time", "Year", "Month", "Day", .. Columns.Select(column => column.Name), .. Columns.Select(column => column.Flag)], ["Climate ID"]);

    public static readonly PublicFormat Format = new(
        "eccc-daily",
        "Environment and Climate Change Canada, daily",
        TimeSpan.FromDays(1),
        10,
        [.. Columns.Select(column => column.Quantity)],
        first => Layout.HasHeader(first) || first.Any(line => line.StartsWith("\"Climate Identifier\"", StringComparison.OrdinalIgnoreCase)),
        Read);

    private static void Read(LineReader lines, WeatherSource source, FormatRows rows)
    {
        var stations = new StationFilter(source, rows);
        Layout.Read(null, lines, rows, cells => Row(cells, stations, source, rows));
        stations.Finish();
    }

    private static void Row(NamedCells cells, StationFilter stations, WeatherSource source, FormatRows rows)
    {
        if (cells.Has("Climate ID") && !IsStation(cells["Climate ID"]))
        {
            rows.Refuse("rows without a station", cells.Line, cells.Column("Climate ID"), $"\"{Shown.Short(cells["Climate ID"])}\" is not a station's code of seven letters or digits", "The row is not used; get the file again");
        }
        else if (cells.Has("Climate ID") && !stations.Takes(cells["Climate ID"], cells.Line))
        {
            // Another station's.
        }
        else if (!FormatText.TryDate(cells["Date/Time"], "yyyy-MM-dd", out var date) || !IsDate(cells, date))
        {
            rows.Refuse("rows without a date", cells.Line, cells.Column("Date/Time"), $"\"{Shown.Short(cells["Date/Time"])}\" is not a date as 2026-06-01, or not that of its year, month and day", "The row is not used; get the file again");
        }
        else
        {
            var row = new RowValues(rows.Clock);
            var day = source.ObservedAt is { } at ? DayWindow.EndingAt(date, at) : new DayWindow(date);
            foreach (var (name, flag, quantity) in Columns)
            {
                Value(row, name, flag, quantity, cells, day, rows);
            }

            rows.Row(row);
        }
    }

    /// <summary>The publisher's legend; what it calls uncertain of rain (C it rained, L it may have) is a number of 0 that means none.</summary>
    private static void Value(RowValues row, string name, string flagName, WeatherQuantity quantity, NamedCells cells, DayWindow day, FormatRows rows)
    {
        var (text, flag) = (cells[name].ToString(), cells[flagName].ToString());
        var raw = $"{text} {flag}".Trim();
        if (text.Length == 0 && !string.Equals(flag, "T", StringComparison.Ordinal))
        {
            if (flag is "A" or "F" && quantity == WeatherQuantity.Rain)
            {
                row.Mark(day, quantity, MarkKind.SeveralDays, raw);
            }

            return;
        }

        var number = 0.0;
        if (text.Length > 0 && (!FormatText.TryDecimal(text, out number) || CellNumber.Decimals(text, decimalComma: false) != 1))
        {
            rows.SetAside(row, name, cells.Line, cells.Column(name), text, "is not a number with one decimal", "Get the file again");
            return;
        }

        var isRain = quantity == WeatherQuantity.Rain;
        switch (flag)
        {
            case "" when number >= 0 || !isRain:
                row.Put(day, quantity, number);
                break;
            case "E" when number >= 0 || !isRain:
                row.Put(day, quantity, number);
                row.Mark(day, quantity, MarkKind.EstimatedAtSource, raw);
                break;
            case "T" when isRain && number.Equals(0):
                row.Put(day, quantity, 0);
                row.Mark(day, quantity, MarkKind.Trace, raw);
                break;
            case "A" or "F" when isRain:
                row.Mark(day, quantity, MarkKind.SeveralDays, raw);
                break;
            case "C" or "L" or "M" or "^" or "N" or "Y":
                row.Mark(day, quantity, MarkKind.IncompleteAtSource, raw);
                break;
            default:
                rows.SetAside(row, name, cells.Line, cells.Column(name), raw, "cannot be: number and flag do not go together", "See the publisher's legend; get the file again");
                break;
        }
    }

    private static bool IsDate(NamedCells cells, DateOnly date) =>
        FormatText.TryWhole(cells["Year"], out var year) && FormatText.TryWhole(cells["Month"], out var month) && FormatText.TryWhole(cells["Day"], out var day)
        && (year, month, day) == (date.Year, date.Month, date.Day);

    private static bool IsStation(ReadOnlySpan<char> code)
    {
        foreach (var c in code)
        {
            if (!char.IsAsciiLetterUpper(c) && !char.IsAsciiDigit(c))
            {
                return false;
            }
        }

        return code.Length == 7;
    }
}
