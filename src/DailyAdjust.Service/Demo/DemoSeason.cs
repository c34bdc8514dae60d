using DailyAdjust.Service.Commands;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Hosting;
using DailyAdjust.Service.Printing;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Logging.Abstractions;
using Serilog.Extensions.Logging;

namespace DailyAdjust.Service.Demo;

/// <summary>What the demo leaves behind.</summary>
/// <param name="Site">The course.</param>
/// <param name="Folder">The last morning's files.</param>
/// <param name="Example">A program worth explaining.</param>
/// <param name="Answering">How to answer the sheet on its own morning; null = it is today's.</param>
internal sealed record DemoResult(SiteFolder Site, string Folder, string Example, string? Answering);

/// <summary>
/// The demo's season: the sample goes through the inbox like anybody's files, the balance runs from spring on, and the last mornings are
/// issued as they would have been.
/// </summary>
internal static class DemoSeason
{
    /// <summary>The crew has had the sheet since 6 July; before that it set the dials by eye, as the logbook shows.</summary>
    private const int MorningsIssued = 11;

    public static DemoResult Build(DirectoryInfo sample, HomeFolder home, CommandContext context, CancellationToken stop)
    {
        var reading = DescriptionFiles.Of(new SiteFolder("site", Path.Combine(sample.FullName, "site"))).Reading;
        var name = reading.Site?.Name ?? throw new InvalidDataException($"The demo's description has errors: {reading.Problems[0]}");
        var folder = home.Site(NewCommand.FolderName(name));
        if (!File.Exists(folder.SiteFile))
        {
            Copy(sample, folder);
        }

        using var logger = LogSetup.Create(home, context.Options, console: false);
        using var factory = new SerilogLoggerFactory(logger);
        using var site = folder.ToWrite(today: null, from: null, context.Time, out _);
        TakeInbox(site, context, factory.CreateLogger("demo"), stop);
        var last = WeatherBook.LastFinished(site)?.AddDays(1) ?? site.Newest.Start.AddDays(1);
        var next = site.Ledger.Mornings.Last()?.Date.AddDays(1) ?? last.AddDays(1 - MorningsIssued);
        Issue(site, next, last, context, factory, stop);
        new HomeIndex(home, factory.CreateLogger("demo")).Write();
        return new(
            folder, folder.ReportFolder(last), Example(site, last), AnsweringNote.Of(folder, site.Newest.Clock, ReportTime.Of(site.Newest, last).Instant, context.Time.GetUtcNow()));
    }

    private static void Copy(DirectoryInfo sample, SiteFolder folder)
    {
        Directory.CreateDirectory(folder.Inbox);
        foreach (var file in sample.GetDirectories("inbox")[0].GetFiles())
        {
            file.CopyTo(Path.Combine(folder.Inbox, file.Name), overwrite: true);
        }

        File.Copy(Path.Combine(sample.FullName, "site", "stations.csv"), folder.StationsFile, overwrite: true);
        File.Copy(Path.Combine(sample.FullName, "site", "site.yaml"), folder.SiteFile, overwrite: true);
    }

    private static void TakeInbox(OpenSite site, CommandContext context, Microsoft.Extensions.Logging.ILogger log, CancellationToken stop)
    {
        var inbox = new Inbox(site.Folder, context.Time);
        inbox.Look(); // The files were copied whole: the second look finds them at rest.
        foreach (var notice in new InboxIntake(site, inbox, context.Options, context.Time, log).TakeAll(inbox.Look(), stop))
        {
            context.Error.WriteLine(notice);
        }
    }

    private static void Issue(OpenSite site, DateOnly first, DateOnly last, CommandContext context, SerilogLoggerFactory factory, CancellationToken stop)
    {
        var count = last.DayNumber - first.DayNumber + 1;
        using var progress = Progress.Start(context.Error, "Mornings", Math.Max(count, 0));
        var quiet = new SiteMorning(site, NullLogger.Instance);
        for (var date = first; date < last; date = date.AddDays(1))
        {
            stop.ThrowIfCancellationRequested();
            quiet.Issue(date, ReportTime.Of(site.Newest, date).Instant, []);
            progress.Step();
        }

        if (first <= last)
        {
            new SiteMorning(site, factory.CreateLogger("demo")).Issue(last, ReportTime.Of(site.Newest, last).Instant, []);
            progress.Step();
        }
    }

    /// <summary>A program with something to explain: the first that the last sheet wants changed.</summary>
    private static string Example(OpenSite site, DateOnly last)
    {
        var lines = site.Ledger.Sheets.Issued(last, last).SelectMany(s => s.Lines).ToList();
        return (lines.Find(l => l.Asks) ?? lines[0]).Program.ToString();
    }
}
