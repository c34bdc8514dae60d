using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Files.Rounds;

namespace DailyAdjust.Service.Sites;

/// <summary>Whether what an entry speaks of is there: the sheet of a round, the entry that is void.</summary>
internal static class LogTargets
{
    private const int MostNamed = 3;

    /// <summary>The sheets that can be answered by what comes in now.</summary>
    public static AnswerableSheets Sheets(OpenSite site) => new(
        () => site.Ledger.Sheets.Issued(),
        () => new SettingHistory(site.Versions, site.Ledger.Logbook.Effective(), site.Ledger.Sheets.Issued()));

    /// <param name="site">Opened, without the entry.</param>
    /// <param name="entry">What somebody wants to add.</param>
    /// <param name="sheets">Those that can be answered.</param>
    /// <exception cref="WrongInputException">It is not there, or too long past.</exception>
    public static void Check(OpenSite site, LogEntry entry, AnswerableSheets sheets)
    {
        switch (entry.Kind)
        {
            case LogKind.Round when entry.Sheet is { } date:
                CheckRound(sheets, date, entry.Issue);
                break;
            case LogKind.Void when KindWord.Find(entry.Text) is { } kind and not LogKind.Void:
                CheckVoid(site, entry, kind);
                break;
            default:
                break;
        }
    }

    /// <summary>What somebody should know who says that a round was done of which nothing was asked; null = it was, or the entry is no round.</summary>
    public static string? NoRound(OpenSite site, LogEntry entry)
    {
        if (entry is not { Kind: LogKind.Round, Sheet: { } date })
        {
            return null;
        }

        var issues = site.Ledger.Sheets.Issued(date, date);
        var told = issues.FirstOrDefault(s => s.Issue == entry.Issue) ?? issues[^1];
        List<string> asked = [.. issues.Where(s => s.Lines.Any(l => l.Asks)).Select(s => Sheet(s.Date, s.Issue))];
        return told.Lines.Any(l => l.Asks) ? null
            : $"Note: sheet {Sheet(told.Date, told.Issue)} asked for no dial to be turned, so this answers nothing.{(asked.Count > 0 ? $" {string.Join(" and ", asked)} did: `log round {asked[^1]} done`." : "")}";
    }

    private static void CheckRound(AnswerableSheets sheets, DateOnly date, int? issue)
    {
        if (SheetFault.Of(sheets, date, issue) is { } fault)
        {
            throw new WrongInputException($"{Begun(fault.What)}.", $"{Begun(fault.Hint)}.");
        }
    }

    private static void CheckVoid(OpenSite site, LogEntry entry, LogKind kind)
    {
        List<LogEntry> there = [.. site.Ledger.Logbook.Effective().Where(e => e.Kind == kind && (entry.Where.Kind == PlaceKind.Site || e.Where == entry.Where))];
        if (there.Exists(e => e.Time == entry.Time))
        {
            return;
        }

        var near = there.OrderBy(e => Math.Abs(e.Time.Date.DayNumber - entry.Time.Date.DayNumber)).Take(MostNamed).OrderBy(e => e.Time).Select(e => $"{Time(e.Time)} {e.Where}").ToList();
        throw new WrongInputException(
            $"No {KindWord.Of(kind)} of {entry.Where} stands at {Time(entry.Time)}, so there is nothing to void.",
            near.Count > 0 ? $"The nearest {(near.Count == 1 ? "is" : "are")} {string.Join(", ", near)}. Write its time as it was logged." : $"The logbook has no {KindWord.Of(kind)} of {entry.Where} that counts.");
    }

    private static string Begun(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Sheet(DateOnly date, int issue) => string.Create(CultureInfo.InvariantCulture, $"{Date(date)}/{issue}");

    private static string Date(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Time(LogTime time) => Date(time.Date) + (time.Clock is { } clock ? clock.ToString(" HH:mm", CultureInfo.InvariantCulture) : "");
}
