using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>site.yaml as read, without its stations, and what stations.csv has to know of it.</summary>
internal sealed class SiteDraft
{
    private SiteDraft(Site site, bool corrects, IReadOnlyList<AreaDraft> areas, IReadOnlyDictionary<ProgramKey, YamlNode> programsAt, IReadOnlyList<NotTogetherSection> notTogether)
    {
        Site = site;
        Corrects = corrects;
        Areas = areas;
        ProgramsAt = programsAt;
        NotTogether = notTogether;
    }

    /// <summary>Has no stations yet.</summary>
    public Site Site { get; }

    public bool Corrects { get; }

    public IReadOnlyList<AreaDraft> Areas { get; }

    /// <summary>Where site.yaml describes each program.</summary>
    public IReadOnlyDictionary<ProgramKey, YamlNode> ProgramsAt { get; }

    /// <summary>Its stations are still to be looked up.</summary>
    public IReadOnlyList<NotTogetherSection> NotTogether { get; }

    public static SiteDraft Read(Section root)
    {
        var problems = root.Problems;
        var site = root.NeedMap("site", "{ name: ..., latitude: ..., ... }");
        var report = ReportSection.Read(root.Map("report"));
        var window = WindowSection.Read(root.Map("window"), "opens", "closes");
        var pump = root.Map("pump");
        var capacity = pump?.NeedQuantity("capacity", UnitKind.Flow, new(0, 200_000, AboveMin: true), "850 gpm");
        pump?.Done();
        var water = WaterSection.Read(root.Map("water"));
        var weather = WeatherSection.Read(root.NeedMap("weather", "{ stations: ..., gauges: ... }"));
        var soils = SoilSection.ReadAll(root);
        var areas = AreaSection.ReadAll(root, soils, weather.Gauges);
        var (controllers, programsAt) = ControllerSection.ReadAll(root, weather.Gauges);
        var stages = StageSection.ReadAll(root, [.. areas.Select(a => a.Area.Name)]);
        var cautions = CautionsSection.Read(root.Map("cautions"));
        var priority = PrioritySection.Read(root, [.. areas.Select(a => a.Area.Name)]);
        var restrictions = RestrictionSection.ReadAll(root, [.. areas.Select(a => a.Area.Name)]);
        var notTogether = NotTogetherSection.ReadAll(root);
        var draft = new Site
        {
            Name = site?.NeedText("name", "Quillback Bend Municipal") ?? "",
            LatitudeDeg = site?.NeedNumber("latitude", new(-90, 90), "40.27") ?? 0,
            LongitudeDeg = site?.NeedNumber("longitude", new(-180, 180), "-84.15") ?? 0,
            ElevationM = site?.NeedQuantity("elevation", UnitKind.Length, new(-500, 9000), "960 ft") ?? 0,
            Clock = site is null ? new(TimeZoneInfo.Utc) : Zone(site),
            Units = site?.NeedWord("units", "us", "metric") is "us" ? UnitSystem.Us : UnitSystem.Metric,
            Start = site?.NeedDate("start", "2026-06-01") ?? default,
            StartSoil = site?.NeedWord("start_soil", "full", "allowable", "assumed") switch
            {
                "allowable" => StartSoil.Allowable,
                "assumed" => StartSoil.Assumed,
                _ => StartSoil.Full,
            },
            Report = report,
            Window = window,
            PumpCapacityLPerMin = capacity,
            Priority = priority,
            Weather = weather,
            Soils = soils,
            Areas = [.. areas.Select(a => a.Area)],
            Controllers = controllers,
            Stations = [],
            Restrictions = restrictions,
            Stages = stages,
            Cautions = cautions,
            WaterLimits = water,
        };
        var corrects = site?.Flag("correct") ?? false;
        site?.Done();
        root.Done();
        WarnOfStrangePlace(draft, site, problems);
        return new(draft, corrects, areas, programsAt, notTogether);
    }

    private static SiteClock Zone(Section site)
    {
        var name = site.NeedText("time_zone", "America/Chicago");
        if (name.Length == 0)
        {
            return new(TimeZoneInfo.Utc);
        }

        if (IsZoneName(name) && TimeZoneInfo.TryFindSystemTimeZoneById(name, out var zone) && zone.HasIanaId)
        {
            return new(zone);
        }

        var at = site.Find("time_zone")!;
        var known = TimeZoneInfo.GetSystemTimeZones().Select(z => z.Id);
        site.Problems.Error(
            at.Line,
            at.Column,
            $"{site.NameOf("time_zone")}: {Wording.Quote(name)} is not a time zone that is known here",
            Wording.Nearest(name, known) is { } nearest ? $"did you mean {Wording.Quote(nearest)}?" : "write the IANA name, such as America/Chicago or Europe/Dublin");
        return new(TimeZoneInfo.Utc);
    }

    /// <summary>A longitude without its minus sign puts noon at midnight: the sun and the clock must agree within some hours.</summary>
    private static void WarnOfStrangePlace(Site site, Section? section, ProblemList problems)
    {
        if (section is null || problems.HasErrors)
        {
            return;
        }

        // Civil clocks differ from the sun's by at most about 4 hours, summer time included.
        var offset = site.Clock.OffsetAt(site.Clock.DayStart(site.Start)).TotalHours;
        var apart = Math.Abs(offset - (site.LongitudeDeg / 15)) % 24;
        if (Math.Min(apart, 24 - apart) > 4)
        {
            var at = section.KeyOf("longitude");
            problems.Warn(at.Line, at.Column, $"longitude {Wording.Number(site.LongitudeDeg)} and time zone {site.Clock.ZoneId} lie far apart", "west is negative; sunrise would come out at the wrong hour");
        }
    }

    /// <summary>Names only: what the system finds under a path or a file name is no zone.</summary>
    private static bool IsZoneName(string name) =>
        name.Length <= 64 && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '+' or '-' or '/') && char.IsAsciiLetter(name[0]);
}
