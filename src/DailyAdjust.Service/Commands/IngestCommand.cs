using System.CommandLine;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`ingest`: reads files as if they had been dropped into the inbox.</summary>
internal static class IngestCommand
{
    /// <summary>What a person reads on a terminal before giving up.</summary>
    private const int ProblemsShown = 12;

    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var files = new Argument<string[]>("FILE") { Description = "Weather CSV, logbook.csv or a filled-in round.csv.", Arity = ArgumentArity.OneOrMore };
        var from = GlobalOptions.DateOption("--from", "An edited site.yaml or stations.csv holds from this date, instead of from the day after.");
        return new AppCommand(
            "ingest",
            "Reads files as if dropped into the inbox; each ends with a line `N rows read, N set aside, N refused`.",
            "Weather is told by its name (the patterns of site.yaml), a logbook and a round sheet by their header. The same file twice adds\nnothing. A file that cannot be used is copied to inbox/refused with every problem beside it.\nExit code 2 if a file or any row was refused (the other rows count; nothing need be taken back), 0 if every row was read or set aside.",
            "ingest yard-2026-06.csv logbook.csv",
            "ingest ~/Downloads/round.csv --site mill-creek")
        {
            files,
            from,
        }.Runs(global, time, context => Run(context, context.Parsed.GetValue(files)!, context.Parsed.GetValue(from)));
    }

    private static int Run(CommandContext context, string[] files, DateOnly? from)
    {
        using var site = context.OneSite().ToWrite(context.Date, from, context.Time, out var badEdit);
        if (badEdit is not null)
        {
            context.Error.WriteLine(badEdit);
        }

        return TakeAll(context, site, files, new(context.Time.GetUtcNow(), ""));
    }

    /// <summary>Takes files and says what became of each.</summary>
    /// <param name="context">The command's.</param>
    /// <param name="site">Opened for writing.</param>
    /// <param name="files">Their paths.</param>
    /// <param name="said">When and by whom the answers of a round sheet are said.</param>
    /// <returns>The exit code.</returns>
    public static int TakeAll(CommandContext context, OpenSite site, string[] files, RoundSaid said)
    {
        var taken = Taken(context, site, files, said);
        foreach (var (file, report) in taken)
        {
            context.Out.WriteLine($"{file}{(report.What.Length > 0 ? ": " + report.What : "")}{(report.Known ? ", known already: nothing is new" : "")}");
            foreach (var problem in report.Problems.Take(ProblemsShown))
            {
                context.Error.WriteLine(problem);
            }

            if (report.Problems.Count > ProblemsShown)
            {
                context.Error.WriteLine(FormattableString.Invariant($"... and {report.Problems.Count - ProblemsShown} more of the kind{(report.Refused ? ", all of them in the .why.txt in inbox/refused" : "")}."));
            }

            foreach (var answer in BookedAnswers.Lines(site.Newest.Controllers, report.Booked))
            {
                context.Out.WriteLine(answer);
            }

            context.Out.WriteLine(report.Counts);
        }

        var (refusedFiles, refusedRows) = (taken.Count(t => t.Report.Refused), taken.Where(t => !t.Report.Refused).Sum(t => t.Report.RowsRefused));
        if (refusedFiles + refusedRows == 0)
        {
            return ExitCode.Done;
        }

        // On the error stream: what a script reads of the output ends with the counts.
        var isAnyTaken = taken.Any(t => t.Report.RowsRead + t.Report.RowsSetAside > 0);
        context.Error.WriteLine(FormattableString.Invariant($"{(isAnyTaken ? "Not everything" : "Nothing")} was taken: {Refused(refusedFiles, "file")}{(refusedFiles > 0 && refusedRows > 0 ? " and " : "")}{Refused(refusedRows, "row")} refused.{(isAnyTaken ? " All other rows count." : "")}"));
        return ExitCode.WrongInput;
    }

    private static string Refused(long count, string what) =>
        count == 0 ? "" : FormattableString.Invariant($"{count} {what}{(count == 1 ? "" : "s")}");

    private static List<(string File, IntakeReport Report)> Taken(CommandContext context, OpenSite site, string[] files, RoundSaid said)
    {
        using var progress = Printing.Progress.Start(context.Error, "Reading", files.Length);
        var reports = new List<(string, IntakeReport)>();
        foreach (var file in files)
        {
            reports.Add((file, Take(context, site, file, said, progress.Within)));
            progress.Step();
        }

        return reports;
    }

    private static IntakeReport Take(CommandContext context, OpenSite site, string path, RoundSaid said, Action<double> read)
    {
        var name = Path.GetFileName(path);
        using var content = RegularFile.Open(path, context.Options.LargestFileMegabytes * 1_000_000L, followLinks: true);
        var report = content.File is { } file
            ? new FileIntake(site, context.Time.GetUtcNow(), read) { Said = said }.Take(name, file)
            : IntakeReport.ForRefused(name, $"{path}: {content.Why}");
        if (report.Refused && content.Trouble is FileTrouble.None or FileTrouble.TooLarge)
        {
            Inbox.KeepRefused(site.Folder, name, content.File?.ReadAll(), report.Problems);
        }

        return report;
    }
}
