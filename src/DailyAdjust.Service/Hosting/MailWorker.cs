using DailyAdjust.Ledger;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Mail;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Hosting;

/// <summary>
/// Sends promised mail beside the morning's work, which never waits for it: asks the ledgers at start and at every look what is due, one server at a
/// time, one time limit a message.
/// </summary>
public sealed class MailWorker(SiteRunners sites, HomeFolder home, ServiceOptions options, TimeProvider time, ServiceFailure failed, ILogger<MailWorker> log)
    : BackgroundService
{
    private readonly ToldOnce _told = new();

    protected override Task ExecuteAsync(CancellationToken stoppingToken) =>
        options.Mail is { } mail ? failed.StopsAtAsync(WorkAsync(mail, stoppingToken)) : Task.CompletedTask;

    private async Task WorkAsync(MailOptions mail, CancellationToken stop)
    {
        TellAtStart(mail);
        await Looks.RepeatAsync(options, time, s => LookAsync(mail, s), stop).ConfigureAwait(false);
    }

    /// <summary>A password that cannot be had is told and keeps no sheet from being made; its mail waits until that is put right.</summary>
    private void TellAtStart(MailOptions mail)
    {
        log.LogInformation("Mail: {Count} recipients by {Server}:{Port} ({Security})", mail.Recipients.Count, mail.Server, mail.UsedPort, mail.Security);
        foreach (var unknown in MailCheck.UnknownSites(mail, home))
        {
            log.LogWarning("{Problem}", unknown);
        }

        try
        {
            MailAccount.Open(mail, home);
        }
        catch (WrongInputException wrong)
        {
            log.LogError("{Problem} {Hint}", wrong.Message, wrong.Hint);
        }
    }

    private async Task LookAsync(MailOptions mail, CancellationToken stop)
    {
        foreach (var folder in sites.All().Select(s => s.Folder))
        {
            try
            {
                var sent = await new SiteOutbox(folder, home, mail, time, log).SendAsync(atOnce: false, stop).ConfigureAwait(false);
                if (_told.Recovered(folder.Name))
                {
                    log.LogInformation("{Site}: its mail works again", folder.Name);
                }

                if (sent is { Count: > 0 } && sent[^1].Outcome?.IsOfServer == true)
                {
                    // The server is the same for all sites.
                    return;
                }
            }
            catch (LedgerException failure) when (failure.Trouble == LedgerTrouble.Busy)
            {
                log.LogDebug("{Site}: {Failure}", folder.Name, failure.Message);
            }
            catch (Exception failure) when (failure is not OperationCanceledException && !DiskTrouble.IsFailed(failure))
            {
                var words = DiskTrouble.InWords(failure);
                if (_told.IsNews(folder.Name, words))
                {
                    log.LogError(DiskTrouble.SpeaksForItself(failure) ? null : failure, "{Site}: its mail is held back, tried again at every look: {Failure}", folder.Name, words);
                }
            }
        }
    }
}
