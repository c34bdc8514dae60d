using System.Globalization;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Files.Guess;

/// <summary>The columns with units, marks and totals, as they go into the column map.</summary>
internal sealed record ColumnProposal(
    IReadOnlyDictionary<WeatherQuantity, MappedColumn> Columns, MarkGuess Marks, Answer<bool> DecimalComma, IReadOnlyList<Finding> Findings, IReadOnlyList<double>? Radiation)
{
    private const double MostOutside = 0.5;

    public static ColumnProposal Of(TableShape shape, IReadOnlyList<ColumnGuess> used, IReadOnlyList<DateTime?> stamps, TimeSpan interval)
    {
        var daily = interval == TimeSpan.FromDays(1);
        var comma = NumberForm.DecimalComma(used.SelectMany(column => shape.Rows.Select(row => row[column.Index])), shape.Delimiter);
        var us = IsUs(used, column => column.Values(shape, comma.Value));
        var (columns, findings, marked) = (new Dictionary<WeatherQuantity, MappedColumn>(), new List<Finding>(), new List<MarkColumn>());
        IReadOnlyList<double>? radiation = null;
        foreach (var column in used)
        {
            var values = column.Values(shape, comma.Value);
            var real = values.Where(value => !double.IsNaN(value) && !MarkGuess.IsOfFamily(value)).ToList();
            if ((column.Written ?? UnitFromValues.Of(column.Quantity, real, daily, us)) is not { } unit)
            {
                findings.Add(new(Key(column), column.Header, IsSure: false, "it has no number and no unit: left out"));
                continue;
            }

            var counter = column.Quantity == WeatherQuantity.Rain ? Counter(column, values, stamps, unit.Unit, interval) : new(false, true, "");
            columns.Add(column.Quantity, new(column.Header, unit.InMap ? unit.Unit.Symbol : null, counter.Value));
            bool CanBe(double value) => Possible.Is(value, column.Quantity, unit.Unit, interval, counter.Value);
            marked.Add(new(column.Header, column.Quantity, [.. shape.Rows.Select(row => row[column.Index])], CanBe));
            findings.Add(Tell(column, unit, counter, real, CanBe));
            radiation = column.Quantity == WeatherQuantity.SolarRadiation ? [.. values.Select(value => CanBe(value) ? value : double.NaN)] : radiation;
        }

        return new(columns, MarkGuess.Of(marked, comma.Value), comma, findings, radiation);
    }

    private static Finding Tell(ColumnGuess column, ColumnUnit unit, Answer<bool> counter, List<double> real, Func<double, bool> canBe)
    {
        var outside = real.Count(value => !canBe(value));
        var wrong = real.Count > 0 && outside > MostOutside * real.Count
            ? string.Create(CultureInfo.InvariantCulture, $"; {outside} of {real.Count} values cannot be in {unit.Unit.Symbol}, such as {real.First(value => !canBe(value)):0.##}: is that its unit, and its meaning")
            : "";
        var why = unit.Why + (counter.Why.Length > 0 ? "; " + counter.Why : "") + wrong;
        return new(Key(column), $"\"{column.Header}\" in {unit.Unit.Symbol}{(counter.Value ? ", a running total" : "")}", unit.IsSure && counter.IsSure && wrong.Length == 0, why);
    }

    private static Answer<bool> Counter(ColumnGuess column, IReadOnlyList<double> values, IReadOnlyList<DateTime?> stamps, Unit unit, TimeSpan interval)
    {
        var rows = stamps.Zip(values)
            .Where(row => row.First is not null && Possible.Is(row.Second, WeatherQuantity.Rain, unit, interval, counter: true) && !MarkGuess.IsOfFamily(row.Second))
            .Select(row => (row.First!.Value, row.Second))
            .OrderBy(row => row.Item1)
            .ToList();
        return CounterGuess.Of(rows, column.Meaning.SaysTotal, interval == TimeSpan.FromDays(1));
    }

    /// <summary>Whether the units that the file says, or air too hot for °C, are those of the United States.</summary>
    private static bool IsUs(IReadOnlyList<ColumnGuess> used, Func<ColumnGuess, IReadOnlyList<double>> values)
    {
        var symbols = used.Select(column => column.Written?.Unit.Symbol).OfType<string>().ToList();
        var us = symbols.Count(symbol => symbol is "°F" or "in" or "mph" or "mi" or "in/day" or "ft/s");
        var metric = symbols.Count(symbol => symbol is "°C" or "mm" or "m/s" or "km/h" or "km" or "mm/day");
        return us > metric || (us == metric && used.Any(column => column.Written is null
            && column.Quantity is WeatherQuantity.AirTemperature or WeatherQuantity.AirTemperatureMax
            && UnitFromValues.IsFahrenheit([.. values(column).Where(value => !double.IsNaN(value) && !MarkGuess.IsOfFamily(value))])));
    }

    private static string Key(ColumnGuess column) => "columns." + QuantityName.Of(column.Quantity);
}
