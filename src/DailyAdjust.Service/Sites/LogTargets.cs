using System.Globalization;
using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Service.Sites;

/// <summary>Whether what an entry speaks of is there: the sheet of a round, the entry that is void.</summary>
internal static class LogTargets
{
    private const int MostNamed = 3;

    /// <param name="site">Opened, without the entry.</param>
    /// <param name="entry">What somebody wants to add.</param>
    /// <exception cref="WrongInputException">It is not there.</exception>
    public static void Check(OpenSite site, LogEntry entry)
    {
        switch (entry.Kind)
        {
            case LogKind.Round when entry.Sheet is { } date:
                CheckRound(site, date, entry.Issue);
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

    private static void CheckRound(OpenSite site, DateOnly date, int? issue)
    {
        var issues = site.Ledger.Sheets.Issued(date, date).Select(s => s.Issue).ToList();
        if (issues.Count == 0)
        {
            throw new WrongInputException($"No sheet of {Date(date)} was issued, so its round says nothing.", "`dailyadjust advice` prints the newest sheet; `log setting C1/P2 90` says what stands on a dial.");
        }

        if (issue is { } asked && !issues.Contains(asked))
        {
            throw new WrongInputException(
                string.Create(CultureInfo.InvariantCulture, $"The sheet of {Date(date)} has no issue {asked}, so its round says nothing."),
                $"There {(issues.Count == 1 ? "is" : "are")} {string.Join(", ", issues.Select(i => Sheet(date, i)))}; a date alone means the newest.");
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

    private static string Sheet(DateOnly date, int issue) => string.Create(CultureInfo.InvariantCulture, $"{Date(date)}/{issue}");

    private static string Date(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Time(LogTime time) => Date(time.Date) + (time.Clock is { } clock ? clock.ToString(" HH:mm", CultureInfo.InvariantCulture) : "");
}
