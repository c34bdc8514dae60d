using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>cautions: from when a night is too cold or too windy to water, and whether that holds its starts.</summary>
internal static class CautionsSection
{
    public static WeatherCautions Read(Section? section)
    {
        var usual = new WeatherCautions();
        if (section is null)
        {
            return usual;
        }

        var (cold, wind) = (section.Map("cold"), section.Map("wind"));
        var cautions = new WeatherCautions
        {
            ColdBelowC = cold?.Quantity("below", UnitKind.Temperature, new(-40, 40)) ?? usual.ColdBelowC,
            ColdHolds = cold?.Flag("hold") ?? false,
            WindAboveMPerS = wind?.Quantity("above", UnitKind.Speed, new(0, 50, AboveMin: true)) ?? usual.WindAboveMPerS,
            WindHolds = wind?.Flag("hold") ?? false,
        };
        cold?.Done();
        wind?.Done();
        section.Done();
        return cautions;
    }
}
