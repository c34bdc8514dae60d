using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Irrigation;

/// <summary>What all zones of one area at one gauge share on one site-local day.</summary>
/// <param name="EtoMm">Reference ET of the day, mm.</param>
/// <param name="Rain">At the gauge.</param>
/// <param name="OnZone">What becomes of it on the area's soil.</param>
/// <param name="Falls">What of it reaches the root zone, in order of time.</param>
/// <param name="Kc">Crop coefficient of the date.</param>
internal sealed record GroundDay(double EtoMm, GaugeDay Rain, RainOnZone OnZone, WaterEvent[] Falls, double Kc)
{
    /// <param name="day">The day.</param>
    /// <param name="weather">Not open.</param>
    /// <param name="station">Any of the zones.</param>
    public static GroundDay Of(DayOfSite day, WeatherDay weather, Station station)
    {
        var rain = weather.RainAt(station.Gauge);
        var eto = weather.EtoMm!.Value;
        var onZone = RainOnZone.OfDay(rain, eto, station.Area.Soil);
        var falls = new List<WaterEvent>();
        day.AddRain(falls, rain, onZone.SoilShare);
        return new GroundDay(eto, rain, onZone, [.. falls], CropCoefficient.On(station.Area.Kc, day.Date));
    }
}
