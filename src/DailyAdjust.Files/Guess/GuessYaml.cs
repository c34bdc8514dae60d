using System.Globalization;
using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Formats;
using DailyAdjust.Files.Sites;

namespace DailyAdjust.Files.Guess;

/// <summary>A proposal as the piece of site.yaml to paste. What the file does not prove carries a comment that begins with "check:".</summary>
public static class GuessYaml
{
    /// <summary>The whole of weather: the station, and its rain as a gauge where it has any; or the forecast.</summary>
    /// <exception cref="ArgumentException">The file was not recognised.</exception>
    public static string Weather(WeatherGuess guess)
    {
        if (guess.IsForecast)
        {
            return $"weather:\n  forecast:   # beside stations and gauges\n    files: {Quoted(SourceOf(guess).Files)}\n    format: {GridpointFormat.Name}\n";
        }

        var id = SourceOf(guess).Id;
        var rain = SourceOf(guess).Columns.ContainsKey(WeatherQuantity.Rain);
        return $"weather:\n  stations:\n{Station(guess, "    ")}  gauges:\n    - {(rain ? $"{{ id: {id}, station: {id} }}" : "{ id: hand, by_hand: true }   # the file has no rain: a person reads a gauge")}\n";
    }

    /// <summary>One entry of weather: stations.</summary>
    /// <param name="indent">Blanks before its dash.</param>
    /// <exception cref="ArgumentException">The file was not recognised.</exception>
    public static string Station(WeatherGuess guess, string indent)
    {
        var source = SourceOf(guess);
        var text = new StringBuilder();
        void Line(string line, string? key = null, string comment = "")
        {
            var doubt = guess.Findings.FirstOrDefault(f => !f.IsSure && string.Equals(f.Key, key, StringComparison.Ordinal));
            comment = doubt is null ? comment : "check: " + OneLine(doubt.Why);
            text.Append(indent).Append(line).Append(comment.Length > 0 ? "   # " + comment : "").Append('\n');
        }

        Line($"- id: {source.Id}");
        Line($"  files: {Quoted(source.Files)}", comment: "names of its files in the inbox; * stands for anything");
        Line($"  format: {source.Format}");
        if (!string.Equals(source.Format, WeatherStationSection.Csv, StringComparison.Ordinal))
        {
            return text.ToString();
        }

        Line($"  interval: {StepGuess.Text(source.Interval)}", "interval");
        Line("  time:");
        Line($"    column: {Quoted(source.Time.Column)}");
        if (source.Time.TimeOfDayColumn is { } timeOfDay)
        {
            Line($"    time_column: {Quoted(timeOfDay)}");
        }

        Line($"    pattern: {Quoted(source.Time.Pattern)}", "time.pattern");
        Line($"    clock: {Word(source.Time.Clock)}", "time.clock");
        Line($"    stamp: {Word(source.Time.Stamp)}", "time.stamp");
        if (source.Delimiter is { } delimiter)
        {
            Line($"  delimiter: {Delimiter(delimiter)}", "delimiter");
        }

        Line($"  decimal: {(source.DecimalComma ? "comma" : "point")}", "decimal");
        if (source.UnitsBelow)
        {
            Line("  units_below: true");
        }

        if (source.Missing.Count > 0)
        {
            Line($"  missing: [{string.Join(", ", source.Missing.Select(Quoted))}]", "missing");
        }
        else if (guess.Findings.Any(f => !f.IsSure && string.Equals(f.Key, "missing", StringComparison.Ordinal)))
        {
            Line("  # missing:", "missing");
        }

        if (source.Columns.ContainsKey(WeatherQuantity.WindSpeed))
        {
            Line(string.Create(CultureInfo.InvariantCulture, $"  wind_height: {source.WindHeightM} m"), "wind_height");
        }

        Line("  columns:");
        foreach (var (quantity, column) in source.Columns.OrderBy(column => column.Key))
        {
            Line($"    {QuantityName.Of(quantity)}: {Column(column)}", "columns." + QuantityName.Of(quantity));
        }

        return text.ToString();
    }

    internal static string Word(StampClock clock) => clock switch
    {
        StampClock.Local => "local",
        StampClock.Standard => "standard",
        _ => "utc",
    };

    internal static string Word(StampMeaning stamp) => stamp == StampMeaning.Start ? "start" : "end";

    internal static string Delimiter(char sign) => sign switch
    {
        ',' => "comma",
        ';' => "semicolon",
        '\t' => "tab",
        '|' => "bar",
        _ => "blanks",
    };

    private static string Column(MappedColumn column) => column switch
    {
        { Unit: null, Counter: false } => Quoted(column.Header),
        { Unit: null } => $"{{ column: {Quoted(column.Header)}, counter: true }}",
        { Counter: false } => $"{{ column: {Quoted(column.Header)}, unit: {Quoted(column.Unit)} }}",
        _ => $"{{ column: {Quoted(column.Header)}, unit: {Quoted(column.Unit)}, counter: true }}",
    };

    private static WeatherSource SourceOf(WeatherGuess guess) => guess.Source ?? throw new ArgumentException("The file was not recognised.", nameof(guess));

    private static string Quoted(string text) =>
        "\"" + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal).Replace("\t", "\\t", StringComparison.Ordinal) + "\"";

    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
}
