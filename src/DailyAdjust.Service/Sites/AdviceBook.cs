using System.Globalization;
using System.Text.Json;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Tables;

namespace DailyAdjust.Service.Sites;

/// <summary>Advice as it was issued, read back from the sheets' own files; and as it would be.</summary>
public static class AdviceBook
{
    /// <summary>The newest issue of every date, both ends included; null = no end.</summary>
    public static IReadOnlyList<AdviceRow> Issued(OpenSite site, DateOnly? from, DateOnly? to) =>
        [.. site.Ledger.Sheets.Issued(from, to).NewestOfDates().SelectMany(sheet => Rows(site, sheet))];

    /// <summary>The newest issue of a date whose knowledge is that of an instant; empty where there is none.</summary>
    public static IReadOnlyList<AdviceRow> Issued(OpenSite site, MorningTime morning) =>
        site.Ledger.Sheets.Issued(morning.Date, morning.Date).LastOrDefault(sheet => sheet.AsOf == morning.AsOf) is { } sheet ? [.. Rows(site, sheet)] : [];

    /// <summary>The newest date's newest issue; null = nothing was issued yet.</summary>
    public static DateOnly? NewestDate(OpenSite site) => site.Ledger.Sheets.Issued().Select(sheet => (DateOnly?)sheet.Date).Max();

    /// <summary>What the newest sheet that was issued on a date is a function of; null = nothing was issued.</summary>
    /// <param name="site">Opened.</param>
    /// <param name="date">The sheet's.</param>
    /// <param name="asOf">Only a sheet with the knowledge of this instant, UTC; null = whichever.</param>
    public static (MorningInputs Inputs, MorningRecord Record)? Again(OpenSite site, DateOnly date, DateTimeOffset? asOf = null) =>
        site.Ledger.Mornings.Of(date).LastOrDefault(m => m.Step is MorningStep.Computed or MorningStep.Written && m.AsOf == (asOf ?? m.AsOf)) is { } record
            ? (MorningKnowledge.Of(site, date, record.AsOf, record.Issue, record.Watermark), record)
            : null;

    /// <summary>The sheet as it would be issued next, without issuing it.</summary>
    /// <param name="site">Opened.</param>
    /// <param name="morning">Which.</param>
    /// <param name="besides">Entries that the logbook does not have.</param>
    public static MorningSheet Would(OpenSite site, MorningTime morning, IReadOnlyList<LogEntry> besides)
    {
        var known = WouldKnow(site, morning);
        return MorningCalculation.Run(known with { Log = [.. known.Log, .. besides] });
    }

    /// <summary>What the sheet that would be issued next is a function of.</summary>
    public static MorningInputs WouldKnow(OpenSite site, MorningTime morning)
    {
        var issue = site.Ledger.Mornings.Of(morning.Date).Select(m => m.Issue).Append(0).Max() + 1;
        return MorningKnowledge.Of(site, morning.Date, morning.AsOf, issue);
    }

    public static IReadOnlyList<AdviceRow> Rows(MorningSheet sheet) => [.. sheet.Programs.Select(p => AdviceRow.Of(sheet.Date, sheet.Site.Clock, p))];

    /// <summary>A sheet's advice.json as it was issued.</summary>
    public static byte[] AdviceJson(OpenSite site, IssuedSheet sheet) => AdviceJson(site, sheet.Date, sheet.Issue);

    /// <summary>The same by the sheet's name.</summary>
    public static byte[] AdviceJson(OpenSite site, DateOnly date, int issue) => site.Ledger.Sheets.ReportFile(date, issue, ReportFiles.AdviceJson)();

    private static IEnumerable<AdviceRow> Rows(OpenSite site, IssuedSheet sheet)
    {
        using var document = JsonDocument.Parse(AdviceJson(site, sheet));
        var programs = document.RootElement.GetProperty("programs");
        return [.. programs.EnumerateArray().Select((program, i) => new AdviceRow(
            sheet.Date,
            new ProgramKey(Text(program, "controller")!, Text(program, "program")!),
            Number(program, "setting")!.Value,
            sheet.Lines[i].Advice,
            Number(program, "percent"),
            Number(program, "exactPercent"),
            Time(program, "nextStart"),
            Time(program, "finishes"),
            Text(program, "reason") ?? ""))];
    }

    private static string? Text(JsonElement program, string key) => program.GetProperty(key).GetString();

    private static double? Number(JsonElement program, string key) =>
        program.GetProperty(key) is { ValueKind: JsonValueKind.Number } number ? number.GetDouble() : null;

    // Times stand on the site's clock, without an offset; they are only printed again.
    private static DateTimeOffset? Time(JsonElement program, string key) =>
        Text(program, key) is { } text ? DateTimeOffset.Parse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal) : null;
}
