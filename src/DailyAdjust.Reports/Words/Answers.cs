using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Tables;

namespace DailyAdjust.Reports.Words;

/// <summary>The one act or command that answers what the sheet asks; commands and lines of logbook.csv are marked as <see cref="Typed"/>.</summary>
internal static class Answers
{
    public static readonly Phrase RoundFile = new("fill in done and found in round.csv and drop it into the inbox");

    /// <summary>Behind a command that answers too.</summary>
    public static readonly Phrase OrRoundFile = $"otherwise {RoundFile}.";

    public static Phrase RoundDone(OpenRound round, string siteId) => Log($"round {(round.Issue is { } issue ? CodeWords.SheetId(round.Date, issue) : CodeWords.Date(round.Date))} done", siteId);

    /// <summary>All rounds from one date to another that asked for anything.</summary>
    public static Phrase RoundsDone(DateOnly first, DateOnly last, string siteId) =>
        first == last ? RoundDone(new(first, null), siteId) : AllRoundsDone(first, last, siteId);

    /// <summary>The same, of one date with two rounds too.</summary>
    public static Phrase AllRoundsDone(DateOnly first, DateOnly last, string siteId) => Log($"round {CodeWords.Date(first)}..{CodeWords.Date(last)} done", siteId);

    /// <summary>What stands on a dial.</summary>
    public static Phrase Setting(ProgramKey program, string siteId) => Log($"setting {ShellWord.Of(program.ToString())} ____", siteId);

    /// <summary>What stands on the one dial of a box.</summary>
    public static Phrase Setting(string controller, string siteId) => Log($"setting {ShellWord.Of(controller)} ____", siteId);

    /// <summary>A line of logbook.csv.</summary>
    public static Phrase RainLine(string gauge, DateOnly date, string unit) => Typed.Mark($"{CodeWords.Date(date)},rain,{CsvText.Quoted("gauge:" + gauge)},____,{unit}");

    /// <summary>A line of logbook.csv.</summary>
    public static Phrase ProbeLine(StationKey station, DateOnly date) => Typed.Mark($"{CodeWords.Date(date)} __:__,probe,{CsvText.Quoted(station.ToString())},____,%");

    /// <summary>A box was verified.</summary>
    public static Phrase Checked(string controller, string siteId) => Log($"checked {ShellWord.Of(controller)}", siteId);

    /// <summary>A program's starts of a date ran.</summary>
    public static Phrase Ran(ProgramKey program, DateOnly date, string siteId) => Log($"ran {ShellWord.Of(program.ToString())} yes --date {CodeWords.Date(date)}", siteId);

    /// <summary>A program or a station was run by hand.</summary>
    public static Phrase RanByHand(string where, string much, string siteId) => Log($"run {ShellWord.Of(where)} {much}", siteId);

    /// <summary>What was due on a box in a span of time did not run.</summary>
    public static Phrase DidNotRunSpan(string controller, string siteId) => Log($"ran {ShellWord.Of(controller)} no --time __:__ --until __:__", siteId);

    /// <summary>A line of logbook.csv: a start of a program or station did not run.</summary>
    /// <param name="where">Which.</param>
    /// <param name="date">The start's date.</param>
    /// <param name="span">From when until when it was due, where the program has other starts on that date; null = it is the only one, and the date says all.</param>
    /// <param name="clock">The site's.</param>
    public static Phrase DidNotRunLine(string where, DateOnly date, (DateTimeOffset From, DateTimeOffset To)? span, SiteClock clock) => Typed.Mark(span is { } due
        ? $"{CodeWords.LogTime(clock.ToLocal(due.From))},ran,{CsvText.Quoted(where)},no,,{CodeWords.LogTime(clock.ToLocal(due.To.AddTicks(TimeSpan.TicksPerMinute - 1)))}"
        : $"{CodeWords.Date(date)},ran,{CsvText.Quoted(where)},no");

    private static Phrase Log(string words, string siteId) => Typed.Mark($"dailyadjust log {words} --site {ShellWord.Of(siteId)}");
}
