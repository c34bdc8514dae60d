using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>What people did, saw and ordered. In files written in lower case with hyphens: no-water.</summary>
public enum LogKind
{
    Setting,
    Off,
    Round,
    Visit,
    Ran,
    Run,
    Hose,
    Syringe,
    Rain,
    Probe,
    Meter,
    Hold,

    /// <summary>Must not run: what was applied has to stay on the leaves.</summary>
    NoWater,

    /// <summary>A depth that has to be watered in by a time.</summary>
    WaterIn,

    /// <summary>People on the course: off for some hours up to its end.</summary>
    Event,

    /// <summary>A depth to wash salts below the roots, in cycles.</summary>
    Flush,

    /// <summary>New turf: several short starts a day that taper to the program's own.</summary>
    GrowIn,

    /// <summary>A stage of the site's drought plan is put in force.</summary>
    Stage,

    /// <summary>The box is paused for some days and then runs by itself as before.</summary>
    Pause,
    Pump,
    Season,

    /// <summary>A probe reading of one spot: sends the hose, corrects no balance.</summary>
    Spot,

    /// <summary>Power was lost: clock and programs are to be verified.</summary>
    Power,

    /// <summary>Clock, programs and percentage of a box were verified.</summary>
    Checked,
    Note,
    Void,
}

/// <summary>A local date, with or without a time of day.</summary>
public readonly record struct LogTime(DateOnly Date, TimeOnly? Clock) : IComparable<LogTime>
{
    /// <summary>The instant: a bare date counts at that date's end.</summary>
    public DateTimeOffset Instant(SiteClock clock) =>
        Clock is { } time ? clock.ToInstant(Date, time) : clock.DayEnd(Date);

    /// <summary>When an order of this time begins, UTC: with a bare date as that date does.</summary>
    public DateTimeOffset Begin(SiteClock clock) => Clock is null ? clock.DayStart(Date) : Instant(clock);

    public int CompareTo(LogTime other)
    {
        var byDate = Date.CompareTo(other.Date);
        return byDate != 0 ? byDate : (Clock ?? TimeOnly.MaxValue).CompareTo(other.Clock ?? TimeOnly.MaxValue);
    }

    public static bool operator <(LogTime a, LogTime b) => a.CompareTo(b) < 0;

    public static bool operator >(LogTime a, LogTime b) => a.CompareTo(b) > 0;

    public static bool operator <=(LogTime a, LogTime b) => a.CompareTo(b) <= 0;

    public static bool operator >=(LogTime a, LogTime b) => a.CompareTo(b) >= 0;
}

/// <summary>The unit in which <see cref="LogEntry.Value"/> is kept (the reader converts).</summary>
public enum LogUnit
{
    None,

    /// <summary>A percentage (50 = 50 %): of base minutes, of the due minutes, or volumetric.</summary>
    Percent,
    Minutes,

    /// <summary>A depth of water.</summary>
    Mm,

    /// <summary>A volume of water.</summary>
    Litres,

    /// <summary>A flow.</summary>
    LitresPerMin,
}

/// <summary>
/// One entry of the logbook. Its identity is (time, kind, where, ordinal): the same row in a later file supersedes it.
/// <see cref="Value"/> by kind: setting % of base minutes (null where nothing was turned); ran % of the due minutes (no = 0, yes = 100); run minutes
/// (station) or % (program); hose mm or L; rain mm; probe and spot volumetric %; meter L; pump L/min left; water-in and
/// flush mm; event and pause minutes; grow-in minutes of each start; the others: null, see <see cref="Text"/>, <see cref="Sheet"/> and <see cref="Until"/>.
/// </summary>
public sealed record LogEntry
{
    /// <summary>The text of a hose entry that wetted a hot spot only: it counts nothing over the zone.</summary>
    public const string OnSpot = "spot";

    /// <summary>The text of a setting that came back on a sheet as what the dial showed before: it answers nothing.</summary>
    public const string Found = "found";

    /// <summary>The text of a setting without a number that came back on a sheet: nothing was turned for it.</summary>
    public const string NotTurned = "not turned";

    public required LogTime Time { get; init; }

    public required LogKind Kind { get; init; }

    public required Place Where { get; init; }

    /// <summary>Tells entries of the same time, kind and place apart; from 0.</summary>
    public int Ordinal { get; init; }

    public double? Value { get; init; }

    public LogUnit Unit { get; init; }

    /// <summary>Grow-in: starts a day, 1 or more.</summary>
    public int? Times { get; init; }

    /// <summary>Season: open, closing, closed, drained or charging. Stage: its name, or none. Hose: <see cref="OnSpot"/>, or empty. Setting that came back on a sheet: <see cref="Found"/>, <see cref="NotTurned"/>, or empty. Void: the kind of the voided entry. Otherwise empty.</summary>
    public string Text { get; init; } = "";

    /// <summary>Round: the sheet's date.</summary>
    public DateOnly? Sheet { get; init; }

    /// <summary>Round, setting or off that came back on a sheet: which issue of it; null = the newest then.</summary>
    public int? Issue { get; init; }

    /// <summary>Round: programs and controllers that were not done.</summary>
    public IReadOnlyList<Place> Except { get; init; } = [];

    /// <summary>
    /// The end of what the entry begins (a bare date: through that date). Visit: the date to which the next visit moves; null = somebody
    /// is there today. Ran: the end of the span in which nothing (or that share) ran. Water-in and flush: by when. Event: when it is over.
    /// </summary>
    public LogTime? Until { get; init; }

    public string By { get; init; } = "";

    public string Note { get; init; } = "";

    /// <summary>Probe and spot: the moisture meter, as people call it; empty = not said.</summary>
    public string Instrument { get; init; } = "";

    /// <summary>Probe and spot: how deep the meter's rods reach, m, above 0 to 2; null = not said.</summary>
    public double? RodLengthM { get; init; }

    /// <summary>Says what is to be from its time on, which may lie ahead when it is entered; the others tell what was.</summary>
    public bool IsOrder => Kind is LogKind.Hold or LogKind.NoWater or LogKind.WaterIn or LogKind.Event or LogKind.Flush or LogKind.GrowIn or LogKind.Stage or LogKind.Pump;

    /// <summary>
    /// From when on it counts, UTC: an order as it begins, anything else when its time (of a bare date, the date) is over. A loss of power of which only the date is
    /// known counts with that date's sheet: the boxes are to be looked at, whatever the hour was.
    /// </summary>
    public DateTimeOffset CountsFrom(SiteClock clock) => IsOrder || Kind == LogKind.Power ? Time.Begin(clock) : Time.Instant(clock);

    public (LogTime Time, LogKind Kind, string Where, int Ordinal) Identity => (Time, Kind, Where.ToString(), Ordinal);
}
