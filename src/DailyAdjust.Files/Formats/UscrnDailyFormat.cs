using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>
/// USCRN daily01 (U.S. Climate Reference Network, NOAA): 28 cells parted by blanks, the day in local standard time. It has radiation and humidity, and no wind.
/// </summary>
internal static class UscrnDailyFormat
{
    private const int Cells = 28;
    private const int Station = 0;
    private const int Date = 1;

    /// <summary>The last character of every column, from 1, as the publisher's description has them.</summary>
    private static readonly int[] Ends =
        [5, 14, 21, 29, 37, 45, 53, 61, 69, 77, 86, 88, 96, 104, 112, 120, 128, 136, 144, 152, 160, 168, 176, 184, 192, 200, 208, 216];

    /// <summary>Cells from 0 and the decimals that each is written with. Missing: -9999 with those decimals.</summary>
    private static readonly (string Name, int Cell, int Decimals, WeatherQuantity Quantity, double Least)[] Columns =
    [
        ("T_DAILY_MAX", 5, 1, WeatherQuantity.AirTemperatureMax, -273),
        ("T_DAILY_MIN", 6, 1, WeatherQuantity.AirTemperatureMin, -273),
        ("T_DAILY_AVG", 8, 1, WeatherQuantity.AirTemperature, -273),
        ("P_DAILY_CALC", 9, 1, WeatherQuantity.Rain, 0),
        ("SOLARAD_DAILY", 10, 2, WeatherQuantity.SolarRadiation, 0),
        ("RH_DAILY_MAX", 15, 1, WeatherQuantity.RelativeHumidityMax, 0),
        ("RH_DAILY_MIN", 16, 1, WeatherQuantity.RelativeHumidityMin, 0),
        ("RH_DAILY_AVG", 17, 1, WeatherQuantity.RelativeHumidity, 0),
    ];

    public static readonly PublicFormat Format = new(
        "uscrn-daily", "U.S. Climate Reference Network daily01 (NOAA)", TimeSpan.FromDays(1), 2, [.. Columns.Select(column => column.Quantity).Order()], Recognises, Read);

    private static bool Recognises(IReadOnlyList<string> first)
    {
        var cells = new BlankCells(Cells);
        return first.Any(line =>
        {
            cells.Split(line);
            return cells.Count == Cells && IsStation(cells[Station]) && FormatText.TryDate(cells[Date], "yyyyMMdd", out _);
        });
    }

    private static void Read(LineReader lines, WeatherSource source, FormatRows rows)
    {
        var stations = new StationFilter(source, rows);
        var cells = new BlankCells(Cells);
        while (FormatText.TryNext(lines, rows, out var line))
        {
            cells.Split(line);
            if (cells.Count != Cells)
            {
                rows.Refuse("rows of another width", lines.Number, cells.Column(Math.Min(cells.Count, Cells)), FormattableString.Invariant($"the row has {(cells.Count < Cells ? cells.Count : "more than " + Cells)} cells and needs {Cells}"), "The row is not used; get the file again");
            }
            else if (cells.FirstOutOfColumn(Ends) is >= 0 and var off)
            {
                rows.Refuse("rows out of their columns", lines.Number, cells.Column(off), FormattableString.Invariant($"the cell \"{Shown.Short(cells[off])}\" does not end in column {Ends[off]}"), "The row is not used; get the file again, as it was published");
            }
            else if (!IsStation(cells[Station]))
            {
                rows.Refuse("rows without a station", lines.Number, 1, $"\"{Shown.Short(cells[Station])}\" is not a station's number of five digits", "The row is not used; get the file again");
            }
            else if (!stations.Takes(cells[Station], lines.Number))
            {
                // Another station's.
            }
            else if (!FormatText.TryDate(cells[Date], "yyyyMMdd", out var date))
            {
                rows.Refuse("rows without a date", lines.Number, cells.Column(Date), $"\"{Shown.Short(cells[Date])}\" is not a date as 20260601", "The row is not used; get the file again");
            }
            else
            {
                rows.Row(Values(cells, DayWindow.Standard(date, rows.Clock), lines.Number, rows));
            }
        }

        stations.Finish();
    }

    private static RowValues Values(BlankCells cells, DayWindow day, int line, FormatRows rows)
    {
        var row = new RowValues(rows.Clock);
        foreach (var (name, cell, decimals, quantity, least) in Columns)
        {
            var text = cells[cell];
            if (!FormatText.TryDecimal(text, out var number) || CellNumber.Decimals(text, decimalComma: false) != decimals)
            {
                rows.SetAside(row, name, line, cells.Column(cell), text, FormattableString.Invariant($"is not a number with {decimals} decimals"), "Get the file again");
            }
            else if (number.Equals(-9999))
            {
                // Missing.
            }
            else if (number < least)
            {
                rows.SetAside(row, name, line, cells.Column(cell), text, "is below what it can be", "Get the file again");
            }
            else
            {
                row.Put(day, quantity, number);
            }
        }

        return row;
    }

    private static bool IsStation(ReadOnlySpan<char> code) => code.Length == 5 && FormatText.IsDigits(code);
}
