using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Guess;

/// <summary>What a header's words mean.</summary>
/// <param name="Quantity">Null = nothing that is used.</param>
/// <param name="Why">Why it is not used; empty where it is, or where its words are not known.</param>
/// <param name="Rank">Of several columns for one quantity the highest is proposed.</param>
/// <param name="SaysTotal">Its words tell of a running total.</param>
internal sealed record HeaderMeaning(WeatherQuantity? Quantity, string Why, int Rank = 0, bool SaysTotal = false);

/// <summary>Trade words in headers, English, German, Spanish and French.</summary>
internal static class QuantityWords
{
    private const int Usual = 0;
    private const int Preferred = 10;
    private const int Lesser = -10;
    private const int Total = -20;

    public static HeaderMeaning Of(HeaderWords words)
    {
        if (NotUsed(words) is { } why)
        {
            return new(null, why);
        }

        if (words.HasAny("dew", "dewpoint", "dewpt", "taupunkt", "rocio", "rosee", "dp", "td"))
        {
            return new(WeatherQuantity.DewPoint, "", Rank(words));
        }

        if (words.HasAny("rh", "humid", "hum", "feuchte", "feuchtigkeit", "humedad", "humidite", "hr", "luftfeuchte"))
        {
            return new(Extreme(words, WeatherQuantity.RelativeHumidityMax, WeatherQuantity.RelativeHumidityMin) ?? WeatherQuantity.RelativeHumidity, "", Rank(words));
        }

        if (words.HasAny("sunshine", "sonnenschein", "sonnenstunden", "heliofania", "ensoleillement") || words.Text is "sun hours" or "horas de sol")
        {
            return new(WeatherQuantity.Sunshine, "");
        }

        if (words.HasAny("solar", "radiation", "globalstrahlung", "strahlung", "radiacion", "rayonnement", "solaire", "pyran", "irradiance", "insolation", "rs", "rad", "sr", "slr", "ghi", "sun"))
        {
            return new(WeatherQuantity.SolarRadiation, "", Rank(words));
        }

        if (words.HasAny("wind", "viento", "vent", "ws", "wspd", "windgeschwindigkeit", "anemometer"))
        {
            return words.HasAny("max", "hi", "high", "peak", "maximum", "maximal", "hochst")
                ? new(null, "the strongest wind, not the mean")
                : new(WeatherQuantity.WindSpeed, "", Rank(words));
        }

        return OfWater(words) ?? OfTemperature(words) ?? new(null, "");
    }

    /// <summary>Columns that look like one that is used and are not.</summary>
    private static string? NotUsed(HeaderWords words) =>
        words.HasAny("dir", "direction", "direccion", "richtung", "wd", "winddir", "wdir") ? "a wind direction"
        : words.HasAny("gust", "windgust", "dailygust", "boe", "boen", "windboe", "spitze", "windspitze", "rafaga", "racha", "rafale") ? "a gust, not the mean wind"
        : words.HasAny("soil", "boden", "suelo", "leaf", "blatt", "hoja", "feuille", "moisture") || (words.HasAny("sol") && words.HasAny("temp", "humidite")) ? "soil or leaf, not the air"
        : IsIndoor(words) ? "indoors"
        : words.HasAny("index", "chill", "windchill", "feels", "feel", "apparent", "humidex", "bulb", "gefuhlt", "sensacion", "ressenti", "wbgt", "heat") ? "a felt temperature or an index"
        : words.HasAny("battery", "batt", "volt", "voltage", "akku", "bateria", "batterie", "panel", "logger") ? "of the logger itself"
        : words.HasAny("bar", "baro", "pressure", "press", "druck", "luftdruck", "presion", "pression") ? "air pressure"
        : words.HasAny("uv", "net", "longwave", "infrared", "par", "albedo") ? "another radiation than the sun's on level ground"
        : words.HasAny("snow", "hail", "schnee", "nieve", "neige", "lightning") ? "not rain"
        : words.HasAny("rate", "rainrate", "intensity", "intensitat", "intensidad", "intensite") ? "a rate, not an amount"
        : words.HasAny("qc", "flag", "flags", "quality", "std", "stdev", "error") ? "a mark about another column"
        : words.HasAny("water", "pool", "ground", "grass", "road") && words.HasAny("temp") ? "not the air"
        : words.HasAny("chance", "probability", "vpd", "etc", "etr") || words.Text.Contains("degree day", StringComparison.Ordinal) ? "not measured weather that is used"
        : null;

    private static bool IsIndoor(HeaderWords words) =>
        words.HasAny("indoor", "inside", "innen", "interior", "interieur", "inner", "inhumi", "inhum", "intemp", "tempin", "humidityin", "internal", "case")
        || (words.HasAny("in") && words.HasAny("temp", "hum", "humid", "dew"));

    private static HeaderMeaning? OfWater(HeaderWords words)
    {
        if (words.HasAny("eto", "et", "evapotrans", "evapotranspiration", "verdunstung", "evapotranspiracion"))
        {
            return new(WeatherQuantity.ReferenceEt, "", Usual);
        }

        var rain = words.HasAny("rain", "dailyrain", "eventrain", "totalrain", "yearlyrain", "monthlyrain", "weeklyrain", "precip", "niederschlag", "regen", "lluvia", "pluie", "pluvio", "prcp", "pcp", "ppt", "rr", "rf")
            && !words.HasAny("drain", "train", "terrain");
        if (!rain)
        {
            return null;
        }

        if (words.HasAny("last", "hourly") || words.Text.Contains("24 h", StringComparison.Ordinal))
        {
            return new(null, "rain of the last hours over and over, which would count it more than once");
        }

        var total = words.HasAny("total", "cum", "accum", "counter", "summe", "gesamt", "acumulad", "cumul", "year", "month", "week", "season", "storm", "event", "daily", "today", "annual", "heute", "jahr");
        return new(WeatherQuantity.Rain, "", total ? Total : Rank(words), total);
    }

    private static HeaderMeaning? OfTemperature(HeaderWords words)
    {
        var temperature = words.HasAny("temp", "lufttemperatur", "airt", "ta", "tair", "air", "airtemp", "temperature", "tavg", "tmean", "tmax", "tmin", "tx", "tn", "luft", "t") || words.Text is "high" or "low" or "hi" or "lo";
        return temperature
            ? new(Extreme(words, WeatherQuantity.AirTemperatureMax, WeatherQuantity.AirTemperatureMin) ?? WeatherQuantity.AirTemperature, "", Rank(words))
            : null;
    }

    private static WeatherQuantity? Extreme(HeaderWords words, WeatherQuantity max, WeatherQuantity min) =>
        words.HasAny("max", "tmax", "tx", "hi", "high", "maximum", "maxima", "hochst", "rhmax", "maximale") ? max
        : words.HasAny("min", "tmin", "tn", "lo", "low", "minimum", "minima", "tiefst", "rhmin", "minimale") ? min
        : null;

    private static int Rank(HeaderWords words) =>
        words.HasAny("out", "outdoor", "outside", "aussen", "exterior", "exterieur", "avg", "average", "mean", "mittel", "media", "moyenne") ? Preferred
        : words.HasAny("extra", "ch", "aux", "second") || words.IsNumbered ? Lesser
        : Usual;
}
