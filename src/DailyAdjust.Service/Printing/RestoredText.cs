using DailyAdjust.Ledger;
using DailyAdjust.Service.Backups;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Printing;

/// <summary>What a restore did, and what is left to do.</summary>
internal static class RestoredText
{
    public static IEnumerable<string> Lines(SiteFolder site, Restored restored)
    {
        yield return $"{site.Name}: the records are those of {restored.Backup} now.";
        if (restored.Newer is { } newer)
        {
            yield return Newer(newer, restored.Brought);
        }

        if (restored.Aside is { } aside)
        {
            yield return $"The records that were there are set aside in {aside}.";
        }
        else
        {
            yield return $"There were no records in {site.Path} before. If another course was meant, this one is a second of the same name: remove it.";
        }

        if (restored.PutBack.Count > 0)
        {
            yield return $"Put back into the inbox, for the backup does not know them: {string.Join(", ", restored.PutBack)}.";
        }

        if (restored.NotPutBack.Count > 0)
        {
            yield return $"Files in {site.Taken} that the records do not know; drop into the inbox what is to count: {string.Join(", ", restored.NotPutBack)}.";
        }

        if (restored.SheetsOnPaper.Count > 0)
        {
            yield return $"Sheets that people have and the records do not know: {Sheets(restored.SheetsOnPaper)}. Their numbers are not used again. "
                + "What was set at the boxes since has to be entered again: `dailyadjust log setting`.";
        }

        yield return "Next: `dailyadjust check`, then start the service again.";
    }

    private static string Newer(NewerRecords newer, bool brought) => newer.History switch
    {
        LedgerHistory.Unreadable => "What came after the backup cannot be read from the records that were there. Entries typed by `dailyadjust log` since then have to be typed again.",
        LedgerHistory.Other => "The records that were there had gone another way than the backup; nothing of them was brought along.",
        _ when newer.IsEmpty => "Nothing had come after the backup.",
        _ => $"{(brought ? "Brought along, for it came after the backup" : "Left out, for it came after the backup")}: {string.Join("; ", Parts(newer))}.",
    };

    private static IEnumerable<string> Parts(NewerRecords newer)
    {
        if (newer.Files.Count > 0)
        {
            yield return $"{Count(newer.Files.Count, "file")} ({string.Join(", ", newer.Files)})";
        }

        if (newer.Entries > 0)
        {
            yield return Count(newer.Entries, "logbook entry", "logbook entries");
        }

        if (newer.Descriptions > 0)
        {
            yield return Count(newer.Descriptions, "change of the site description", "changes of the site description");
        }

        if (newer.Sheets.Count > 0)
        {
            yield return $"{Count(newer.Sheets.Count, "sheet")} ({Sheets(newer.Sheets)})";
        }
    }

    private static string Sheets(IReadOnlyList<(DateOnly Date, int Issue)> sheets) =>
        string.Join(", ", sheets.Select(s => FormattableString.Invariant($"{s.Date:yyyy-MM-dd}/{s.Issue}")));

    private static string Count(long count, string one, string? many = null) => FormattableString.Invariant($"{count} {(count == 1 ? one : many ?? one + "s")}");
}
