namespace DailyAdjust.Core.Sites;

public enum UnitSystem
{
    Metric,
    Us,
}

/// <summary>What is taken for granted about the soil on the morning of <see cref="Site.Start"/>.</summary>
public enum StartSoil
{
    /// <summary>Every zone at field capacity.</summary>
    Full,

    /// <summary>Every zone at its allowable depletion.</summary>
    Allowable,

    /// <summary>Every zone halfway to its allowable depletion, and nothing rests on it.</summary>
    Assumed,
}

/// <summary>
/// One property: its own time zone, weather sources, soils, areas, controllers and stations, as described in
/// site.yaml and stations.csv. Metric inside; immutable; every reference by name was resolved by the reader.
/// </summary>
public sealed record Site
{
    public required string Name { get; init; }

    /// <summary>Degrees, north positive, -90 to 90.</summary>
    public required double LatitudeDeg { get; init; }

    /// <summary>Degrees, east positive, -180 to 180.</summary>
    public required double LongitudeDeg { get; init; }

    /// <summary>Metres above sea level.</summary>
    public required double ElevationM { get; init; }

    /// <summary>The site's clock; knows the IANA zone.</summary>
    public required SiteClock Clock { get; init; }

    public required UnitSystem Units { get; init; }

    /// <summary>The date on which the balance begins, at 00:00.</summary>
    public required DateOnly Start { get; init; }

    public required StartSoil StartSoil { get; init; }

    public required ReportPolicy Report { get; init; }

    public WateringWindow? Window { get; init; }

    /// <summary>What the pump gives, L/min; null where no pump limits the night.</summary>
    public double? PumpCapacityLPerMin { get; init; }

    /// <summary>Names of areas, the most important first: what comes later is cut first where the night or the pump does not give enough.</summary>
    public IReadOnlyList<string> Priority { get; init; } = [];

    public required WeatherSetup Weather { get; init; }

    public required IReadOnlyDictionary<string, Soil> Soils { get; init; }

    /// <summary>By name, in the order of site.yaml.</summary>
    public required IReadOnlyList<Area> Areas { get; init; }

    /// <summary>In the order of site.yaml; the walking order is <see cref="Controller.Route"/>.</summary>
    public required IReadOnlyList<Controller> Controllers { get; init; }

    /// <summary>In the order of stations.csv; a controller runs its stations in this order.</summary>
    public required IReadOnlyList<Station> Stations { get; init; }

    public IReadOnlyList<Restriction> Restrictions { get; init; } = [];

    /// <summary>Groups of stations that must not run together.</summary>
    public IReadOnlyList<StationGroup> NotTogether { get; init; } = [];

    /// <summary>Stages of the drought plan, in the order of site.yaml.</summary>
    public IReadOnlyList<DroughtStage> Stages { get; init; } = [];

    public WeatherCautions Cautions { get; init; } = new();

    public WaterLimits WaterLimits { get; init; } = new();

    /// <summary>When the round of a date is to be done, UTC.</summary>
    public DateTimeOffset RoundDone(DateOnly date) => Clock.ToInstant(date, Report.RoundDoneBy);

    /// <summary>The controller of an id; null = there is none.</summary>
    public Controller? ControllerOf(string id) => Controllers.FirstOrDefault(c => string.Equals(c.Id, id, StringComparison.Ordinal));

    /// <summary>Place of an area in <see cref="Priority"/>, 0 the most important; one that is not named comes last.</summary>
    public int PriorityOf(string area) => Priority.TakeWhile(name => !string.Equals(name, area, StringComparison.Ordinal)).Count();

    /// <summary>The same of the most important of some areas; behind all others where there is none.</summary>
    public int PriorityOf(IEnumerable<string> areas) => areas.Select(PriorityOf).DefaultIfEmpty(int.MaxValue).Min();
}

/// <summary>A version of the site description and the first date on which it holds.</summary>
public sealed record SiteVersion(DateOnly From, Site Site);

public static class SiteVersions
{
    /// <summary>The version in force on a date; before the first version's date, the first.</summary>
    public static Site On(IReadOnlyList<SiteVersion> versions, DateOnly date)
    {
        for (var i = versions.Count - 1; i > 0; i--)
        {
            if (versions[i].From <= date)
            {
                return versions[i].Site;
            }
        }

        return versions[0].Site;
    }
}
