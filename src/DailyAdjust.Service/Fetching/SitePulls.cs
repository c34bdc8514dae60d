using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Fetching;

/// <summary>
/// The pulls of one site under the running service. Each source is asked aside, on its own interval and in its own time: nobody ever
/// waits for it, and what it brings lies in the inbox at some later look.
/// </summary>
public sealed class SitePulls(SiteFolder folder, PullTools tools) : IDisposable
{
    /// <summary>A pull that began so shortly before need not begin again when the morning's work does.</summary>
    private static readonly TimeSpan Recent = TimeSpan.FromMinutes(2);

    /// <summary>After so long an open question is worth a line on the sheet.</summary>
    private static readonly TimeSpan WorthTelling = TimeSpan.FromSeconds(20);

    private const string OwnFault = "the program failed at it; the log says how";

    /// <summary>How long the end of the service waits for what is under way.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    private readonly PullMemory _memory = new(folder);
    private readonly Dictionary<string, Slot> _slots = new(StringComparer.Ordinal);
    private readonly CancellationTokenSource _stop = new();
    private readonly Lock _guard = new();

    /// <summary>Whether any source is being asked right now.</summary>
    public bool UnderWay
    {
        get
        {
            lock (_guard)
            {
                return _slots.Values.Any(slot => slot.IsRunning);
            }
        }
    }

    /// <summary>Begins every pull whose interval has passed, and returns at once.</summary>
    public void StartDue(Site site) => Start(site, slot => slot.Began is not { } began || tools.Time.GetElapsedTime(began) >= slot.Pull.Every, anyway: false);

    /// <summary>Begins every pull that has not only just begun, and returns at once: the morning's work wants what there is.</summary>
    /// <returns>Whether any is under way now.</returns>
    public bool StartAll(Site site)
    {
        Start(site, slot => slot.Began is not { } began || tools.Time.GetElapsedTime(began) >= Recent, anyway: true);
        return UnderWay;
    }

    /// <summary>What the sheet has to say: sources that bring nothing, and since when.</summary>
    public IReadOnlyList<string> Notices(Site site) =>
        [.. site.Weather.Sources.Where(source => source.Pull is not null).Select(source => Notice(site, source)).OfType<string>()];

    /// <summary>Pulls every source once, all at the same time, for at most so long.</summary>
    /// <param name="site">Its sources.</param>
    /// <param name="most">What is not done by then is given up; null = no limit.</param>
    /// <param name="stop">Gives everything up.</param>
    public async Task<IReadOnlyList<PullResult>> NowAsync(Site site, TimeSpan? most, CancellationToken stop)
    {
        using var limit = new CancellationTokenSource(most ?? Timeout.InfiniteTimeSpan, tools.Time);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, stop);
        var asked = site.Weather.Sources.Where(source => source.Pull is not null).Select(source => OnceAsync(site, source, both.Token, stop)).ToList();
        var results = await Task.WhenAll(asked).ConfigureAwait(false);
        stop.ThrowIfCancellationRequested();
        return [.. results.SelectMany(r => r)];
    }

    public void Dispose()
    {
        _stop.Cancel();
        Task[] running;
        lock (_guard)
        {
            running = [.. _slots.Values.Select(slot => slot.Task).OfType<Task>()];
        }

        Task.WaitAll(running, Patience);
        _stop.Dispose();
    }

    private async Task<IReadOnlyList<PullResult>> OnceAsync(Site site, WeatherSource source, CancellationToken most, CancellationToken stop)
    {
        var pull = new SourcePull(folder, source, _memory, tools);
        try
        {
            return await Task.Run(() => pull.RunAsync(site, anyway: true, most), most).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (most.IsCancellationRequested && !stop.IsCancellationRequested)
        {
            const string Late = "the server has not answered in the time there was";
            _memory.Failed(source.Id, Late, tools.Time.GetUtcNow());
            return [new(source.Id, "", PullOutcome.Failed, Late)];
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            // No sheet is late or missing because a source could not be asked.
            Own(source.Id, failure);
            return [new(source.Id, "", PullOutcome.Failed, OwnFault)];
        }
    }

    private void Start(Site site, Func<Slot, bool> due, bool anyway)
    {
        lock (_guard)
        {
            foreach (var source in site.Weather.Sources.Where(s => s.Pull is not null))
            {
                var slot = SlotOf(source);
                if (!slot.IsRunning && due(slot) && !_stop.IsCancellationRequested)
                {
                    slot.Began = tools.Time.GetTimestamp();
                    slot.BeganAt = tools.Time.GetUtcNow();
                    slot.Task = Task.Run(() => RunAsync(slot, site, anyway));
                }
            }
        }
    }

    /// <summary>An edit of the source begins it anew; one that is under way ends first.</summary>
    private Slot SlotOf(WeatherSource source)
    {
        if (_slots.TryGetValue(source.Id, out var slot) && (slot.IsRunning || ReferenceEquals(slot.Source, source)))
        {
            return slot;
        }

        var made = new Slot { Source = source, Puller = new SourcePull(folder, source, _memory, tools) };
        if (slot is not null && string.Equals(slot.Pull.Url, source.Pull!.Url, StringComparison.Ordinal))
        {
            made.Began = slot.Began;
        }

        _slots[source.Id] = made;
        return made;
    }

    private async Task RunAsync(Slot slot, Site site, bool anyway)
    {
        try
        {
            await slot.Puller.RunAsync(site, anyway, _stop.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (_stop.IsCancellationRequested)
        {
            // The service stops.
        }
        catch (Exception failure)
        {
            // Nobody waits for this task: what goes wrong in it is told here, and the next interval tries again.
            Own(slot.Source.Id, failure);
        }
    }

    private void Own(string sourceId, Exception failure)
    {
        _memory.Failed(sourceId, OwnFault, tools.Time.GetUtcNow());
        tools.Log.LogError(failure, "{Site}: pulling {Source} failed: {Failure}", folder.Name, sourceId, failure.Message);
    }

    private string? Notice(Site site, WeatherSource source)
    {
        var now = tools.Time.GetUtcNow();
        var isForecast = source.IsForecast;
        var what = isForecast ? "The forecast" : $"The weather of station {source.Id}";
        if (_memory.Failing(source.Id) is { } failing)
        {
            return $"{what} could not be fetched since {Clock(site, failing.Since, now)}: {failing.Why}.";
        }

        lock (_guard)
        {
            return _slots.TryGetValue(source.Id, out var slot) && slot.IsRunning && tools.Time.GetElapsedTime(slot.Began!.Value) >= WorthTelling
                ? $"{what} was asked for at {Clock(site, slot.BeganAt, now)} and has not come yet."
                : null;
        }
    }

    private static string Clock(Site site, DateTimeOffset instant, DateTimeOffset now) => site.Clock.ToLocal(instant).ToString(
        site.Clock.DateOf(instant) == site.Clock.DateOf(now) ? "HH:mm" : "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private sealed class Slot
    {
        public required WeatherSource Source { get; init; }

        public required SourcePull Puller { get; init; }

        public Task? Task { get; set; }

        /// <summary>On the monotonic clock.</summary>
        public long? Began { get; set; }

        public DateTimeOffset BeganAt { get; set; }

        public Pull Pull => Source.Pull!;

        public bool IsRunning => Task is { IsCompleted: false };
    }
}
