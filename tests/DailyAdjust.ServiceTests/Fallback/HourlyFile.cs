using System.Globalization;

namespace DailyAdjust.ServiceTests.Fallback;

/// <summary>The example site's hourly file, to be spoilt: cells by the time at the end of their hour.</summary>
internal sealed class HourlyFile
{
    public const int Temperature = 1;
    public const int Humidity = 2;
    public const int Wind = 3;
    public const int Solar = 4;
    public const int Rain = 5;

    private readonly List<string[]> _rows;

    public HourlyFile(string until = "2026-06-12 05:00") =>
        _rows = [.. ExampleSite.WeatherUntil(until).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(','))];

    public string Text => string.Join('\n', _rows.Select(row => string.Join(',', row))) + "\n";

    /// <summary>The numbers of a column in the 24 hours of a date.</summary>
    public IReadOnlyList<double> OfDay(string date, int column) =>
        [.. Hours(date, 0, 24).Select(row => double.Parse(row[column], CultureInfo.InvariantCulture))];

    /// <summary>Writes a cell.</summary>
    public HourlyFile Set(string time, int column, string cell)
    {
        _rows.Single(row => string.Equals(row[0], time, StringComparison.Ordinal))[column] = cell;
        return this;
    }

    /// <summary>Empties a column from an hour of a date to a later one.</summary>
    public HourlyFile Empty(string date, int from, int to, params int[] columns)
    {
        foreach (var row in Hours(date, from, to))
        {
            foreach (var column in columns)
            {
                row[column] = "";
            }
        }

        return this;
    }

    /// <summary>Takes the rows of a date out.</summary>
    public HourlyFile Without(string date)
    {
        var gone = Hours(date, 0, 24).ToHashSet();
        _rows.RemoveAll(gone.Contains);
        return this;
    }

    private List<string[]> Hours(string date, int from, int to)
    {
        var day = DateTime.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture);
        var ends = Enumerable.Range(from + 1, to - from).Select(hour => day.AddHours(hour).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)).ToHashSet(StringComparer.Ordinal);
        return [.. _rows.Where(row => ends.Contains(row[0]))];
    }
}
