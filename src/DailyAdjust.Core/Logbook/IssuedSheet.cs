using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>What the sheet says to do with one program. In files: set, skip, resume, leave, keep-off, off, as-set.</summary>
public enum AdviceKind
{
    /// <summary>Turn the dial to the number.</summary>
    Set,

    /// <summary>Switch the program off for now; it resumes on a named day if no rain falls.</summary>
    Skip,

    /// <summary>Switch the program on again, at the number.</summary>
    Resume,

    /// <summary>Do not touch it.</summary>
    Leave,

    /// <summary>It is off; leave it off.</summary>
    KeepOff,

    /// <summary>Must not run: why, until when.</summary>
    Off,

    /// <summary>No sound advice: leave it as it is set, and why.</summary>
    AsSet,
}

/// <summary>A sheet as it was issued: what a `round` entry and a returned round sheet refer to. Never changed.</summary>
/// <param name="Date">The sheet's date.</param>
/// <param name="Issue">1, 2, ...</param>
/// <param name="AsOf">The instant whose knowledge it used, UTC.</param>
/// <param name="Lines">One per program.</param>
public sealed record IssuedSheet(DateOnly Date, int Issue, DateTimeOffset AsOf, IReadOnlyList<IssuedLine> Lines);

/// <summary>Sheets of many dates.</summary>
public static class IssuedSheets
{
    /// <summary>Of every date its newest issue, in order of date.</summary>
    public static IEnumerable<IssuedSheet> NewestOfDates(this IEnumerable<IssuedSheet> sheets) =>
        sheets.GroupBy(sheet => sheet.Date).OrderBy(date => date.Key).Select(date => date.MaxBy(sheet => sheet.Issue)!);
}

/// <summary>What a sheet said of one program.</summary>
/// <param name="Program">Which.</param>
/// <param name="Advice">What.</param>
/// <param name="Percent">set and resume: the number; leave and keep-off: the setting then (off = 0); null for skip, off, as-set.</param>
/// <param name="Asks">Somebody had to walk to the box for it.</param>
/// <param name="PauseDays">skip: the box is to be paused for so many days instead of switched off; null = switched off.</param>
public sealed record IssuedLine(ProgramKey Program, AdviceKind Advice, double? Percent, bool Asks, int? PauseDays = null)
{
    /// <summary>The number that the line left on the program had it been done, percent, 0 = off; null = it does not tell.</summary>
    public double? NumberAfter => Percent ?? (Asks && Advice is AdviceKind.Skip or AdviceKind.Off ? 0 : null);

    /// <summary>The stations set aside for hose and probe, in station order; null = no zone's need was computed.</summary>
    public IReadOnlyList<IssuedAside>? SetAside { get; init; }

    /// <summary>What the number was before it was cut to what the night and the pump gave; null = it was not.</summary>
    public double? UncutPercent { get; init; }
}

/// <summary>A station that a sheet set aside.</summary>
/// <param name="Station">Of the program's controller.</param>
/// <param name="Percent">What it alone would have needed.</param>
/// <param name="MedianPercent">What half of its area's ground was met with.</param>
public sealed record IssuedAside(string Station, double Percent, double MedianPercent);
