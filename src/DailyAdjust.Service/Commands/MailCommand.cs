using System.CommandLine;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Reports.Words;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Hosting;
using DailyAdjust.Service.Mail;
using DailyAdjust.Service.Printing;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Logging;
using Serilog.Extensions.Logging;

namespace DailyAdjust.Service.Commands;

/// <summary>`mail`: what became of mailed sheets; a test message; another try now.</summary>
internal static class MailCommand
{
    /// <summary>The days that are listed.</summary>
    private const int ListedDays = 14;

    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var test = new Option<string?>("--test") { Description = "Sends a test message to one address and says what the server answered.", HelpName = "ADDRESS" };
        var now = new Option<bool>("--now") { Description = "Tries now what waits for its next try." };
        return new AppCommand(
            "mail",
            "What became of mailed sheets: sent, waiting and why, refused; --test sends a test message.",
            "Lists the sheets of the last 14 days that were promised to somebody, of all sites or the one that --site names. How mail is set up stands in docs/mail.md.\nWith --test and --now the exit code is 1 where a message was not taken, and where the running service is sending at the same time.",
            "mail",
            "mail --test super@example.net",
            "mail --now")
        {
            test,
            now,
        }.Runs(global, time, (context, stop) => context.Parsed.GetValue(test) is { } to ? TestAsync(context, to, stop)
            : context.Parsed.GetValue(now) ? NowAsync(context, stop)
            : Task.FromResult(List(context)));
    }

    private static int List(CommandContext context)
    {
        foreach (var folder in context.Sites())
        {
            var messages = Newest(folder, context.Time.GetUtcNow());
            if (messages.Count == 0)
            {
                context.Out.WriteLine($"{folder.Name}: no sheet was mailed in the last {ListedDays} days.");
            }

            foreach (var message in messages)
            {
                context.Out.WriteLine($"{folder.Name}: {MailLines.Of(message)}");
            }
        }

        if (context.Options.Mail is null)
        {
            context.Error.WriteLine("No mail is set up. docs/mail.md says how.");
        }

        return ExitCode.Done;
    }

    private static IReadOnlyList<OutboxMessage> Newest(SiteFolder folder, DateTimeOffset now)
    {
        if (!File.Exists(folder.LedgerFile))
        {
            return [];
        }

        using var site = OpenSite.Open(folder, LedgerMode.Read);
        var today = site.Versions.Count > 0 ? site.Newest.Clock.DateOf(now) : DateOnly.FromDateTime(now.UtcDateTime);
        return site.Ledger.Outbox.Between(today.AddDays(-ListedDays), DateOnly.MaxValue);
    }

    private static async Task<int> TestAsync(CommandContext context, string to, CancellationToken stop)
    {
        var mail = SetUp(context);
        var address = MailCheck.Address(to) ?? throw new WrongInputException($"--test {to}: not one address.", "Write it as super@example.net.");
        var from = MailCheck.Address(mail.From)!;
        var account = MailAccount.Open(mail, context.Home);
        using var message = SheetMessage.Headed(
            SheetMessage.IdOf("test", DateOnly.FromDateTime(context.Time.GetUtcNow().UtcDateTime), 0, Guid.NewGuid().ToString(), from),
            MailWords.TestSubject, from, address, context.Time.GetUtcNow(), SheetMessage.Text("plain", MailWords.TestText(Environment.MachineName)));
        var outcome = await SmtpDelivery.SendAsync(account, message, () => { }, stop).ConfigureAwait(false);
        var server = FormattableString.Invariant($"{mail.Server}:{mail.UsedPort} ({mail.Security}{(mail.User.Length > 0 ? ", login as " + mail.User : "")})");
        if (outcome.Result == MailResult.Taken)
        {
            await context.Out.WriteLineAsync($"Sent to {address.Address} by {server}. The server answered: {outcome.Said}").ConfigureAwait(false);
            return ExitCode.Done;
        }

        await context.Error.WriteLineAsync($"Not sent to {address.Address} by {server}: {outcome.Said}.").ConfigureAwait(false);
        await context.Error.WriteLineAsync("docs/mail.md says what each failure means.").ConfigureAwait(false);
        return ExitCode.Failed;
    }

    private static async Task<int> NowAsync(CommandContext context, CancellationToken stop)
    {
        SetUp(context);
        await using var logger = LogSetup.Create(context.Home, context.Options, console: false);
        using var factory = new SerilogLoggerFactory(logger);
        return await SendAsync(context, context.Sites(), factory.CreateLogger<SiteOutbox>(), atOnce: true, stop).ConfigureAwait(false) ? ExitCode.Done : ExitCode.Failed;
    }

    /// <summary>Sends what the sites have promised and says what came of it; after a failure of the server no other message is tried.</summary>
    /// <returns>Whether everything that was due is sent; of what another process sends just now nobody knows yet.</returns>
    public static async Task<bool> SendAsync(CommandContext context, IReadOnlyList<SiteFolder> sites, ILogger log, bool atOnce, CancellationToken stop)
    {
        var allSent = true;
        foreach (var folder in sites)
        {
            var sent = await new SiteOutbox(folder, context.Home, SetUp(context), context.Time, log).SendAsync(atOnce, stop).ConfigureAwait(false);
            if (sent is null)
            {
                // Whether that one gets it through is not known here.
                allSent = false;
                await context.Error.WriteLineAsync($"{folder.Name}: the running service is sending its mail just now, so nothing was tried here; `dailyadjust mail` says what came of it.").ConfigureAwait(false);
                continue;
            }

            foreach (var (message, _) in sent)
            {
                // One that gave way to a newer sheet is no failure.
                var isSent = message.State is MessageState.Sent or MessageState.Replaced;
                allSent &= isSent;
                await (isSent ? context.Out : context.Error).WriteLineAsync($"{folder.Name}: {MailLines.Of(message)}").ConfigureAwait(false);
            }

            if (sent.Any(s => s.Outcome?.IsOfServer == true))
            {
                break;
            }
        }

        return allSent;
    }

    private static MailOptions SetUp(CommandContext context) =>
        context.Options.Mail ?? throw new WrongInputException("No mail is set up.", $"It stands under \"Mail\" in {context.Home.SettingsFile}; docs/mail.md says how.");
}
