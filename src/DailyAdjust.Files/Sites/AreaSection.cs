using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>An area, where it is described, and its defaults for stations that know no better.</summary>
internal sealed record AreaDraft(Area Area, YamlNode At, double? RateMmPerHour, double Exposure);

/// <summary>areas: name to a class of turf.</summary>
internal static class AreaSection
{
    public static readonly Limits RateMmPerHour = new(0, 500, AboveMin: true);

    /// <summary>Factor on Kc. From deep shade to a wall that reflects the afternoon sun.</summary>
    public static readonly Limits Exposure = new(0.1, 3);

    public static IReadOnlyList<AreaDraft> ReadAll(Section root, IReadOnlyDictionary<string, Soil> soils, IReadOnlyList<Gauge> gauges)
    {
        var sections = root.NeedMaps("areas", "{ greens: { grass: ..., kc: ..., ... } }");
        Names.CheckUnique(sections.Select(s => (s.Key.Value, (YamlNode)s.Key)), "area", root.Problems);
        return [.. sections.Select(s => Read(s.Key, s.Section, soils, gauges))];
    }

    private static AreaDraft Read(YamlText key, Section section, IReadOnlyDictionary<string, Soil> soils, IReadOnlyList<Gauge> gauges)
    {
        if (key.Value.Any(c => char.IsControl(c) || c is ',' or ';' or ':' or '/'))
        {
            section.Problems.Error(key.Line, key.Column, $"{Wording.Quote(key.Value)} cannot be the name of an area", "use letters, digits, blanks, - and _");
        }

        var area = new Area
        {
            Name = key.Value,
            Grass = section.NeedText("grass", "cool_season"),
            Kc = Kc(section),
            RootDepthM = section.NeedQuantity("root_depth", UnitKind.Length, new(0.01, 3), "6 in"),
            Soil = Soil(section, soils),
            AllowableDepletion = section.NeedQuantity("allowable_depletion", UnitKind.Percent, new(0.1, 100, BelowMax: true), "50 %") / 100,
            LeaveEmpty = ReportSection.Share(section, "leave_empty", new(0, 100)) ?? 0.30,
            Efficiency = Efficiency(section, out var uniformity),
            DistributionUniformity = uniformity,
            RunAt = ReportSection.Share(section, "run_at", new(0, 100)) ?? 0,
            Replace = ReportSection.Share(section, "replace", new(0, 200, AboveMin: true)) ?? 1,
            ByHand = section.Flag("by_hand"),
            Gauge = Gauge(section, gauges),
        };
        var draft = new AreaDraft(
            area,
            key,
            section.Quantity("precipitation_rate", UnitKind.DepthRate, RateMmPerHour),
            section.Number("exposure", Exposure) ?? 1);
        section.Done();
        return draft;
    }

    private static IReadOnlyList<double> Kc(Section section)
    {
        if (section.Need("kc", "uc-cool-season\", or twelve numbers from January: \"kc: [0.80, ...]") is not { } node)
        {
            return [];
        }

        var name = section.NameOf("kc");
        if (node is YamlText text)
        {
            if (KcTables.Find(text.Value) is { } table)
            {
                return table;
            }

            section.Problems.Error(node.Line, node.Column, $"{name}: {Wording.Quote(text.Value)} is not a table that is known", Wording.DidYouMean(text.Value, KcTables.Keys, "write twelve numbers from January, or one of the tables"));
            return [];
        }

        return MonthlyValues.Read(node, name, section.Problems, (item, what) => Values.Number(item, what, new(0, 2), section.Problems));
    }

    private static Soil Soil(Section section, IReadOnlyDictionary<string, Soil> soils)
    {
        var name = section.NeedText("soil", "loam");
        if (soils.TryGetValue(name, out var soil))
        {
            return soil;
        }

        if (name.Length > 0)
        {
            var at = section.Find("soil")!;
            section.Problems.Error(at.Line, at.Column, $"{section.NameOf("soil")}: there is no soil {Wording.Quote(name)}", Wording.DidYouMean(name, [.. soils.Keys], "soils"));
        }

        return new Soil { Name = name, AvailableWaterMmPerM = 1 };
    }

    /// <summary>Given, or from the distribution uniformity.</summary>
    private static double Efficiency(Section section, out double? uniformity)
    {
        uniformity = null;
        var share = new Limits(0, 100, AboveMin: true);
        if (!section.Has("distribution_uniformity"))
        {
            return section.NeedQuantity("efficiency", UnitKind.Percent, share, "80 %\", or \"distribution_uniformity: 70 %") / 100;
        }

        if (section.Has("efficiency"))
        {
            var at = section.KeyOf("efficiency");
            section.Problems.Error(at.Line, at.Column, $"{section.Name} has both efficiency and distribution_uniformity", "keep one of them");
        }

        uniformity = section.NeedQuantity("distribution_uniformity", UnitKind.Percent, share, "70 %") / 100;
        return Uniformity.Efficiency(uniformity.Value);
    }

    /// <summary>The gauge that a section names; null = none, or one that is not there (told).</summary>
    internal static string? Gauge(Section section, IReadOnlyList<Gauge> gauges)
    {
        if (section.Find("gauge") is not { } node || Values.Text(node, section.NameOf("gauge"), section.Problems) is not { } text)
        {
            return null;
        }

        if (Names.Find(gauges.Select(g => g.Id), text.Value) is { } id)
        {
            return id;
        }

        section.Problems.Error(node.Line, node.Column, $"{section.NameOf("gauge")}: there is no gauge {Wording.Quote(text.Value)}", Wording.DidYouMean(text.Value, [.. gauges.Select(g => g.Id)], "gauges"));
        return null;
    }
}
