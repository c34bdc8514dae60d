using System.Globalization;
using Microsoft.Extensions.Hosting.Systemd;

namespace DailyAdjust.Service.Hosting;

/// <summary>
/// Tells systemd that looks at the sites come to an end (WatchdogSec= of the unit; sd_notify(3), WATCHDOG=1). Only the one who looks may say so: a
/// service whose looks hang is started anew.
/// </summary>
/// <param name="systemd">Null = nobody watches.</param>
/// <param name="time">The clock; only its monotonic side is used.</param>
public sealed class Watchdog(ISystemdNotifier? systemd, TimeProvider time)
{
    private const string Variable = "WATCHDOG_USEC";

    /// <summary>sd_watchdog_enabled(3) advises half of the interval; half of that leaves room for one that comes late.</summary>
    private const int BeatsPerInterval = 4;

    private readonly TimeSpan? _pause = systemd is not null
        && long.TryParse(Environment.GetEnvironmentVariable(Variable), NumberStyles.None, CultureInfo.InvariantCulture, out var interval) && interval > 0
        ? TimeSpan.FromMicroseconds(interval / BeatsPerInterval)
        : null;

    private long? _toldAt;

    /// <summary>A look has come to an end. May be called as often as wanted.</summary>
    public void Beat()
    {
        if (_pause is { } pause && !(_toldAt is { } before && time.GetElapsedTime(before) < pause))
        {
            systemd!.Notify(new ServiceState("WATCHDOG=1"));
            _toldAt = time.GetTimestamp();
        }
    }
}
