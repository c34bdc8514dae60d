using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>The readings around one day, each by itself checked, while they are looked at as a series. Ascending, not overlapping.</summary>
internal sealed class CheckedRows(List<Reading> rows, CheckNotes notes)
{
    public int Count => rows.Count;

    public CheckNotes Notes => notes;

    public Reading this[int row] => rows[row];

    public double Value(int row, WeatherQuantity quantity) => SeriesValue.Of(rows[row], quantity);

    /// <summary>Rows that begin in the day: from, up to but without.</summary>
    public (int From, int To) OfDay()
    {
        var from = rows.FindIndex(r => notes.Day.Holds(r.Begin));
        return from < 0 ? (0, 0) : (from, rows.FindLastIndex(r => notes.Day.Holds(r.Begin)) + 1);
    }

    /// <summary>Sets the known values of a quantity aside in rows from one up to another, unless the site overrules the check.</summary>
    /// <param name="why">In words.</param>
    /// <param name="scale">From the series' unit to the one named.</param>
    public void SetAside(WeatherCheck check, WeatherQuantity quantity, int from, int to, string unit, string why, double scale = 1)
    {
        if (notes.Source.Accepts(check, quantity))
        {
            return;
        }

        var (first, values) = (-1, 0);
        var value = double.NaN;
        for (var row = from; row < to; row++)
        {
            var known = quantity == WeatherQuantity.Rain ? rows[row].RainMm : Value(row, quantity);
            if (double.IsNaN(known))
            {
                continue;
            }

            if (notes.Day.Holds(rows[row].Begin))
            {
                (first, value) = first < 0 ? (row, known) : (first, value);
                values++;
            }

            rows[row] = SeriesValue.Without(rows[row], quantity);
        }

        if (values > 0)
        {
            notes.Note(check, rows[first], quantity, value * scale, unit, why, values);
        }
    }
}
