using DailyAdjust.Core.Quantities;
using DailyAdjust.Files.Readings;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Csv;

/// <summary>Numbers of a CSV file whose unit stands in the header, in brackets.</summary>
internal static class MeasuredCell
{
    /// <summary>The unit of a column; null where its header does not say one that fits, which is told.</summary>
    /// <param name="spelling">What stands in the brackets; null = none.</param>
    /// <param name="kind">What the column measures.</param>
    /// <param name="title">The header's cell.</param>
    /// <param name="line">Of the header.</param>
    /// <param name="at">The column, from 0.</param>
    /// <param name="problems">Where it is told.</param>
    public static Unit? UnitOf(string? spelling, UnitKind kind, string title, int line, int at, ProblemList problems)
    {
        var fitting = $"units that fit: {string.Join(", ", Units.Spellings(kind))}";
        if (spelling is null)
        {
            problems.Error(line, at + 1, $"the column {Wording.Quote(title)} does not say its unit", $"write it in brackets, such as \"{title} ({Units.Spellings(kind)[0]})\"; {fitting}");
            return null;
        }

        var unit = Units.Find(spelling, kind);
        if (unit is null)
        {
            problems.Error(line, at + 1, $"{Wording.Quote(spelling)} is not a unit of {Values.NameOf(kind)}", fitting);
        }

        return unit;
    }

    /// <summary>A cell's number in metric; null where it is none or out of range, which is told.</summary>
    /// <param name="column">The column's name.</param>
    /// <param name="text">The cell, not empty.</param>
    /// <param name="unit">Of the column; null = a bare number.</param>
    /// <param name="limits">In metric.</param>
    /// <param name="line">Of the row.</param>
    /// <param name="place">The column, from 1.</param>
    /// <param name="problems">Where it is told.</param>
    public static double? Number(string column, string text, Unit? unit, Limits limits, int line, int place, ProblemList problems)
    {
        if (!NumberText.TryParse(text, out var number))
        {
            problems.Error(
                line,
                place,
                $"{Wording.Quote(text)} is not a number",
                NumberText.LooksLikeDecimalComma(text) ? $"write a decimal point: {Shown.Short(text.Replace(',', '.'))}" : "write a plain number; the unit stands in the header");
            return null;
        }

        var metric = unit?.ToMetric(number) ?? number;
        if (limits.Holds(metric))
        {
            return metric;
        }

        problems.Error(line, place, $"{column} {Shown.Short(text)} is out of range", $"it lies {limits.InWords(x => unit?.FromMetric(x) ?? x, unit?.Symbol ?? "")}");
        return null;
    }
}
