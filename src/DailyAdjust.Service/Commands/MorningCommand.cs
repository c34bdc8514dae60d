using System.CommandLine;
using System.Runtime.InteropServices;
using DailyAdjust.Core.Sites;
using DailyAdjust.Ledger;
using DailyAdjust.Reports;
using DailyAdjust.Service.Fetching;
using DailyAdjust.Service.Health;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Hosting;
using DailyAdjust.Service.Mail;
using DailyAdjust.Service.Paper;
using DailyAdjust.Service.Printing;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Logging;
using Serilog.Extensions.Logging;

namespace DailyAdjust.Service.Commands;

/// <summary>`morning`: one morning now.</summary>
internal static class MorningCommand
{
    /// <summary>Between two looks at a file that has only just been written.</summary>
    private static readonly TimeSpan BetweenLooks = TimeSpan.FromSeconds(1);

    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var from = GlobalOptions.DateOption("--from", "An edited site.yaml or stations.csv holds from this date, instead of from the day after.");
        var at = new AtOption();
        var visit = new VisitOption();
        var print = new Option<bool>("--print") { Description = "Also prints report.txt; report-full.txt beside it has more of the sheet." };
        var pdf = new Option<bool>("--pdf") { Description = "Also prints the page as report.pdf, by an installed Chromium (setting Pdf)." };
        var noMail = new Option<bool>("--no-mail") { Description = "Mails the sheet to nobody." };
        return new AppCommand(
            "morning",
            "One morning now: takes the inbox, closes the days, advises, writes the reports.",
            "Takes all sites, or the one that --site names. Sources with a `pull` are asked first, for a minute at most (PullWaitSeconds). Again on the same date it writes the next issue, which replaces the one before.\nWith --date the morning is as of the report hour of that date: later readings and entries are not used even if they are there.\nWhere site.yaml has several report times that is the first of them; --at makes the look of another, which is the date's next issue.",
            "morning",
            "morning --site mill-creek --print",
            "morning --visit C2",
            "morning --date 2026-06-09",
            "morning --date 2026-06-09 --at 16:00")
        {
            at.Option,
            from,
            print,
            pdf,
            visit.Option,
            noMail,
        }.Runs(global, time, context => Run(context, new(context.Parsed.GetValue(from), context.Parsed.GetValue(print), context.Parsed.GetValue(pdf), !context.Parsed.GetValue(noMail)), at, visit));
    }

    private static int Run(CommandContext context, Given given, AtOption at, VisitOption visit)
    {
        using var logger = LogSetup.Create(context.Home, context.Options, console: false);
        using var factory = new SerilogLoggerFactory(logger);
        var log = factory.CreateLogger<SiteMorning>();
        var runs = new SiteRuns(context, log).All(context.Sites(), async (mine, folder, turn) =>
        {
            // Before the ledger is opened: a slow server keeps nobody else from it, nor another site from its turn.
            using var pulls = new SitePulls(folder, new PullTools { Time = context.Time, Log = log });
            if (context.Date is null && context.Options.PullWaitSeconds > 0 && Described(folder) is { } described)
            {
                await pulls.NowAsync(described, TimeSpan.FromSeconds(context.Options.PullWaitSeconds), CancellationToken.None).ConfigureAwait(false);
            }

            using (await turn().ConfigureAwait(false))
            {
                RunSite(mine, folder, given, (at, visit), pulls, log);
            }
        });
        if (runs.IsCutShort)
        {
            return runs.Code;
        }

        new HomeIndex(context.Home, log).Write();
        if (new MorningBeat(context.Home, context.Time, factory.CreateLogger<MorningBeat>()).Beat() && context.Options.PingAddress is { } address)
        {
            new Ping(address, context.Time, log).SendAsync(CancellationToken.None).GetAwaiter().GetResult();
        }

        if (given.Mail && context.Options.Mail is not null)
        {
            Mail(context, runs.Done, log);
        }

        return runs.Code;
    }

    private static void RunSite(CommandContext context, SiteFolder folder, Given asked, (AtOption At, VisitOption Visit) options, SitePulls pulls, ILogger log)
    {
        using var site = folder.ToWrite(context.Date, asked.From, context.Time, out var badEdit);
        var given = options.At.Of(context, site.Newest, context.Date);
        List<string> notices = badEdit is null ? [] : [badEdit];
        notices.AddRange(TakeInbox(context, site, log));
        notices.AddRange(TakeFolders(context, site, log));
        notices.AddRange(pulls.Notices(site.Newest));
        foreach (var notice in notices)
        {
            context.Error.WriteLine($"{folder.Name}: {notice}");
        }

        var before = TimeSpan.FromMinutes(context.Options.WorkBeginsMinutesBefore);
        var (date, asOf) = given ?? MorningTime.Of(site.Newest, context.Date, context.Time.GetUtcNow(), before);
        MorningKnowledge.RefuseBeforeStart(site, site.Versions, date);
        RefuseToCome(date, site.Newest.Clock.DateOf(context.Time.GetUtcNow()));
        if (options.Visit.Entries(context, site.Newest, new(date, asOf)) is { Count: > 0 } unplanned)
        {
            // As `log visit` would: a sheet can be reckoned again from the logbook alone.
            new FileIntake(site, context.Time.GetUtcNow()).Add(unplanned);
        }

        notices.AddRange(MailNotices.Of(site, date));
        var morning = new SiteMorning(site, log) { Promises = SheetPromises.Of(context.Options, context.Time), MailsNew = asked.Mail };
        morning.RecordMissed(MorningPlan.MissedBefore(site.Ledger.Mornings.Last()?.Date, date));
        var issued = morning.Issue(date, asOf, notices)!;
        var visits = issued.Sheet.Programs.Count(p => p.NeedsVisit);
        context.Out.WriteLine(FormattableString.Invariant(
            $"{folder.Name}: sheet {date:yyyy-MM-dd}/{issued.Issue}, {visits} of {issued.Sheet.Programs.Count} programs to change: {Path.Combine(issued.Folder, ReportFiles.Text)}"));
        if (asked.Pdf)
        {
            PrintPage(context, issued.Folder, log);
        }

        if (asked.Print)
        {
            context.Out.WriteLine();
            context.Out.Write(File.ReadAllText(Path.Combine(issued.Folder, ReportFiles.Text)));
        }

        if (AnsweringNote.Of(folder, site.Newest.Clock, asOf, context.Time.GetUtcNow()) is { } note)
        {
            context.Out.WriteLine(note);
        }
    }

    /// <summary>The sheet is there; whether it can be printed changes no exit code. Who ends the program meanwhile ends the browser too.</summary>
    /// <exception cref="OperationCanceledException">Somebody did.</exception>
    private static void PrintPage(CommandContext context, string folder, ILogger log)
    {
        using var stop = new CancellationTokenSource();
        using var interrupted = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
        using var terminated = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
        try
        {
            var browser = Browser.Find(context.Options.Pdf) ?? throw new IOException($"no browser that prints was found (setting Pdf: {context.Options.Pdf}).");
            if (!SheetPrint.MakeAsync(folder, new PagePrint(browser, TimeSpan.FromSeconds(context.Options.PdfSeconds)), stop.Token).GetAwaiter().GetResult())
            {
                throw new IOException("the page changed while it was printed.");
            }
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            log.LogWarning("No {File}: {Failure}", ReportFiles.Print, failure.Message);
            context.Error.WriteLine($"No {ReportFiles.Print}: {failure.Message}");
        }

        void Stop(PosixSignalContext signal)
        {
            signal.Cancel = true;
            stop.Cancel();
        }
    }

    /// <summary>The sheets are there and their mail promised; whether a server takes it now changes nothing of the morning, so it changes no exit code.</summary>
    private static void Mail(CommandContext context, IReadOnlyList<SiteFolder> sites, ILogger log)
    {
        try
        {
            if (MailCommand.SendAsync(context, sites, log, atOnce: false, CancellationToken.None).GetAwaiter().GetResult())
            {
                return;
            }
        }
        catch (Exception failure) when (failure is LedgerException or IOException or UnauthorizedAccessException)
        {
            context.Error.WriteLine($"The mail was not sent: {failure.Message}");
        }

        context.Error.WriteLine("What waits is tried again by `dailyadjust serve`, or by `dailyadjust mail --now`; docs/mail.md says what each failure means.");
    }

    /// <summary>The description as it stands, or, after a bad edit, the one that holds; null = there never was a good one.</summary>
    private static Site? Described(SiteFolder folder)
    {
        if (DescriptionFiles.Of(folder).Reading.Site is { } site)
        {
            return site;
        }

        if (!File.Exists(folder.LedgerFile))
        {
            return null;
        }

        using var open = OpenSite.Open(folder, LedgerMode.Read);
        return open.Versions.Count > 0 ? open.Newest : null;
    }

    private static IReadOnlyList<string> TakeFolders(CommandContext context, OpenSite site, ILogger log)
    {
        var folders = new SiteFolders(site.Folder, context.Options, context.Time, log);
        var news = folders.Look(site);
        folders.Take(site, news, CancellationToken.None);
        if (folders.Waiting > 0)
        {
            Thread.Sleep(BetweenLooks);
            folders.Take(site, folders.Look(site), CancellationToken.None);
        }

        return folders.Notices;
    }

    /// <summary>A sheet is never taken back, and the days up to it would count as missed.</summary>
    private static void RefuseToCome(DateOnly date, DateOnly today)
    {
        if (date > today.AddDays(1))
        {
            throw new WrongInputException(FormattableString.Invariant($"{date:yyyy-MM-dd} has not come: by this machine's clock it is {today:yyyy-MM-dd}."), "Give a date up to tomorrow, or set the clock.");
        }
    }

    private static IReadOnlyList<string> TakeInbox(CommandContext context, OpenSite site, ILogger log)
    {
        var inbox = new Inbox(site.Folder, context.Time);
        var look = inbox.Look();
        if (look.Waiting > 0)
        {
            Thread.Sleep(BetweenLooks);
            look = inbox.Look();
        }

        if (look.Waiting > 0)
        {
            context.Error.WriteLine($"{site.Folder.Name}: {look.Waiting} files in the inbox are still being written and are left for the next morning.");
        }

        foreach (var ignored in look.Ignored)
        {
            context.Error.WriteLine($"{site.Folder.Name}: {ignored}");
        }

        var notices = new InboxIntake(site, inbox, context.Options, context.Time, log).TakeAll(look, CancellationToken.None);
        return [.. look.Trouble is { } clause ? [$"The inbox {site.Folder.Inbox} {clause}: nothing was taken from it."] : Array.Empty<string>(), .. notices, .. inbox.Notices];
    }

    /// <summary>What the command line asks for.</summary>
    /// <param name="From">The first date on which an edit holds.</param>
    /// <param name="Print">Print the sheet.</param>
    /// <param name="Pdf">Print its page as PDF.</param>
    /// <param name="Mail">Mail the sheet.</param>
    private sealed record Given(DateOnly? From, bool Print, bool Pdf, bool Mail);
}
