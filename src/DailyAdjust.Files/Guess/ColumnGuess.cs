using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Guess;

/// <summary>A column that may be used.</summary>
/// <param name="Index">Cell, from 0.</param>
/// <param name="Header">As the file spells it.</param>
/// <param name="Quantity">What its words mean.</param>
/// <param name="Meaning">How sure they are.</param>
/// <param name="Written">Its unit as the file says it; null = it does not.</param>
internal sealed record ColumnGuess(int Index, string Header, WeatherQuantity Quantity, HeaderMeaning Meaning, ColumnUnit? Written)
{
    private const double LeastNumbers = 0.2;

    /// <summary>Short names that mean something only together with their unit.</summary>
    private static readonly Dictionary<string, WeatherQuantity> Letters = new(StringComparer.Ordinal)
    {
        ["p"] = WeatherQuantity.Rain,
        ["r"] = WeatherQuantity.Rain,
        ["u"] = WeatherQuantity.WindSpeed,
        ["v"] = WeatherQuantity.WindSpeed,
        ["ff"] = WeatherQuantity.WindSpeed,
    };

    /// <summary>One column for each quantity, in the file's order; the others with the reason.</summary>
    public static (IReadOnlyList<ColumnGuess> Used, IReadOnlyList<LeftColumn> Left, IReadOnlyList<Finding> Doubts) Choose(TableShape shape, TimeColumns time, bool daily)
    {
        var (possible, left, doubts) = (new List<ColumnGuess>(), new List<LeftColumn>(), new List<Finding>());
        for (var i = 0; i < shape.Header.Count; i++)
        {
            if (shape.Header[i].Length == 0 || i == time.Column || i == time.TimeOfDay)
            {
                continue;
            }

            var (column, why) = Of(shape, i, daily);
            if (column is null)
            {
                left.Add(new(shape.Header[i], why));
            }
            else
            {
                possible.Add(column);
            }
        }

        var used = new List<ColumnGuess>();
        foreach (var ofQuantity in possible.GroupBy(column => column.Quantity))
        {
            var ordered = ofQuantity.OrderByDescending(column => column.Meaning.Rank).ThenBy(column => column.Written is null).ThenBy(column => column.Index).ToList();
            used.Add(ordered[0]);
            left.AddRange(ordered.Skip(1).Select(other => new LeftColumn(other.Header, $"\"{ordered[0].Header}\" is proposed for {QuantityName.Of(ofQuantity.Key)}")));
            if (ordered.Count > 1 && ordered[1].Meaning.Rank == ordered[0].Meaning.Rank)
            {
                doubts.Add(new("columns." + QuantityName.Of(ofQuantity.Key), ordered[0].Header, IsSure: false, $"or is it \"{ordered[1].Header}\""));
            }
        }

        return ([.. used.OrderBy(column => column.Index)], left, doubts);
    }

    /// <summary>The column's numbers row by row; NaN = none.</summary>
    public IReadOnlyList<double> Values(TableShape shape, bool decimalComma) => [.. shape.Rows.Select(row => NumberForm.Value(row[Index], decimalComma))];

    private static (ColumnGuess? Column, string Why) Of(TableShape shape, int index, bool daily)
    {
        var header = shape.Header[index];
        var words = new HeaderWords(header);
        if (TimeWords.AreIn(words) && !words.HasAny("rain", "temp", "wind", "solar"))
        {
            return (null, "another time");
        }

        var below = shape.Units is { } units && index < units.Count ? units[index] : null;
        var meaning = QuantityWords.Of(words);
        if (meaning.Quantity is null && meaning.Why.Length == 0 && Letters.TryGetValue(words.Text.Split(' ')[0], out var letter) && ColumnUnit.Written(header, below, letter, daily) is not null)
        {
            meaning = new(letter, "");
        }

        if (meaning.Quantity is not { } quantity)
        {
            return (null, meaning.Why.Length > 0 ? meaning.Why : "its words are not known here");
        }

        if (HeaderText.Find(shape.Header, header) != index)
        {
            return (null, "its header stands there twice: which one is meant could not be said");
        }

        var written = ColumnUnit.Written(header, below, quantity, daily);
        var said = words.InBrackets ?? below?.Trim('[', ']', '(', ')', ' ');
        if (written is null && said is { Length: > 0 } && IsAnyUnit(said))
        {
            return (null, $"\"{said}\" is not a unit of {QuantityName.Of(quantity)}");
        }

        var cells = shape.Rows.Select(row => row[index]).Where(cell => cell.Length > 0).Distinct(StringComparer.Ordinal).Take(200).ToList();
        return cells.Count > 0 && cells.Count(cell => !double.IsNaN(NumberForm.Value(cell, true)) || !double.IsNaN(NumberForm.Value(cell, false))) < LeastNumbers * cells.Count
            ? (null, "it holds texts, not numbers")
            : (new(index, header, quantity, meaning, written), "");
    }

    private static bool IsAnyUnit(string text) => Enum.GetValues<UnitKind>().Any(kind => Units.Find(text, kind) is not null);
}
