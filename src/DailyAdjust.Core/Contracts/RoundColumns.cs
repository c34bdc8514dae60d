namespace DailyAdjust.Core.Contracts;

/// <summary>The columns of round.csv: written with the report, filled in by a person, read back from the inbox.</summary>
public static class RoundColumns
{
    /// <summary>The sheet's id: its date, a slash and its issue.</summary>
    public const string Sheet = "sheet";

    public const string Controller = "controller";

    public const string Place = "place";

    public const string Program = "program";

    public const string Name = "name";

    public const string Advice = "advice";

    /// <summary>The setting that the sheet takes to be on the program; 0 = off.</summary>
    public const string Old = "old";

    /// <summary>The number to set; 0 = off.</summary>
    public const string New = "new";

    /// <summary>To fill in: yes, no, or the number set.</summary>
    public const string Done = "done";

    /// <summary>To fill in: what the dial showed.</summary>
    public const string Found = "found";

    public const string Note = "note";

    /// <summary>A skip on a box that pauses by itself: for so many days; empty = it is switched off.</summary>
    public const string PauseDays = "pause days";

    /// <summary>All of them, in the order in which they are written.</summary>
    public static IReadOnlyList<string> All { get; } =
        [Sheet, Controller, Place, Program, Name, Advice, Old, New, Done, Found, Note, PauseDays];
}
