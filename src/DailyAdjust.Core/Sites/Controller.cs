namespace DailyAdjust.Core.Sites;

public enum PercentApplies
{
    /// <summary>Each program has its own percentage.</summary>
    Program,

    /// <summary>One percentage for the whole box.</summary>
    Controller,

    /// <summary>No percentage: minutes are set station by station.</summary>
    None,
}

public enum MinutesRounding
{
    /// <summary>Halves go up.</summary>
    Nearest,
    Down,
    Up,
}

public enum ProgramOverlap
{
    /// <summary>Two programs run two stations at once.</summary>
    Together,

    /// <summary>The later program is pushed back.</summary>
    Stack,
}

/// <summary>One stand-alone box.</summary>
public sealed record Controller
{
    private const double Close = 1e-6;

    public required string Id { get; init; }

    public string Place { get; init; } = "";

    /// <summary>Its place on the walking route.</summary>
    public int Route { get; init; }

    public PercentApplies Applies { get; init; } = PercentApplies.Program;

    /// <summary>Percent (10 = 10 %).</summary>
    public double PercentMin { get; init; }

    /// <summary>Percent; where there is no percentage, the most of the minutes in stations.csv that is ever advised.</summary>
    public double PercentMax { get; init; } = 200;

    /// <summary>Percent, above 0.</summary>
    public double PercentStep { get; init; } = 5;

    /// <summary>Minutes, above 0.</summary>
    public double MinutesStep { get; init; } = 1;

    public MinutesRounding Rounding { get; init; } = MinutesRounding.Nearest;

    /// <summary>Shorter runs do little but fill the pipes, minutes, 0 or more (common practice).</summary>
    public double LeastRunMinutes { get; init; } = 3;

    /// <summary>The dial shows the change from 100 % (+20, -30), not the percentage.</summary>
    public bool ShowsChange { get; init; }

    public ProgramOverlap Overlap { get; init; } = ProgramOverlap.Together;

    public TimeSpan StationGap { get; init; }

    /// <summary>Most days it can pause by itself; 0 = cannot.</summary>
    public int PauseDays { get; init; }

    /// <summary>Null = it has none.</summary>
    public RainSwitch? RainSwitch { get; init; }

    /// <summary>Its starts stand in standard time all year.</summary>
    public bool ClockStaysStandard { get; init; }

    public required IReadOnlyList<WateringProgram> Programs { get; init; }

    /// <summary>Whether a percentage above 0, percent, lies in the range of the dial; a box without one has none to lie outside of.</summary>
    public bool IsInRange(double percent) => Applies == PercentApplies.None || (percent >= PercentMin - Close && percent <= PercentMax + Close);
}

/// <summary>Start times, water days, minutes per station (kept with the stations) and one percentage.</summary>
public sealed record WateringProgram
{
    public required string Id { get; init; }

    public string Name { get; init; } = "";

    /// <summary>Ascending, at least one.</summary>
    public required IReadOnlyList<TimeOnly> Starts { get; init; }

    public required WaterDays Days { get; init; }

    public VisitDays Visit { get; init; } = VisitDays.Daily;
}
