using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>weather: stations in order of preference, gauges, monthly normals, forecast.</summary>
internal static class WeatherSection
{
    public static WeatherSetup Read(Section? section)
    {
        if (section is null)
        {
            return new() { Stations = [], Gauges = [] };
        }

        var sections = section.NeedMaps("stations");
        WeatherSource[] stations = [.. sections.Select(WeatherStationSection.Read)];
        Names.CheckUnique(stations.Zip(sections, (s, at) => (s.Id, at.KeyOf("id"))), "weather station", section.Problems);
        var setup = new WeatherSetup
        {
            Stations = stations,
            Gauges = Gauges(section, stations),
            Normals = Normals(section.Map("normals")),
            Forecast = section.Map("forecast") is { } forecast ? WeatherStationSection.Read(forecast, WeatherSetup.ForecastId) : null,
            ForecastRain = section.Find("forecast_rain") is { } node ? ForecastRain(node, section) : Core.Sites.ForecastRain.OnlyNoted,
        };
        CheckForecast(setup, section);
        section.Done();
        if (setup.Normals is null && !Array.Exists(stations, KnowsEto))
        {
            section.Problems.Warn(section.At.Line, section.At.Column, "no weather station has an air temperature or a supplied reference_et", "no day will have an ETo, and no program an advice");
        }

        return setup;
    }

    private static bool KnowsEto(WeatherSource station) => station.UseSuppliedEto
        || station.Columns.ContainsKey(WeatherQuantity.AirTemperature)
        || (station.Columns.ContainsKey(WeatherQuantity.AirTemperatureMax) && station.Columns.ContainsKey(WeatherQuantity.AirTemperatureMin));

    /// <summary>"note", or { skip: { chance: 70 %, amount: 0.3 in } }.</summary>
    private static ForecastRain ForecastRain(YamlNode node, Section around)
    {
        var name = around.NameOf("forecast_rain");
        if (node is not YamlMap)
        {
            if (Values.Word(node, name, ["note", "skip"], around.Problems) is "skip")
            {
                around.Problems.Error(node.Line, node.Column, $"{name}: skip needs to be told from which rain on", "write { skip: { chance: 70 %, amount: 0.3 in } }");
            }

            return Core.Sites.ForecastRain.OnlyNoted;
        }

        var section = around.AsSection(node, name, node)!;
        var skip = section.NeedMap("skip", "{ chance: 70 %, amount: 0.3 in }");
        var rain = skip is null
            ? Core.Sites.ForecastRain.OnlyNoted
            : new ForecastRain(
                MaySkip: true,
                skip.NeedQuantity("chance", UnitKind.Percent, new(0, 100, AboveMin: true), "70 %"),
                skip.NeedQuantity("amount", UnitKind.Depth, new(0, 500, AboveMin: true), "0.3 in"));
        skip?.Done();
        section.Done();
        return rain;
    }

    private static void CheckForecast(WeatherSetup setup, Section section)
    {
        foreach (var station in setup.Stations.Where(s => string.Equals(s.Id, WeatherSetup.ForecastId, StringComparison.OrdinalIgnoreCase)))
        {
            var at = section.KeyOf("stations");
            section.Problems.Error(at.Line, at.Column, $"weather station {Wording.Quote(station.Id)} has the name of the forecast", "choose another id");
        }

        foreach (var station in setup.Stations.Where(s => string.Equals(s.Format, Formats.GridpointFormat.Name, StringComparison.Ordinal)))
        {
            var at = section.KeyOf("stations");
            section.Problems.Error(at.Line, at.Column, $"weather station {Wording.Quote(station.Id)} reads a forecast", "what is forecast was never measured: write it under forecast:");
        }

        if (setup.ForecastRain.MaySkip && setup.Forecast is null)
        {
            var at = section.KeyOf("forecast_rain");
            section.Problems.Error(at.Line, at.Column, "forecast_rain may skip and there is no forecast", "add forecast: to weather, or write forecast_rain: note");
        }
    }

    private static Gauge[] Gauges(Section section, WeatherSource[] stations)
    {
        var sections = section.NeedMaps("gauges");
        Gauge[] gauges = [.. sections.Select(s => Gauge(s, stations))];
        Names.CheckUnique(gauges.Zip(sections, (g, at) => (g.Id, at.KeyOf("id"))), "gauge", section.Problems);
        for (var i = 0; i < gauges.Length; i++)
        {
            gauges[i] = WithSubstitute(gauges[i], gauges, sections[i]);
        }

        return gauges;
    }

