using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Files.Logbook;

/// <summary>A value and its unit, from the cells value and unit, or both in value ("6 min").</summary>
internal static class LogValue
{
    /// <param name="wrong">Takes column, what and hint.</param>
    public static (double Value, LogUnit Unit)? Read(string valueCell, string unitCell, LogRule rule, Action<string, string, string> wrong)
    {
        var fitting = $"units that fit: {string.Join(", ", rule.Measures.SelectMany(m => m.Spellings))}";
        if (valueCell.Length == 0)
        {
            wrong(LogbookColumns.Value, "the value is empty", $"write a number, and its unit beside it; {fitting}");
            return null;
        }

        if (!NumberText.TrySplit(valueCell, out var number, out var beside))
        {
            var first = valueCell.Split(' ')[0];
            wrong(
                LogbookColumns.Value,
                $"{Wording.Quote(valueCell)} is not a number",
                NumberText.LooksLikeDecimalComma(first) ? $"write a decimal point: {first.Replace(',', '.')}" : "write a plain number, and its unit beside it");
            return null;
        }

        if (beside.Length > 0 && unitCell.Length > 0 && !string.Equals(beside, unitCell, StringComparison.OrdinalIgnoreCase))
        {
            wrong(LogbookColumns.Unit, $"value says {Wording.Quote(beside)}, unit says {Wording.Quote(unitCell)}", "keep one of them");
            return null;
        }

        var spelling = beside.Length > 0 ? beside : unitCell;
        var column = beside.Length > 0 ? LogbookColumns.Value : LogbookColumns.Unit;
        if (spelling.Length == 0)
        {
            if (!rule.UnitMayBeLeftOut)
            {
                wrong(LogbookColumns.Unit, "the unit is empty", fitting);
                return null;
            }

            spelling = rule.Measures[0].Spellings.First();
        }

        foreach (var measure in rule.Measures)
        {
            if (measure.Find(spelling) is not { } unit)
            {
                continue;
            }

            var metric = unit.ToMetric(number);
            if (measure.Limits.Holds(metric))
            {
                return (metric, measure.Unit);
            }

            wrong(LogbookColumns.Value, $"{valueCell} is out of range", $"it lies {measure.Limits.InWords(unit.FromMetric, unit.Symbol)}");
            return null;
        }

        wrong(column, $"{Wording.Quote(spelling)} is not a unit that fits here", fitting);
        return null;
    }
}
