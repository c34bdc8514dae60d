using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>One entry of a column map: the header as the file has it, or { column: Temp, unit: °F } where the header does not say the unit.</summary>
internal static class WeatherColumn
{
    /// <param name="node">The entry.</param>
    /// <param name="quantity">What the column holds.</param>
    /// <param name="what">The entry's name, for problems.</param>
    /// <param name="daily">Whether a row is a whole day.</param>
    /// <param name="unitElsewhere">The file has a line of units, so that an entry need not say its own.</param>
    /// <param name="around">The column map.</param>
    public static MappedColumn? Read(YamlNode node, WeatherQuantity quantity, string what, bool daily, bool unitElsewhere, Section around)
    {
        if (node is YamlMap)
        {
            var section = around.AsSection(node, what, node)!;
            var name = section.NeedText("column", "Temp");
            var hasUnit = unitElsewhere || HeaderUnit.Split(name).Unit is not null;
            var unitText = hasUnit && !section.Has("unit") ? null : section.NeedText("unit", Example(quantity, daily));
            var column = new MappedColumn(name, unitText, quantity == WeatherQuantity.Rain && section.Flag("counter"));
            section.Done();
            if (unitText is not null)
            {
                CheckUnit(unitText, quantity, section.NameOf("unit"), daily, section.Find("unit") ?? node, around.Problems);
            }

            return column;
        }

        if (Values.Text(node, what, around.Problems) is not { } text)
        {
            return null;
        }

        var header = text.Value.Trim();
        if (HeaderUnit.Split(header).Unit is { } unit)
        {
            CheckUnit(unit, quantity, what, daily, node, around.Problems);
        }
        else if (!unitElsewhere)
        {
            around.Problems.Error(node.Line, node.Column, $"{what}: the header {Wording.Quote(header)} does not say its unit in brackets", $"write {{ column: {Wording.Quote(header)}, unit: \"{Example(quantity, daily)}\" }}");
        }

        return new(header, null);
    }

    private static void CheckUnit(string unit, WeatherQuantity quantity, string what, bool daily, YamlNode at, ProblemList problems)
    {
        if (unit.Length > 0 && WeatherUnits.Find(unit, quantity, daily) is null)
        {
            var kinds = WeatherUnits.Kinds(quantity, daily);
            problems.Error(
                at.Line,
                at.Column,
                $"{what}: {Wording.Quote(unit)} is not a unit of {Values.NameOf(kinds[0])}",
                $"units that fit: {string.Join(", ", kinds.SelectMany(Units.Spellings))}; or write {{ column: ..., unit: ... }}");
        }
    }

    private static string Example(WeatherQuantity quantity, bool daily) => Units.Spellings(WeatherUnits.Kinds(quantity, daily)[0])[0];
}
