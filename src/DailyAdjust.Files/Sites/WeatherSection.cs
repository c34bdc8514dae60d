using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>weather: stations in order of preference, gauges, monthly normals.</summary>
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
        };
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

    private static Gauge[] Gauges(Section section, WeatherSource[] stations)
    {
        var sections = section.NeedMaps("gauges");
        Gauge[] gauges = [.. sections.Select(s => Gauge(s, stations))];
        Names.CheckUnique(gauges.Zip(sections, (g, at) => (g.Id, at.KeyOf("id"))), "gauge", section.Problems);
        return gauges;
    }

    private static Gauge Gauge(Section section, WeatherSource[] stations)
    {
        var id = section.NeedId("yard");
        var byHand = section.Flag("by_hand");
        var station = section.Find("station") is { } node ? Station(node, section, stations) : null;
        section.Done();
        if (byHand == section.Has("station"))
        {
            section.Problems.Error(
                section.At.Line,
                section.At.Column,
                byHand ? $"{section.Name} is read by hand and names a station too" : $"{section.Name} does not say whose rain it is",
                "write { id: yard, station: yard } for a weather station's rain, or { id: barn, by_hand: true } for a gauge that a person reads");
        }

        return new(id, station);
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
