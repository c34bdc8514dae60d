using DailyAdjust.Service.Configuration;

namespace DailyAdjust.Service.Hosting;

/// <summary>The loop of every worker: one look at once and one at every tick of a monotonic timer, each after the one before, until somebody asks to stop.</summary>
internal static class Looks
{
    /// <exception cref="Exception">What a look throws ends the loop.</exception>
    public static async Task RepeatAsync(ServiceOptions options, TimeProvider time, Func<CancellationToken, Task> look, CancellationToken stop)
    {
        try
        {
            using var timer = new PeriodicTimer(TimeSpan.FromSeconds(options.PollSeconds), time);
            do
            {
                await look(stop).ConfigureAwait(false);
            }
            while (await timer.WaitForNextTickAsync(stop).ConfigureAwait(false));
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Asked to stop.
        }
    }
}