    /// <summary>The substitute by its own spelling; one that is not there, or the gauge itself, is a problem.</summary>
    private static Gauge WithSubstitute(Gauge gauge, IReadOnlyList<Gauge> gauges, Section section)
    {
        if (gauge.SubstituteId is not { } wanted)
        {
            return gauge;
        }

        var others = gauges.Select(g => g.Id).Where(id => !string.Equals(id, gauge.Id, StringComparison.OrdinalIgnoreCase)).ToList();
        if (Names.Find(others, wanted) is { } id)
        {
            return gauge with { SubstituteId = id };
        }

        var at = section.KeyOf("substitute");
        section.Problems.Error(at.Line, at.Column, $"{section.NameOf("substitute")}: there is no other gauge {Wording.Quote(wanted)}", Wording.DidYouMean(wanted, others, "other gauges"));
        return gauge with { SubstituteId = null };
    }

    private static Gauge Gauge(Section section, WeatherSource[] stations)
    {
        var id = section.NeedId("yard");
        var byHand = section.Flag("by_hand");
        var station = section.Find("station") is { } node ? Station(node, section, stations) : null;
        var substitute = section.Find("substitute") is null ? null : section.NeedText("substitute", "barn");
        section.Done();
        if (byHand == section.Has("station"))
        {
            section.Problems.Error(
                section.At.Line,
                section.At.Column,
                byHand ? $"{section.Name} is read by hand and names a station too" : $"{section.Name} does not say whose rain it is",
                "write { id: yard, station: yard } for a weather station's rain, or { id: barn, by_hand: true } for a gauge that a person reads");
        }

        return new(id, station, substitute);
    }

    private static string? Station(YamlNode node, Section section, WeatherSource[] stations)
    {
        if (Values.Text(node, section.NameOf("station"), section.Problems) is not { } text)
        {
            return null;
        }

        if (Names.Find(stations.Select(s => s.Id), text.Value) is not { } id)
        {
            section.Problems.Error(node.Line, node.Column, $"{section.NameOf("station")}: there is no weather station {Wording.Quote(text.Value)}", Wording.DidYouMean(text.Value, [.. stations.Select(s => s.Id)], "weather stations"));
            return null;
        }

        if (!stations.First(s => string.Equals(s.Id, id, StringComparison.Ordinal)).Columns.ContainsKey(WeatherQuantity.Rain))
        {
            section.Problems.Error(node.Line, node.Column, $"{section.NameOf("station")}: weather station {id} has no rain column", "map its rain column, or choose a station that has one");
        }

        return id;
    }

    private static MonthlyNormals? Normals(Section? section)
    {
        if (section is null)
        {
            return null;
        }

        var eto = section.NeedMap("eto", "{ unit: in/day, values: [0.05, ...] }");
        var normals = new MonthlyNormals(
            eto is null ? [] : Monthly(eto, UnitKind.DepthPerDay, new(0, 25), "in/day"),
            section.Map("rain") is { } rain ? Monthly(rain, UnitKind.Depth, new(0, 5000), "in") : []);
        section.Done();
        return normals;
    }

    private static IReadOnlyList<double> Monthly(Section section, UnitKind kind, Limits limits, string example)
    {
        var spelling = section.NeedText("unit", example);
        var unit = Units.Find(spelling, kind);
        if (unit is null && spelling.Length > 0)
        {
            var at = section.Find("unit")!;
            section.Problems.Error(at.Line, at.Column, $"{section.NameOf("unit")}: {Wording.Quote(spelling)} is not a unit of {Values.NameOf(kind)}", $"units that fit: {string.Join(", ", Units.Spellings(kind))}");
        }

        var known = unit ?? new(kind, "", 1, 0);
        var shown = new Limits(known.FromMetric(limits.Min), known.FromMetric(limits.Max));
        var values = section.Need("values", "[0.05, ...]") is { } node
            ? MonthlyValues.Read(node, section.NameOf("values"), section.Problems, (item, what) => Values.Number(item, what, shown, section.Problems))
            : [];
        section.Done();
        return [.. values.Select(known.ToMetric)];
    }
}
