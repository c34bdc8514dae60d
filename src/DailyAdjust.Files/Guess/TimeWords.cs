namespace DailyAdjust.Files.Guess;

/// <summary>Words of columns that hold a time or a date.</summary>
internal static class TimeWords
{
    public static bool AreIn(HeaderWords words) => words.HasAny(
        "time", "date", "datetime", "timestamp", "stamp", "logged", "datum", "zeit", "uhrzeit", "fecha", "hora", "heure", "jour", "dia", "tag", "day", "hour", "stunde", "when", "utc", "gmt", "epoch", "unix", "recorded", "ts");

    /// <summary>A time that is none of the row: sunrise, the time of the highest gust.</summary>
    public static bool AreOfAnother(HeaderWords words) => words.HasAny("sunrise", "sunset", "max", "min", "gust", "high", "low", "runtime", "uptime");
}
