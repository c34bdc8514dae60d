using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Csv;

namespace DailyAdjust.Files.Sites;

/// <summary>What was measured at a station.</summary>
/// <param name="Station">Where.</param>
/// <param name="RateMmPerHour">Net precipitation rate, mm/h.</param>
/// <param name="LowerQuarter">Distribution uniformity, above 0 to 1.</param>
public sealed record MeasuredStation(StationKey Station, double RateMmPerHour, double LowerQuarter);

/// <summary>A cell of stations.csv that is written anew.</summary>
/// <param name="Station">Whose row.</param>
/// <param name="Line">Of the row, from 1.</param>
/// <param name="Column">The column's header with its unit.</param>
/// <param name="Old">What stood there; may be empty.</param>
/// <param name="New">What stands there now.</param>
public sealed record CellChange(StationKey Station, int Line, string Column, string Old, string New);

/// <summary>stations.csv with measured rates in it; every other character of it stays.</summary>
/// <param name="Text">The whole new text; the old one where nothing changes.</param>
/// <param name="Changes">In the order of the file's rows.</param>
public sealed record StationsEdit(string Text, IReadOnlyList<CellChange> Changes)
{
    /// <summary>
    /// Writes rate, "measured" and uniformity into the rows of the stations, in the units of their headers, with four and three digits that count. A column that is
    /// missing is added at the end. A cell that says the same already stays as it is spelled.
    /// </summary>
    /// <param name="text">stations.csv, known good.</param>
    /// <param name="site">The site that it describes.</param>
    /// <param name="measured">One for each station, at most.</param>
    public static StationsEdit Of(string text, Site site, IReadOnlyList<MeasuredStation> measured)
    {
        var problems = new ProblemList("stations.csv");
        var rows = CsvRows.Read(text, problems);
        var edit = new StationCells(new CsvEdit(text), rows[0], StationColumns.Read(rows[0], site.Controllers, problems), site.Units);
        foreach (var row in rows.Skip(1))
        {
            if (measured.FirstOrDefault(m => edit.IsOf(row, m.Station)) is { } found)
            {
                edit.Set(row, found.Station, StationColumns.Rate, unit => Number(unit.FromMetric(found.RateMmPerHour), "G4"));
                edit.Set(row, found.Station, StationColumns.RateKnown, _ => RateKnownWord.Of(RateKnown.Measured));
                edit.Set(row, found.Station, StationColumns.Uniformity, unit => Number(unit.FromMetric(100 * found.LowerQuarter), "G3"));
            }
        }

        return new(edit.Text, edit.Changes);
    }

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
