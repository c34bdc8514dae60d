using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Health;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Hosting;

/// <summary>Sends a ping after each beat, beside the morning's work, which never waits for it.</summary>
public sealed class PingWorker(MorningBeat beat, ServiceOptions options, TimeProvider time, ILogger<PingWorker> log) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (options.PingAddress is not { } address)
        {
            return;
        }

        var ping = new Ping(address, time, log);
        try
        {
            await foreach (var _ in beat.AllAsync(stoppingToken).ConfigureAwait(false))
            {
                await ping.SendAsync(stoppingToken).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // Asked to stop.
        }
    }
}
