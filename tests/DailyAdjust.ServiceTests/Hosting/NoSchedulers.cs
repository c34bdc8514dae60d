using Quartz;

namespace DailyAdjust.ServiceTests.Hosting;

/// <summary>A scheduler factory that fails, as one would on a machine without the means to run it.</summary>
internal sealed class NoSchedulers : ISchedulerFactory
{
    public ValueTask<List<IScheduler>> GetAllSchedulers(CancellationToken cancellationToken = default) => throw new NotSupportedException();

    public ValueTask<IScheduler> GetScheduler(CancellationToken cancellationToken = default) => throw new NotSupportedException();

    public ValueTask<IScheduler?> LookupScheduler(string schedName, CancellationToken cancellationToken = default) => throw new NotSupportedException();
}
