using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>
/// ISD-Lite (Integrated Surface Data, NOAA): a row is an hour in UTC, twelve whole numbers parted by blanks. Observations are made at the hour and are
/// taken for the hour that ends then; rain is that of the hour before. A file is one station's: its rows name none.
/// </summary>
internal static class IsdLiteFormat
{
    private const int Cells = 12;
    private const int Width = 61;
    private const int Missing = -9999;
    private const int Trace = -1;
    private const int Rain = 10;
    private const int RainOfSixHours = 11;
    private const int SixHoursColumn = 56;
    private const double WindHeightM = 10;

    public static readonly PublicFormat Format = new(
        "isd-lite",
        "ISD-Lite (NOAA), hourly",
        TimeSpan.FromHours(1),
        WindHeightM,
        [WeatherQuantity.AirTemperature, WeatherQuantity.DewPoint, WeatherQuantity.WindSpeed, WeatherQuantity.Rain],
        Recognises,
        Read);

    /// <summary>The last character of every column, from 1.</summary>
    private static readonly int[] Ends = [4, 7, 10, 13, 19, 25, 31, 37, 43, 49, 55, 61];

    /// <summary>Cells from 0; numbers are tenths of °C, m/s and mm.</summary>
    private static readonly (string Name, int Cell, WeatherQuantity Quantity)[] Columns =
    [
        ("air temperature", 4, WeatherQuantity.AirTemperature),
        ("dew point", 5, WeatherQuantity.DewPoint),
        ("wind speed", 8, WeatherQuantity.WindSpeed),
        ("rain of one hour", Rain, WeatherQuantity.Rain),
    ];

    private static bool Recognises(IReadOnlyList<string> first)
    {
        var cells = new BlankCells(Cells);
        return first.Any(line =>
        {
            cells.Split(line);
            return cells.Count == Cells && TryHour(cells, out _);
        });
    }

    private static void Read(LineReader lines, WeatherSource source, FormatRows rows)
    {
        var cells = new BlankCells(Cells);
        var (sixHours, firstSixHours) = (0, 0);
        while (FormatText.TryNext(lines, rows, out var line))
        {
            cells.Split(line);
            if (cells.Count != Cells)
            {
                rows.Refuse("rows of another width", lines.Number, cells.Column(Math.Min(cells.Count, Cells)), FormattableString.Invariant($"the row has {(cells.Count < Cells ? cells.Count : "more than " + Cells)} numbers and needs {Cells}"), "The row is not used; get the file again");
            }
            else if (lines.Number == lines.OpenLine && line.Length < Width)
            {
                rows.Refuse("rows that are cut", lines.Number, line.Length + 1, "the file ends in the middle of this line", "The row is not used; drop the file again when it is complete");
            }
            else if (cells.FirstOutOfColumn(Ends) is >= 0 and var off)
            {
                rows.Refuse("rows out of their columns", lines.Number, cells.Column(off), FormattableString.Invariant($"the number \"{Shown.Short(cells[off])}\" does not end in column {Ends[off]}"), "The row is not used; get the file again, as it was published");
            }
            else if (!TryHour(cells, out var hour))
            {
                rows.Refuse("rows without a time", lines.Number, 1, $"\"{Shown.Short(line[..Math.Min(line.Length, 13)])}\" is not a year, month, day and hour", "The row is not used; get the file again");
            }
            else
            {
                rows.Row(Values(cells, hour, lines.Number, rows));
                if (cells[Rain].SequenceEqual("-9999") && !cells[RainOfSixHours].SequenceEqual("-9999"))
                {
                    (sixHours, firstSixHours) = (sixHours + 1, firstSixHours == 0 ? lines.Number : firstSixHours);
                }
            }
        }

        if (sixHours > 0)
        {
            rows.Tell("rain of six hours", firstSixHours, SixHoursColumn, FormattableString.Invariant($"{sixHours} rows have rain of six hours and none of their hour; it is not used"), "Which of the hours it fell in is not known; name another gauge for the rain");
        }
    }

    private static RowValues Values(BlankCells cells, DateTimeOffset hour, int line, FormatRows rows)
    {
        var row = new RowValues(rows.Clock);
        foreach (var (name, cell, quantity) in Columns)
        {
            var begin = hour.AddHours(-1);
            if (!FormatText.TryWhole(cells[cell], out var number) || cells[cell].Length > 5)
            {
                rows.SetAside(row, name, line, cells.Column(cell), cells[cell], "is not a whole number of at most five characters", "Get the file again");
            }
            else if (number == Trace && quantity == WeatherQuantity.Rain)
            {
                row.Put(begin, hour - begin, quantity, 0);
                row.Mark(begin, hour - begin, quantity, MarkKind.Trace, "-1");
            }
            else if (number < 0 && number != Missing && quantity is WeatherQuantity.Rain or WeatherQuantity.WindSpeed)
            {
                rows.SetAside(row, name, line, cells.Column(cell), cells[cell], "is below 0", "Get the file again");
            }
            else if (number != Missing)
            {
                row.Put(begin, hour - begin, quantity, number / 10.0);
            }
        }

        return row;
    }

    private static bool TryHour(BlankCells cells, out DateTimeOffset hour)
    {
        hour = default;
        if (cells[0].Length != 4 || cells[1].Length != 2 || cells[2].Length != 2 || cells[3].Length != 2
            || !FormatText.TryDate(string.Concat(cells[0], cells[1], cells[2]), "yyyyMMdd", out var date)
            || !FormatText.TryWhole(cells[3], out var of) || of is < 0 or > 23)
        {
            return false;
        }

        hour = new DateTimeOffset(date.ToDateTime(new TimeOnly(of, 0)), TimeSpan.Zero);
        return true;
    }
}
