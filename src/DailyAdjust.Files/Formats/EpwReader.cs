using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>
/// Reads EPW (weather of a typical year for simulating buildings): eight lines of header, then 8760 rows of CSV, hour 1 being 00:00 to 01:00 of the place's standard time.
/// A value at or above its column's mark for missing is missing.
/// </summary>
public static class EpwReader
{
    /// <summary>Where the format has its wind, m (from memory).</summary>
    public const double WindHeightM = 10;

    private const int HeaderLines = 8;

    /// <summary>Two years of hours and more: what is longer is no typical year.</summary>
    private const int MostRows = 20_000;
    private const int FewestCells = 34;
    private const int MostCells = 35;
    private const int RainHours = 34;

    /// <summary>Before it stand the time and a text of marks.</summary>
    private const int FirstNumber = 6;

    /// <summary>Cells from 0, with the lowest value that can be and the mark for missing. Radiation in Wh/m² of the hour.</summary>
    private static readonly (string Name, int Cell, WeatherQuantity Quantity, double Least, double Missing, double Factor)[] Columns =
    [
        ("dry bulb", 6, WeatherQuantity.AirTemperature, -99, 99.9, 1),
        ("dew point", 7, WeatherQuantity.DewPoint, -99, 99.9, 1),
        ("relative humidity", 8, WeatherQuantity.RelativeHumidity, 0, 999, 1),
        ("global horizontal radiation", 13, WeatherQuantity.SolarRadiation, 0, 9999, 0.0036),
        ("wind speed", 21, WeatherQuantity.WindSpeed, 0, 999, 1),
        ("liquid rain", 33, WeatherQuantity.Rain, 0, 999, 1),
    ];

    /// <summary>Reads a whole file, compressed or not; nothing in it makes this throw.</summary>
    /// <param name="file">Its name, for the problems.</param>
    /// <param name="stream">Its bytes, from its position on; can seek, is left open.</param>
    /// <exception cref="IOException">The bytes could not be read.</exception>
    public static EpwFile Read(string file, Stream stream) => Unpacked.Read(
        file,
        stream,
        lines => lines.TryRead(out var line) && TryPlace(line, out _),
        text => ReadText(file, text),
        problem => Refused(file, problem));

    private static EpwFile ReadText(string file, Stream stream)
    {
        var text = new DecodedText(stream);
        if (text.NotText is { } why)
        {
            return Refused(file, new Problem(file, 1, 1, why, "Nothing was read from it"));
        }

        var lines = new LineReader(text);
        if (!lines.TryRead(out var first) || !TryPlace(first, out var place))
        {
            return Refused(file, new Problem(file, 1, 1, "the first line is not LOCATION with latitude, longitude, hours from UTC and elevation in cells 7 to 10", "Is it an EPW file?"));
        }

        while (lines.Number < HeaderLines && lines.TryRead(out _))
        {
        }

        var days = new List<ReadingDay>();
        var clock = new SiteClock(place.StandardTime());
        var rows = new FormatRows(file, clock, days.Add);
        var cells = new CsvCells(',');
        List<(string Text, int Number)> hours = [];
        var (wide, narrow) = (0, 0);
        while (FormatText.TryNext(lines, rows, out var line))
        {
            if (hours.Count == MostRows)
            {
                return Refused(file, new Problem(file, lines.Number, 1, FormattableString.Invariant($"there are more than {MostRows} rows, and a year of hours has 8760"), "Is it one typical year?"));
            }

            hours.Add((line.ToString(), lines.Number));
            var count = cells.TrySplit(line) ? cells.Count : 0;
            (wide, narrow) = (wide + (count == MostCells ? 1 : 0), narrow + (count == FewestCells ? 1 : 0));
        }

        // A row that lost a comma, or has one too many, may still have a width that the format allows, with every value one cell off: all rows have one width.
        var width = wide >= narrow ? MostCells : FewestCells;
        foreach (var (row, number) in hours)
        {
            Row(cells, row, number, width, number == lines.OpenLine, rows);
        }

        // The last days are handed out at the end.
        var report = rows.Finish();
        return new EpwFile { Place = place, Readings = ReadingMerge.Merge(days.Select(day => day.Readings)), Report = report };
    }

