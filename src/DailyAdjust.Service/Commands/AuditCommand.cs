using System.CommandLine;
using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Audits;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Words;
using DailyAdjust.Service.Printing;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`audit`: catch cups to rate, uniformity and multiplier, stored as measured.</summary>
internal static class AuditCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var file = new Argument<string>("FILE") { Description = "CSV with a row per cup: where, volume (mL), throat diameter (in), run time (min), ..." };
        var dryRun = new Option<bool>("--dry-run") { Description = "Prints what would be stored and changes nothing." };
        var range = new RangeOptions();
        return new AppCommand(
            "audit",
            "Catch-cup readings to precipitation rate, lower-quarter uniformity and run-time multiplier, stored in stations.csv as measured.",
            "Units stand in the headers, in brackets. A cell that cannot be read refuses the whole file: nothing is stored. Only the cells of rate, rate known and\ndistribution uniformity change in stations.csv. Columns of the file and what the numbers mean: docs/audit.md.",
            "audit cups.csv --dry-run",
            "audit cups.csv --site mill-creek")
        {
            file, dryRun, range.Format,
        }.Runs(global, time, context => Run(context, context.Parsed.GetValue(file)!, context.Parsed.GetValue(dryRun), range));
    }

    private static int Run(CommandContext context, string path, bool dryRun, RangeOptions range)
    {
        var folder = context.OneSite();
        var files = DescriptionFiles.Of(folder);
        var site = PlanningInput.SiteOf(files);
        var audits = StationAudit.Of(Cups(context, path, site));
        var update = MeasuredUpdate.Of(files, site, audits);

        var isTable = context.Parsed.GetValue(range.Format) is not ("csv" or "json");
        range.Print(context, isTable ? AuditTable.Summary(site, audits) : AuditTable.Of(audits));
        var sentences = isTable ? context.Out : context.Error;
        string[] words = isTable ? ["", .. AuditWords.Of(site, audits), "", .. AuditWords.Cautions, ""] : [.. AuditWords.Of(site, audits)];
        foreach (var sentence in words)
        {
            sentences.WriteLine(sentence);
        }

        if (!dryRun)
        {
            update.Write(folder);
        }

        sentences.Write(ChangesText.Of(update.Changes, folder.StationsFile, dryRun));
        return ExitCode.Done;
    }

    /// <exception cref="WrongInputException">Anything in the file is wrong.</exception>
    private static IReadOnlyList<CatchCups> Cups(CommandContext context, string path, Site site)
    {
        var reading = CatchCupsReader.Read(Path.GetFileName(path), DescriptionFiles.Decode(context.ReadFile(path)), site);
        return reading.Problems.Count == 0
            ? reading.Runs
            : throw new WrongInputException(string.Join(Environment.NewLine, reading.Problems), "Nothing was stored. docs/audit.md describes the columns.");
    }
}
