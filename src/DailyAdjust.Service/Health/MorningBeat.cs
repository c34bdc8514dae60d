using System.Threading.Channels;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Health;

/// <summary>After a morning: the heartbeat file, and whoever waits for it.</summary>
public sealed class MorningBeat(HomeFolder home, TimeProvider time, ILogger<MorningBeat> log)
{
    /// <summary>One that nobody has heard yet stands for all before it.</summary>
    private readonly Channel<DateTimeOffset> _beats = Channel.CreateBounded<DateTimeOffset>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });

    private readonly Lock _oneAtATime = new();

    /// <summary>Beats if all mornings are done. Never throws: the sheets are out, and a monitor that hears nothing alarms by itself.</summary>
    /// <returns>Whether it beat.</returns>
    public bool Beat()
    {
        try
        {
            lock (_oneAtATime)
            {
                var now = time.GetUtcNow();
                return Heartbeat.Beat(home, now) && _beats.Writer.TryWrite(now);
            }
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            log.LogError("{File} could not be written: {Failure}", home.HeartbeatFile, failure.Message);
            return false;
        }
    }

    /// <summary>Beats as they come, until it is stopped.</summary>
    public IAsyncEnumerable<DateTimeOffset> AllAsync(CancellationToken stop) => _beats.Reader.ReadAllAsync(stop);
}
