using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>
/// Deutscher Wetterdienst, daily climate data (KL), produkt_klima_tag_*: cells parted by semicolons and padded, -999 for missing, eor at the end of each row.
/// Rain runs from 06 h UTC of its date to 06 h UTC of the next; the rest is taken for the site's calendar day.
/// </summary>
internal static class DwdDailyFormat
{
    private const double Missing = -999;
    private const double WindHeightM = 10;

    private static readonly (string Name, WeatherQuantity Quantity, double Least)[] Columns =
    [
        ("TMK", WeatherQuantity.AirTemperature, -273),
        ("TXK", WeatherQuantity.AirTemperatureMax, -273),
        ("TNK", WeatherQuantity.AirTemperatureMin, -273),
        ("UPM", WeatherQuantity.RelativeHumidity, 0),
        ("FM", WeatherQuantity.WindSpeed, 0),
        ("SDK", WeatherQuantity.Sunshine, 0),
        ("RSK", WeatherQuantity.Rain, 0),
    ];

    private static readonly HeaderedCsv Layout = new(';', ["STATIONS_ID", "MESS_DATUM", .. Columns.Select(column => column.Name), "eor"], []);

    public static readonly PublicFormat Format = new(
        "dwd-daily", "Deutscher Wetterdienst, daily climate data (KL)", TimeSpan.FromDays(1), WindHeightM, [.. Columns.Select(column => column.Quantity).Order()], Layout.HasHeader, Read);

    private static void Read(LineReader lines, WeatherSource source, FormatRows rows)
    {
        var stations = new StationFilter(source, rows);
        Layout.Read(null, lines, rows, cells => Row(cells, stations, rows));
        stations.Finish();
    }

    private static void Row(NamedCells cells, StationFilter stations, FormatRows rows)
    {
        if (!FormatText.IsDigits(cells["STATIONS_ID"]) || !cells["eor"].SequenceEqual("eor"))
        {
            rows.Refuse("rows without a station or end", cells.Line, cells.Column("STATIONS_ID"), $"the row does not begin with a station's number and end with eor: \"{Shown.Short(cells["STATIONS_ID"])}\", \"{Shown.Short(cells["eor"])}\"", "The row is not used; get the file again");
        }
        else if (!stations.Takes(cells["STATIONS_ID"], cells.Line))
        {
            // Another station's.
        }
        else if (!FormatText.TryDate(cells["MESS_DATUM"], "yyyyMMdd", out var date))
        {
            rows.Refuse("rows without a date", cells.Line, cells.Column("MESS_DATUM"), $"\"{Shown.Short(cells["MESS_DATUM"])}\" is not a date as 20260601", "The row is not used; get the file again");
        }
        else
        {
            rows.Row(Values(cells, date, rows));
        }
    }

    private static RowValues Values(NamedCells cells, DateOnly date, FormatRows rows)
    {
        var row = new RowValues(rows.Clock);
        foreach (var (name, quantity, least) in Columns)
        {
            var text = cells[name];
            if (!FormatText.TryDecimal(text, out var number))
            {
                rows.SetAside(row, name, cells.Line, cells.Column(name), text, "is not a number with a decimal point", "Missing values are -999; get the file again");
            }
            else if (number.Equals(Missing))
            {
                // Missing.
            }
            else if (number < least)
            {
                rows.SetAside(row, name, cells.Line, cells.Column(name), text, "is below what it can be", "Get the file again");
            }
            else
            {
                row.Put(quantity == WeatherQuantity.Rain ? DayWindow.FromSixUtc(date, rows.Clock) : new DayWindow(date), quantity, number);
            }
        }

        return row;
    }
}