    private static void Row(CsvCells cells, ReadOnlySpan<char> line, int number, int width, bool open, FormatRows rows)
    {
        if (!cells.TrySplit(line) || cells.Count != width)
        {
            rows.Refuse("rows of another width", number, Math.Clamp(cells.Count, 1, width), FormattableString.Invariant($"the row has {cells.Count} cells and needs {width}"), "The row is not used; get the file again");
        }
        else if (!TryHour(cells, rows.Clock, out var begin))
        {
            rows.Refuse("rows without a time", number, 1, $"\"{Shown.Short(string.Join(',', cells.ToArray().Take(4)))}\" is not a year, month, day and hour from 1 to 24 of a year without 29 February", "The row is not used");
        }
        else if (Uncertain(cells) is { } column)
        {
            rows.Refuse("rows whose columns are not certain", number, column + 1, $"\"{Shown.Short(cells[column])}\" is no number: which value is in which column is not certain", "The row is not used; get the file again");
        }
        else
        {
            rows.Row(Values(cells, begin, number, open, rows));
        }
    }

    /// <summary>A cell that is not looked at and is no number, or one that looks like two: the cells beside it may have moved. Null = there is none.</summary>
    private static int? Uncertain(CsvCells cells)
    {
        for (var i = FirstNumber; i < cells.Count; i++)
        {
            var isUsed = Columns.Any(column => column.Cell == i);
            if (cells[i].Length > 0 && !FormatText.TryDecimal(cells[i], out _) && (!isUsed || CellNumber.LooksLikeTwo(cells[i])))
            {
                return i;
            }
        }

        return null;
    }

    private static RowValues Values(CsvCells cells, DateTimeOffset begin, int line, bool open, FormatRows rows)
    {
        var row = new RowValues(rows.Clock);
        foreach (var (name, cell, quantity, least, missing, factor) in Columns)
        {
            if (!FormatText.TryDecimal(cells[cell], out var number))
            {
                rows.SetAside(row, name, line, cell + 1, cells[cell], "is not a number with a decimal point", "Get the file again");
            }
            else if (number < least)
            {
                rows.SetAside(row, name, line, cell + 1, cells[cell], "is below what it can be", "Get the file again");
            }
            else if (number < missing && (quantity != WeatherQuantity.Rain || (!open && IsRainOfTheHour(cells))))
            {
                row.Put(begin, TimeSpan.FromHours(1), quantity, number * factor);
            }
        }

        return row;
    }

    /// <summary>Rain is of as many hours as the next cell says; only that of one hour is the hour's.</summary>
    private static bool IsRainOfTheHour(CsvCells cells) =>
        cells.Count > RainHours && FormatText.TryDecimal(cells[RainHours], out var hours) && hours.Equals(1);

    private static bool TryHour(CsvCells cells, SiteClock clock, out DateTimeOffset begin)
    {
        begin = default;
        if (!FormatText.IsDigits(cells[0]) || cells[0].Length != 4
            || !FormatText.TryWhole(cells[1], out var month) || !FormatText.TryWhole(cells[2], out var day) || !FormatText.TryWhole(cells[3], out var hour)
            || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(EpwFile.NominalYear, month) || hour is < 1 or > 24)
        {
            return false;
        }

        begin = clock.ToInstantStandard(new DateOnly(EpwFile.NominalYear, month, day), new TimeOnly(hour - 1, 0));
        return true;
    }

    private static bool TryPlace(ReadOnlySpan<char> line, out EpwPlace place)
    {
        place = new("", 0, 0, 0, 0);
        var cells = new CsvCells(',');
        if (!cells.TrySplit(line) || cells.Count < 10 || !cells[0].Equals("LOCATION", StringComparison.OrdinalIgnoreCase)
            || !TryWithin(cells[6], -90, 90, out var latitude) || !TryWithin(cells[7], -180, 180, out var longitude)
            || !TryWithin(cells[8], -12, 14, out var offset) || (offset * 4) % 1 != 0 || !TryWithin(cells[9], -500, 9000, out var elevation))
        {
            return false;
        }

        place = new(cells[1].ToString(), latitude, longitude, offset, elevation);
        return true;
    }

    private static bool TryWithin(ReadOnlySpan<char> text, double least, double most, out double value) =>
        FormatText.TryDecimal(text, out value) && value >= least && value <= most;

    private static EpwFile Refused(string file, Problem why) => new() { Report = new() { File = file, FileRefused = true, Problems = [why] } };
}
