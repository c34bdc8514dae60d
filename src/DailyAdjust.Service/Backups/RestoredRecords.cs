using System.Text.Json;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Reports;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Backups;

/// <summary>
/// What records of an earlier time must be told before they are worked with, where nothing newer could be brought along: that their open mail may have been sent, and
/// that sheets were issued since, whose numbers must not be given again.
/// </summary>
internal static class RestoredRecords
{
    private const string MaybeSent = "the records were restored from a backup, and it may have been sent after that was made";

    /// <returns>Sheets that lie in reports/ and are in no record.</returns>
    public static IReadOnlyList<(DateOnly Date, int Issue)> Settle(SiteLedger ledger, SiteFolder site, DateTimeOffset now)
    {
        foreach (var message in ledger.Outbox.Open())
        {
            ledger.Outbox.RecordEnded(message.MessageId, MessageState.Uncertain, MaybeSent);
        }

        var lost = new List<(DateOnly, int)>();
        foreach (var date in ReportFolders.WithFile(site, ReportFiles.AdviceJson))
        {
            var newest = IssueIn(Path.Combine(site.ReportFolder(date), ReportFiles.AdviceJson));
            var known = ledger.Mornings.Of(date);
            if (newest <= known.Select(m => m.Issue).Append(0).Max() || known.Any(m => m.Step == MorningStep.Computed))
            {
                continue;
            }

            lost.Add((date, newest));
            UseUpTo(ledger, date, newest, now);
        }

        return lost;
    }

    /// <summary>Begun and given up, so that the next sheet of the date has the next number.</summary>
    private static void UseUpTo(SiteLedger ledger, DateOnly date, int issue, DateTimeOffset now)
    {
        void GiveUp() => ledger.Mornings.RecordMissed(date, now, CalculationVersions.Calculation, CalculationVersions.TimeZones);

        if (ledger.Mornings.Of(date) is [.., { Step: MorningStep.Due }])
        {
            GiveUp();
        }

        while (ledger.Mornings.Of(date).Select(m => m.Issue).Append(0).Max() < issue)
        {
            ledger.Mornings.Begin(date, now, CalculationVersions.Calculation, CalculationVersions.TimeZones);
            GiveUp();
        }
    }

    /// <summary>0 = the file does not say.</summary>
    private static int IssueIn(string path)
    {
        try
        {
            using var json = JsonDocument.Parse(File.ReadAllBytes(path));
            return json.RootElement.TryGetProperty("revision", out var revision) && revision.TryGetInt32(out var issue) ? Math.Clamp(issue, 0, 1000) : 0;
        }
        catch (Exception e) when (e is JsonException or IOException or InvalidOperationException)
        {
            return 0;
        }
    }
}
