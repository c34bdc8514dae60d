using System.Globalization;
using System.Text;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Json;

namespace DailyAdjust.Reports.Words;

/// <summary>What mail says of a sheet, and a sheet of mail.</summary>
public static class MailWords
{
    public const string TestSubject = "DailyAdjust: test of mail";

    private const int MostNamed = 3;
    private const int LongestLine = 200;

    /// <summary>The text of a test message.</summary>
    public static string TestText(string host) =>
        $"This is a test of the mail of DailyAdjust on {OneLine(host)}.\n\nIf you can read it, sheets can be sent to this address. It asks for nothing.\n";

    /// <summary>The mail of a sheet has not gone out so far.</summary>
    public static string NotYet(IReadOnlyList<string> recipients, DateOnly date, int issue, int tries, string said) =>
        $"{Mail(recipients, date, issue)} not gone out yet, {CommonWords.Count(tries, "try", "tries")} so far{(said.Length > 0 ? ": " + OneLine(said) : "")}.";

    /// <summary>The server will not have it.</summary>
    public static string Refused(IReadOnlyList<string> recipients, DateOnly date, int issue, string said) =>
        $"{Mail(recipients, date, issue)} been refused and is not tried again: {OneLine(said)}.";

    /// <summary>It was too old before a server took it.</summary>
    public static string GivenUp(IReadOnlyList<string> recipients, DateOnly date, int issue, string said) =>
        $"{Mail(recipients, date, issue)} been given up: {OneLine(said)}.";

    /// <summary>It may have arrived.</summary>
    public static string Uncertain(IReadOnlyList<string> recipients, DateOnly date, int issue, string said) =>
        $"{Mail(recipients, date, issue)} perhaps not arrived: {OneLine(said)}. Ask whether it is there.";

    /// <summary>Text from outside on one line: nothing in it can begin a header, a line or a direction of its own; cut where it is longer than anybody reads.</summary>
    public static string OneLine(string text)
    {
        var line = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
        {
            var harmless = Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse) && rune != Rune.ReplacementChar;
            line.Append(harmless ? rune.ToString() : " ");
            if (line.Length >= LongestLine)
            {
                line.Append(" ...");
                break;
            }
        }

        return string.Join(' ', line.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    /// <summary>"Mill Creek, Thu 16 July: 8 changes at 4 boxes (skip 1, change 6 and turn on 1)".</summary>
    internal static Phrase Subject(IssuedAdvice advice, Site site, DateOnly date, int issue, int? replaces)
    {
        var which = replaces is { } earlier ? $", issue {SiteWords.Count(issue)} (replaces issue {SiteWords.Count(earlier)})" : Phrase.Empty;
        return $"{OneLine(site.Name)}, {SiteWords.Date(date)}{which}: {What(advice)}";
    }

    private static Phrase What(IssuedAdvice advice)
    {
        if (advice.Freshness.NoAdvice is not null)
        {
            return new("no sound advice, leave every dial as it is set");
        }

        var counts = RoundCounts.Of(advice.Programs);
        var boxes = advice.Programs.Where(p => p.NeedsVisit).Select(p => p.Key.Controller).Distinct(StringComparer.Ordinal).Count();
        List<Phrase> what = [counts.Visit == 0
            ? new Phrase("no dial to turn")
            : $"{Phrase.Count(counts.Visit, "change", "changes")} at {Phrase.Count(boxes, "box", "boxes")} ({RoundWords.Acts(counts)})"];
        if (advice.StationsByHand > 0)
        {
            what.Add($"{Phrase.Count(advice.StationsByHand, "station", "stations")} to run by hand");
        }

        if (advice.HandRuns.Count > 0)
        {
            what.Add($"{Phrase.Count(advice.HandRuns.Count, "order", "orders")} to water by hand");
        }

        if (advice.BoxesToVerify.Count + advice.ClocksToMove.Count > 0)
        {
            var verify = advice.BoxesToVerify.Select(b => b.Controller).Concat(advice.ClocksToMove).Distinct(StringComparer.Ordinal).Count();
            what.Add($"{Phrase.Count(verify, "box", "boxes")} to verify");
        }

        if (advice.StartBoxes.Count > 0)
        {
            what.Add($"starts or stations to change at {Phrase.Count(advice.StartBoxes.Count, "box", "boxes")}");
        }

        return Phrase.Join("; ", what);
    }

    private static string Mail(IReadOnlyList<string> recipients, DateOnly date, int issue)
    {
        List<string> named = [.. recipients.Take(MostNamed).Select(OneLine)];
        if (recipients.Count > MostNamed)
        {
            named.Add($"{SiteWords.Count(recipients.Count - MostNamed)} more");
        }

        return $"The mail of sheet {CodeWords.SheetId(date, issue)} to {CommonWords.List(named)} has";
    }
}
