using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>The one act or command that answers what the sheet asks.</summary>
internal static class Answers
{
    public const string RoundFile = "fill in done and found in round.csv and drop it into the inbox";

    public static string RoundDone(DateOnly sheet, SheetIssue issue) => Log($"round {CodeWords.Date(sheet)} done{At(issue)}", issue);

    /// <summary>What stands on a dial.</summary>
    public static string Setting(ProgramKey program, SheetIssue issue) => Log($"setting {program} ____{At(issue)}", issue);

    /// <summary>A line of logbook.csv.</summary>
    public static string RainLine(string gauge, DateOnly date, string unit) => $"{CodeWords.Date(date)},rain,gauge:{gauge},____,{unit}";

    /// <summary>A line of logbook.csv.</summary>
    public static string ProbeLine(StationKey station, DateOnly date) => $"{CodeWords.Date(date)} __:__,probe,{station},____,%";

    /// <summary>A box was verified.</summary>
    public static string Checked(string controller, SheetIssue issue) => Log($"checked {controller}{At(issue)}", issue);

    /// <summary>A program's starts of a date ran.</summary>
    public static string Ran(ProgramKey program, DateOnly date, SheetIssue issue) => Log($"ran {program} yes --date {CodeWords.Date(date)}", issue);

    /// <summary>A program or a station was run by hand.</summary>
    public static string RanByHand(string where, string much, SheetIssue issue) => Log($"run {where} {much}{At(issue)}", issue);

    /// <summary>What was due on a box in a span of time did not run.</summary>
    public static string DidNotRunSpan(string controller, SheetIssue issue) =>
        Log($"ran {controller} no{(issue.AnsweredAt is { } at ? $" --date {CodeWords.Date(DateOnly.FromDateTime(at))}" : "")} --time __:__ --until __:__", issue);

    /// <summary>A line of logbook.csv.</summary>
    public static string DidNotRunLine(StationKey station, DateOnly date) => $"{CodeWords.Date(date)},ran,{station},no";

    /// <summary>A line of logbook.csv.</summary>
    public static string DidNotRunLine(ProgramKey program, DateOnly date) => $"{CodeWords.Date(date)},ran,{program},no";

    private static string Log(string words, SheetIssue issue) =>
        $"dailyadjust log {words} --site {issue.SiteId}{(issue.Home is { } home ? $" --home {(home.Contains(' ', StringComparison.Ordinal) ? $"\"{home}\"" : home)}" : "")}";

    /// <summary>Empty on today's sheet: what is logged now is said now.</summary>
    private static string At(SheetIssue issue) => issue.AnsweredAt is { } at ? $" --date {CodeWords.Date(DateOnly.FromDateTime(at))} --time {SiteWords.Clock(TimeOnly.FromDateTime(at))}" : "";
}
