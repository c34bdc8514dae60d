using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>What a check looks for, for people; its name is for site.yaml.</summary>
public static class CheckWords
{
    private static readonly Dictionary<string, Phrase> Known = new(StringComparer.Ordinal)
    {
        [ClearSkyCheck.About.Name] = new("more sun than a clear sky gives"),
        [ClockCheck.About.Name] = new("a wrong clock"),
        [DawnHumidityCheck.About.Name] = new("humidity towards dawn"),
        [DewPointCheck.About.Name] = new("dew point above the air temperature"),
        [HighRadiationCheck.About.Name] = new("sun that reads high"),
        [HumidityCheck.About.Name] = new("impossible humidity"),
        [LimitsCheck.About.Name] = new("impossible values"),
        [LowRadiationCheck.About.Name] = new("sun that reads low"),
        [NightSunCheck.About.Name] = new("sun at night"),
        [OrderCheck.About.Name] = new("highest below lowest"),
        [RainSpikeCheck.About.Name] = new("rain that was none"),
        [RainTotalCheck.About.Name] = new("a running total of rain"),
        [SecondStationCheck.About.Name] = new("the next station's temperature"),
        [SpikeCheck.About.Name] = new("single values that stand out"),
        [StillWindCheck.About.Name] = new("wind that never moves"),
        [StuckCheck.About.Name] = new("a value that stands still"),
    };

    /// <summary>The name itself of a check that this version does not have.</summary>
    public static Phrase Of(string name) => Known.TryGetValue(name, out var words) ? words : Phrase.Verbatim(name);
}
