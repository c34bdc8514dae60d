using System.Buffers;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>
/// GSOD (Global Surface Summary of the Day, NOAA) as CSV: °F, knots, inches; the day is that of UTC. Rain may include a part of the day before.
/// </summary>
internal static class GsodFormat
{
    private const double WindHeightM = 10;

    private static readonly SearchValues<char> StationSigns = SearchValues.Create("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ");

    private static readonly Column[] Columns =
    [
        new("TEMP", WeatherQuantity.AirTemperature, "°F", UnitKind.Temperature, 9999.9),
        new("MAX", WeatherQuantity.AirTemperatureMax, "°F", UnitKind.Temperature, 9999.9),
        new("MIN", WeatherQuantity.AirTemperatureMin, "°F", UnitKind.Temperature, 9999.9),
        new("DEWP", WeatherQuantity.DewPoint, "°F", UnitKind.Temperature, 9999.9),
        new("WDSP", WeatherQuantity.WindSpeed, "kn", UnitKind.Speed, 999.9),
        new("PRCP", WeatherQuantity.Rain, "in", UnitKind.Depth, 99.99),
    ];

    private static readonly HeaderedCsv Layout = new(
        ',', ["STATION", "DATE", .. Columns.Select(column => column.Name), "PRCP_ATTRIBUTES"], ["MAX_ATTRIBUTES", "MIN_ATTRIBUTES"]);

    public static readonly PublicFormat Format = new(
        "gsod", "Global Surface Summary of the Day (NOAA)", TimeSpan.FromDays(1), WindHeightM, [.. Columns.Select(column => column.Quantity).Order()], Layout.HasHeader, Read);

    private static void Read(LineReader lines, WeatherSource source, FormatRows rows)
    {
        var stations = new StationFilter(source, rows);
        Layout.Read(null, lines, rows, cells => Row(cells, stations, rows));
        stations.Finish();
    }

    private static void Row(NamedCells cells, StationFilter stations, FormatRows rows)
    {
        if (cells["STATION"].Length != 11 || cells["STATION"].ContainsAnyExcept(StationSigns))
        {
            rows.Refuse("rows without a station", cells.Line, cells.Column("STATION"), $"\"{Shown.Short(cells["STATION"])}\" is not a station's code of 11 digits or capitals", "The row is not used; get the file again");
        }
        else if (!stations.Takes(cells["STATION"], cells.Line))
        {
            // Another station's.
        }
        else if (!FormatText.TryDate(cells["DATE"], "yyyy-MM-dd", out var date) && !FormatText.TryDate(cells["DATE"], "MM/dd/yyyy", out date))
        {
            // The publisher's notes have the second form, its files the first.
            rows.Refuse("rows without a date", cells.Line, cells.Column("DATE"), $"\"{Shown.Short(cells["DATE"])}\" is not a date as 2026-06-01", "The row is not used; get the file again");
        }
        else
        {
            var row = new RowValues(rows.Clock);
            foreach (var column in Columns)
            {
                Value(row, column, cells, DayWindow.Utc(date, rows.Clock), rows);
            }

            rows.Row(row);
        }
    }

    private static void Value(RowValues row, Column column, NamedCells cells, DayWindow day, FormatRows rows)
    {
        var text = cells[column.Name];
        if (text.IsEmpty)
        {
            return;
        }

        if (!FormatText.TryDecimal(text, out var number) || !text.Contains('.'))
        {
            rows.SetAside(row, column.Name, cells.Line, cells.Column(column.Name), text, "is not a number with a decimal point", "Get the file again");
        }
        else if (number.Equals(column.Missing))
        {
            // Missing.
        }
        else if (number < 0 && column.Quantity is WeatherQuantity.Rain or WeatherQuantity.WindSpeed)
        {
            rows.SetAside(row, column.Name, cells.Line, cells.Column(column.Name), text, "is below 0", "Get the file again");
        }
        else if (column.Quantity == WeatherQuantity.Rain)
        {
            Rain(row, column, cells, number, day, rows);
        }
        else
        {
            row.Put(day, column.Quantity, column.ToMetric(number));
            if (column.Flag(cells) is ['*'])
            {
                row.Mark(day, column.Quantity, MarkKind.EstimatedAtSource, $"{text}*");
            }
        }
    }

    /// <summary>
    /// What the letter says of the amount, from memory: A to C one to three reports of 6 h, E one of 12 h: parts of a day. D four of 6 h, F two of 12 h,
    /// G one of 24 h: the whole. H nothing in the sum although there was rain, I nothing reported at all.
    /// </summary>
    private static void Rain(RowValues row, Column column, NamedCells cells, double inches, DayWindow day, FormatRows rows)
    {
        var flag = cells["PRCP_ATTRIBUTES"];
        var raw = $"{cells[column.Name]} {flag}";
        switch (flag)
        {
            case ['D' or 'F' or 'G']:
                row.Put(day, column.Quantity, column.ToMetric(inches));
                break;
            case ['A' or 'B' or 'C' or 'E' or 'H' or 'I']:
                row.Mark(day, column.Quantity, MarkKind.IncompleteAtSource, raw);
                break;
            default:
                rows.SetAside(row, column.Name, cells.Line, cells.Column("PRCP_ATTRIBUTES"), raw, "has no letter from A to I that says what it is a sum of", "Get the file again");
                break;
        }
    }

    private sealed record Column(string Name, WeatherQuantity Quantity, string UnitName, UnitKind Kind, double Missing)
    {
        private readonly Unit _unit = Units.Find(UnitName, Kind)!;

        public double ToMetric(double value) => _unit.ToMetric(value);

        /// <summary>The star of an extreme that is only the highest or lowest of the hours.</summary>
        public ReadOnlySpan<char> Flag(NamedCells cells) => Name is "MAX" or "MIN" ? cells[Name + "_ATTRIBUTES"] : [];
    }
}
