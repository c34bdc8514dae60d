using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Hosting;

/// <summary>What stopped the service. The host would end with exit code 0 after a failed worker: the code is set from here.</summary>
public sealed class ServiceFailure(IHostApplicationLifetime host, ILogger<ServiceFailure> log)
{
    /// <summary>Null = it was asked to stop.</summary>
    public Exception? What { get; private set; }

    /// <summary>A worker's work: whatever it throws stops the service.</summary>
    public async Task StopsAtAsync(Task work)
    {
        try
        {
            await work.ConfigureAwait(false);
        }
        catch (Exception failure)
        {
            What ??= failure;
            log.LogCritical(failure, "The service stops: {Failure}", failure.Message);
            host.StopApplication();
        }
    }
}
