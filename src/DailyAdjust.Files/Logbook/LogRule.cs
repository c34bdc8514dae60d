using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Files.Logbook;

/// <summary>A unit that a kind's value may have, and the range of the value in metric.</summary>
internal sealed record LogMeasure(UnitKind Kind, LogUnit Unit, Yaml.Limits Limits)
{
    /// <summary>What a dial shows.</summary>
    public static LogMeasure Share { get; } = new(UnitKind.Percent, LogUnit.Percent, new(0, Setting.LargestPercent)) { IsShare = true };

    /// <summary>A share of minutes: a water content by volume (m³/m³), which is a percent too, does not fit.</summary>
    public bool IsShare { get; init; }

    /// <summary>Its units as a hint prints them.</summary>
    public IEnumerable<string> Spellings => Units.Spellings(Kind).Where(Fits);

    /// <summary>The unit so spelled; null = there is none that fits.</summary>
    public Unit? Find(string spelling) => Units.Find(spelling, Kind) is { } unit && Fits(unit.Symbol) ? unit : null;

    private bool Fits(string symbol) => !IsShare || symbol is "%";
}

/// <summary>What an entry of one kind needs.</summary>
internal sealed record LogRule
{
    private static readonly PlaceKind[] Anywhere = Enum.GetValues<PlaceKind>();
    private static readonly PlaceKind[] Programs = [PlaceKind.Program, PlaceKind.Controller, PlaceKind.Site];
    private static readonly PlaceKind[] Stopped = [PlaceKind.Program, PlaceKind.Station, PlaceKind.Controller, PlaceKind.Area, PlaceKind.Site];
    private static readonly PlaceKind[] Ground = [PlaceKind.Station, PlaceKind.Area];
    private static readonly LogMeasure DepthOfWater = new(UnitKind.Depth, LogUnit.Mm, new(0, 500));
    private static readonly LogMeasure VolumeOfWater = new(UnitKind.Volume, LogUnit.Litres, new(0, 1e12));

    private static readonly Dictionary<LogKind, LogRule> Rules = new()
    {
        [LogKind.Setting] = new() { Places = Programs, Measures = [LogMeasure.Share], UnitMayBeLeftOut = true },
        [LogKind.Off] = new() { Places = Programs },
        [LogKind.Round] = new() { Places = [PlaceKind.Site], MayBeSite = true },
        [LogKind.Visit] = new() { Places = Programs },
        [LogKind.Ran] = new()
        {
            Places = [PlaceKind.Program, PlaceKind.Station, PlaceKind.Controller, PlaceKind.Area, PlaceKind.Pump, PlaceKind.Site],
            Measures = [LogMeasure.Share with { Limits = new(0, 200) }],
        },
        [LogKind.Run] = new()
        {
            Places = [PlaceKind.Station, PlaceKind.Program],
            StationFirst = true,
            Measures = [new(UnitKind.Duration, LogUnit.Minutes, new(0, 1440, AboveMin: true)), LogMeasure.Share],
        },
        [LogKind.Hose] = new() { Places = Ground, StationFirst = true, Measures = [DepthOfWater, VolumeOfWater] },
        [LogKind.Syringe] = new()
        {
            Places = [PlaceKind.Station, PlaceKind.Area, PlaceKind.Program, PlaceKind.Controller, PlaceKind.Site],
            StationFirst = true,
            Measures = [DepthOfWater, VolumeOfWater, new(UnitKind.Duration, LogUnit.Minutes, new(0, 1440))],
            ValueMayBeLeftOut = true,
        },
        [LogKind.Rain] = new() { Places = [PlaceKind.Gauge], Measures = [DepthOfWater with { Limits = new(0, 2000) }] },
        [LogKind.Probe] = new() { Places = Ground, StationFirst = true, Measures = [new(UnitKind.Percent, LogUnit.Percent, new(0, 100))] },
        [LogKind.Meter] = new() { Places = [PlaceKind.Pump, PlaceKind.Site, PlaceKind.Controller], Measures = [VolumeOfWater] },
        [LogKind.Hold] = new() { Places = Stopped, NeedsUntil = true },
        [LogKind.NoWater] = new() { Places = Stopped, NeedsUntil = true },
        [LogKind.WaterIn] = new() { Places = [PlaceKind.Area, PlaceKind.Program, PlaceKind.Controller, PlaceKind.Station], StationFirst = true, Measures = [DepthOfWater], NeedsUntil = true },
        [LogKind.Event] = new()
        {
            Places = Stopped,
            Measures = [new(UnitKind.Duration, LogUnit.Minutes, new(0, 14 * 1440, AboveMin: true))],
            NeedsUntil = true,
        },
        [LogKind.Flush] = new() { Places = [PlaceKind.Area, PlaceKind.Program, PlaceKind.Controller, PlaceKind.Station], StationFirst = true, Measures = [DepthOfWater], NeedsUntil = true },
        [LogKind.Pause] = new() { Places = Programs, Measures = [new(UnitKind.Duration, LogUnit.Minutes, new(1440, 366 * 1440))] },
        [LogKind.GrowIn] = new() { Places = [PlaceKind.Program], Measures = [new(UnitKind.Duration, LogUnit.Minutes, new(0, 240, AboveMin: true))], NeedsUntil = true },
        [LogKind.Stage] = new() { Places = [PlaceKind.Site], MayBeSite = true },
        [LogKind.Spot] = new() { Places = Ground, StationFirst = true, Measures = [new(UnitKind.Percent, LogUnit.Percent, new(0, 100))] },
        [LogKind.Power] = new() { Places = [PlaceKind.Controller, PlaceKind.Site] },
        [LogKind.Checked] = new() { Places = [PlaceKind.Controller, PlaceKind.Site] },
        [LogKind.Pump] = new() { Places = [PlaceKind.Pump], Measures = [new(UnitKind.Flow, LogUnit.LitresPerMin, new(0, 200_000))] },
        [LogKind.Season] = new() { Places = [PlaceKind.Site, PlaceKind.Controller], MayBeSite = true },
        [LogKind.Note] = new() { Places = Anywhere, MayBeSite = true },
        [LogKind.Void] = new() { Places = Anywhere, MayBeSite = true },
    };

    public required PlaceKind[] Places { get; init; }

    /// <summary>C1/2 means the station where there is a program 2 as well.</summary>
    public bool StationFirst { get; init; }

    /// <summary>An empty place means the site.</summary>
    public bool MayBeSite { get; init; }

    /// <summary>Empty: the value is no quantity.</summary>
    public LogMeasure[] Measures { get; init; } = [];

    public bool UnitMayBeLeftOut { get; init; }

    public bool ValueMayBeLeftOut { get; init; }

    public bool NeedsUntil { get; init; }

    public static LogRule Of(LogKind kind) => Rules[kind];

    /// <summary>Kinds of place in the words of a hint.</summary>
    public string PlacesInWords => Wording.OneOf([.. Places.Select(Word)]);

    private static string Word(PlaceKind kind) => kind switch
    {
        PlaceKind.Site => "site",
        PlaceKind.Pump => "pump",
        PlaceKind.Area => "an area (area:greens)",
        PlaceKind.Gauge => "a gauge (gauge:yard)",
        PlaceKind.Controller => "a controller (C1)",
        PlaceKind.Program => "a program (C1/P2)",
        PlaceKind.Station => "a station (C1/3)",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of place."),
    };
}
