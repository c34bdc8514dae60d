using System.Globalization;
using System.Text;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Service.Printing;

/// <summary>One station's day, number by number.</summary>
internal static class StationText
{
    public static string Of(ZoneDay day, Site site, WeatherDay weather)
    {
        var station = site.Stations.First(s => s.Key == day.Station);
        var area = station.Area;
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{day.Station} {station.Name}, {day.Area}, {day.Date:yyyy-MM-dd} (mm)\n\n");
        Line(text, "total available water", day.TawMm, $"{area.Soil.AvailableWaterMmPerM:0.####} mm/m x {area.RootDepthM:0.####} m of roots");
        Line(text, "allowable depletion", day.RawMm, $"{area.AllowableDepletion * 100:0.##} % of it");
        Line(text, "below full at 00:00", day.DepletionBeforeMm, "below field capacity");
        text.Append('\n');
        Line(text, "reference ET", day.EtoMm, $"{EtoBasisCode.Of(weather.Basis)}{(weather.Station.Length > 0 ? ", station " + weather.Station : "")}");
        Line(text, "K", day.K, $"crop coefficient x exposure {station.Exposure:0.####}");
        Line(text, "Ks", day.Ks, "1 = no stress");
        Line(text, "+ drawn by the turf", day.EtcMm, "reference ET x K x Ks");
        Line(text, "- rain", day.RainMm, $"gauge {station.Gauge}{(day.RainMm is null ? ": unknown, counts 0" : "")}{StandIn(weather, station.Gauge)}");
        Line(text, "+ intercepted", day.InterceptedMm, "wetted only leaves");
        Line(text, "+ runoff", day.RunoffMm, "of rain");
        Line(text, "- irrigation, net", day.IrrigationMm, $"{day.MinutesRun:0.##} min at {station.Rate.MmPerHour:0.####} mm/h, efficiency {station.Efficiency * 100:0.##} %");
        Line(text, "- hose", day.HoseMm, "");
        Line(text, "+ drained", day.DrainageMm, "beyond field capacity");
        Line(text, "+ probe correction", day.ProbeMm, "");
        text.Append('\n');
        Line(text, "below full at the end", day.DepletionMm, day.DepletionMm > day.RawMm ? "past the allowable depletion" : "within the allowable depletion");
        if (day.IrrigationRunoffMm > 0)
        {
            Line(text, "ran off while watering", day.IrrigationRunoffMm, "more than the ground takes in");
        }

        text.Append(SensorText.Of(weather, site.Clock));
        return text.ToString();
    }

    private static string StandIn(WeatherDay weather, string gauge) =>
        weather.Rain.FirstOrDefault(r => string.Equals(r.Gauge, gauge, StringComparison.Ordinal)) is { Substitute.Length: > 0 } rain ? $", for which gauge {rain.Substitute} stands in" : "";

    private static void Line(StringBuilder text, string name, double? value, FormattableString why) => Line(text, name, value, FormattableString.Invariant(why));

    private static void Line(StringBuilder text, string name, double? value, string why)
    {
        var number = value is { } known ? known.ToString("0.0000", CultureInfo.InvariantCulture) : "unknown";
        text.Append(string.Create(CultureInfo.InvariantCulture, $"{name,-24}{number,10}   {why}").TrimEnd()).Append('\n');
    }
}
