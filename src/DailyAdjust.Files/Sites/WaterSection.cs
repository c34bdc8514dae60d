using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>water: what the place may take, by its allotment and its permit.</summary>
internal static class WaterSection
{
    private static readonly string[] Months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
    private static readonly Limits Volume = new(0, 1e12, AboveMin: true);

    public static WaterLimits Read(Section? section)
    {
        if (section is null)
        {
            return new();
        }

        var permit = section.Map("permit");
        var limits = new WaterLimits
        {
            YearBegins = Array.IndexOf(Months, section.Word("year_begins", Months)) + 1,
            AllotmentL = section.Quantity("allotment", UnitKind.Volume, Volume),
            DayL = permit?.Quantity("day", UnitKind.Volume, Volume),
            MonthL = permit?.Quantity("month", UnitKind.Volume, Volume),
            YearL = permit?.Quantity("year", UnitKind.Volume, Volume),
            RateLPerMin = permit?.Quantity("rate", UnitKind.Flow, new(0, 200_000, AboveMin: true)),
        };
        permit?.Done();
        section.Done();
        return limits;
    }
}
