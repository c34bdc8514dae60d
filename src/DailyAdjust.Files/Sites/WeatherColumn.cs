using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>One entry of a column map: the header as the file has it, or { column: Temp, unit: °F } where the header does not say the unit.</summary>
internal static class WeatherColumn
{
    public static MappedColumn? Read(YamlNode node, WeatherQuantity quantity, string what, bool daily, Section around)
    {
        if (node is YamlMap)
        {
            var section = around.AsSection(node, what, node)!;
            var column = new MappedColumn(section.NeedText("column", "Temp"), section.NeedText("unit", Example(quantity, daily)));
            section.Done();
            CheckUnit(column.Unit!, quantity, section.NameOf("unit"), daily, section.Find("unit") ?? node, around.Problems);
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
        else
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
