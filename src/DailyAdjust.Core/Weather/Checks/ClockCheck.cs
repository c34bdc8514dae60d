using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>The sun keeps the time: on bright days the middle of the radiation lies near solar noon, or the clock of the file is another than site.yaml says.</summary>
internal static class ClockCheck
{
    private const double MostMinutes = 40;
    private const double BrightRatio = 0.6;
    private const int Days = 10;
    private const int LeastDays = 5;

    public static WeatherCheck About { get; } = new(
        "clock",
        "a clock that does not go by the sun",
        "the middle of the day's radiation lies more than 40 minutes from solar noon on at least 5 of the last 10 days, counting those with Rs/Rso above 0.6, all the same way",
        WeatherCheck.IsTold + "; says by how much and which clock or stamp would fit",
        "common practice",
        [WeatherQuantity.SolarRadiation]);

    public static string? WordsOf(StationHistory history, Site site, WeatherSource source, DateOnly date)
    {
        List<double> off = [];
        for (var back = 0; back < Days; back++)
        {
            if (history[back] is { SolarRatio: > BrightRatio, SolarCentroidMinutes: { } minutes } && Math.Abs(minutes) > MostMinutes)
            {
                off.Add(minutes);
            }
        }

        if (off.Count < LeastDays || off.Exists(m => Math.Sign(m) != Math.Sign(off[0])))
        {
            return null;
        }

        var middle = Middle.Of(off);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"its sun is about {Math.Round(Math.Abs(middle) / 5) * 5:0} minutes {(middle < 0 ? "early" : "late")} on {off.Count} of the last {Days} days: {ClockSettings.Fitting(site, source, date, middle)}");
    }
}
