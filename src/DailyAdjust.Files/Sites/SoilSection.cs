using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>soils: name to what the soil holds and takes in.</summary>
internal static class SoilSection
{
    public static IReadOnlyDictionary<string, Soil> ReadAll(Section root)
    {
        var soils = new Dictionary<string, Soil>(StringComparer.OrdinalIgnoreCase);
        var sections = root.NeedMaps("soils", "{ loam: { available_water: 1.8 in/ft } }");
        Names.CheckUnique(sections.Select(s => (s.Key.Value, (YamlNode)s.Key)), "soil", root.Problems);
        foreach (var (key, section) in sections)
        {
            soils.TryAdd(key.Value, Read(key.Value, section));
        }

        return soils;
    }

    private static Soil Read(string name, Section section)
    {
        var rate = section.Quantity("intake_rate", UnitKind.DepthRate, new(0, 1000, AboveMin: true));
        var storage = section.Quantity("surface_storage", UnitKind.Depth, new(0, 100));
        if (section.Quantity("slope", UnitKind.Percent, new(0, 100)) is { } slope && Surface(section, slope) is { } surface)
        {
            rate ??= surface.IntakeMmPerHour;
            storage ??= surface.StorageMm;
        }

        var soil = new Soil
        {
            Name = name,
            AvailableWaterMmPerM = AvailableWater(section),
            FieldCapacityPercent = section.Quantity("field_capacity", UnitKind.Percent, new(0, 80, AboveMin: true)),
            IntakeRate = rate is { } mmPerHour ? new ApplicationRate(mmPerHour) : null,
            SurfaceStorage = new(storage ?? 0),
            CurveNumber = section.Number("curve_number", new(1, 100)),
        };
        section.Done();
        if (rate is not null && storage is null)
        {
            section.Problems.Warn(section.At.Line, section.At.Column, $"{section.Name} has an intake rate but no surface_storage", "0 is assumed: every minute above the intake rate runs off; or give texture and slope");
        }

        return soil;
    }

    /// <summary>From texture and slope, where the site does not know better.</summary>
    private static (double IntakeMmPerHour, double StorageMm)? Surface(Section section, double slopePercent)
    {
        var at = section.Find("slope")!;
        if (section.Find("texture") is not YamlText texture)
        {
            section.Problems.Error(at.Line, at.Column, $"{section.Name} has a slope but no texture", $"give it one of {Wording.OneOf(SurfaceTable.Textures)}, or intake_rate and surface_storage in place of the slope");
            return null;
        }

        if (SurfaceTable.Find(texture.Value, slopePercent) is { } surface)
        {
            section.Problems.Warn(
                at.Line,
                at.Column,
                FormattableString.Invariant($"{section.Name} takes an intake rate of {surface.IntakeMmPerHour:0.#} mm/h and {surface.StorageMm:0.#} mm of surface storage from texture and slope where it gives none"),
                "give intake_rate and surface_storage where they are known");
            return surface;
        }

        section.Problems.Error(texture.Line, texture.Column, $"{section.NameOf("texture")}: how {Wording.Quote(texture.Value)} takes water in by slope is not in the table", Wording.DidYouMean(texture.Value, SurfaceTable.Textures, "textures"));
        return null;
    }

    private static double AvailableWater(Section section)
    {
        // 10 to 500 mm/m: from gravel to pure organic matter.
        if (section.Has("available_water") || section.Find("texture") is not { } node)
        {
            // Texture may stand beside it: for the slope, or as a note.
            section.Find("texture");
            return section.NeedQuantity("available_water", UnitKind.DepthPerDepth, new(10, 500), "1.8 in/ft\", or \"texture: loam");
        }

        if (Values.Text(node, section.NameOf("texture"), section.Problems) is not { } text)
        {
            return 1;
        }

        if (SoilTextures.Find(text.Value) is not { } range)
        {
            section.Problems.Error(
                node.Line,
                node.Column,
                $"{section.NameOf("texture")}: {Wording.Quote(text.Value)} is not in the table",
                Wording.DidYouMean(text.Value, SoilTextures.Names, "textures"));
            return 1;
        }

        var middle = (range.FromMmPerM + range.ToMmPerM) / 2;
        section.Problems.Warn(
            node.Line,
            node.Column,
            FormattableString.Invariant($"{section.Name} takes {middle:0} mm/m available water from its texture, the middle of {range.FromMmPerM:0} to {range.ToMmPerM:0}"),
            "give available_water where it is known");
        return middle;
    }
}
