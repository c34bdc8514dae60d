using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;
using DailyAdjust.Files.Sites;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Logging;
using Polly;
using Polly.CircuitBreaker;
using Polly.Timeout;

namespace DailyAdjust.Service.Fetching;

/// <summary>Asks one source for its files: today's and, where its address has a date, those of the days before.</summary>
/// <param name="folder">The site's.</param>
/// <param name="source">With a pull.</param>
/// <param name="memory">The site's.</param>
/// <param name="tools">Clock, client, limits.</param>
public sealed class SourcePull(SiteFolder folder, WeatherSource source, PullMemory memory, PullTools tools)
{
    private const int NotFound = 404;

    private readonly CircuitBreakerManualControl _hand = new();
    private readonly PulledFile _file = new(folder, source, tools.Time);
    private readonly PullAttempt _attempt = new(tools.Http, tools.Time);
    private ResiliencePipeline<PullAnswer>? _pipeline;
    private long? _restBegan;
    private TimeSpan _rest;

    private Pull Pull => source.Pull!;

    /// <summary>One pull. Never throws for what a server, a network or a disk does: it tells, remembers and logs it.</summary>
    /// <param name="site">Its calendar gives the dates, its sources the patterns.</param>
    /// <param name="anyway">Also while the source rests after many failures; a server's own Retry-After is kept to.</param>
    /// <param name="stop">Ends it at once.</param>
    public async Task<IReadOnlyList<PullResult>> RunAsync(Site site, bool anyway, CancellationToken stop)
    {
        if (Rests)
        {
            return [Result("", PullOutcome.Failed, Known("its server asked to be left alone for a while"))];
        }

        if (anyway)
        {
            await _hand.CloseAsync(stop).ConfigureAwait(false);
        }

        var results = await AskAllAsync(site, stop).ConfigureAwait(false);
        Tell(results);
        return results;
    }

    private async Task<List<PullResult>> AskAllAsync(Site site, CancellationToken stop)
    {
        var results = new List<PullResult>();
        var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        try
        {
            var headers = PullHeaders.Fill(Pull.Headers, tools.Variable);
            var today = site.Clock.DateOf(tools.Time.GetUtcNow());
            var days = PullNames.HasDate(Pull.Url) ? Pull.DaysBack : 0;
            for (var back = days; back >= 0; back--)
            {
                var name = PullNames.Fill(Pull.File, today.AddDays(-back));
                CheckOwner(site, name);
                var result = await AskAsync(PullNames.Fill(Pull.Url, today.AddDays(-back)), name, headers, names, mayMiss: days > 0, stop).ConfigureAwait(false);
                results.Add(result.Result);
                if (result.IsServersTrouble)
                {
                    break; // it would be the same with the other days, and each would take as long
                }
            }

            if (results.TrueForAll(r => r.Outcome == PullOutcome.NotYet))
            {
                results.Add(Result(results[^1].Address, PullOutcome.Failed, "the file of none of the days is there (404)"));
            }

            memory.Keep(source.Id, Enumerable.Range(0, days + 1).Select(back => PullNames.Fill(Pull.Url, today.AddDays(-back))));
        }
        catch (PullException failure)
        {
            results.Add(Result("", PullOutcome.Failed, failure.Message));
        }

        return results;
    }

    private async Task<(PullResult Result, bool IsServersTrouble)> AskAsync(
        string address, string name, IReadOnlyList<KeyValuePair<string, string>> headers, HashSet<string> names, bool mayMiss, CancellationToken stop)
    {
        var shown = new Uri(address).GetLeftPart(UriPartial.Path);
        if (!names.Contains(name) && _file.Waits(name))
        {
            return (Result(shown, PullOutcome.Waiting, $"{name} still lies in the inbox"), false);
        }

        try
        {
            var seen = memory.Seen(source.Id, address) is { } before && _file.IsKnown(before.Sha) ? before : null;
            var marks = seen is { } s && (s.ETag ?? s.LastModified) is not null ? new SeenMarks(s.ETag, s.LastModified) : null;
            var request = new PullRequest(new Uri(address), headers, marks, Pull.LargestBytes);
            _pipeline ??= PullPipeline.Of(Pull, tools.Limits, tools.Time, _hand);
            var answer = await _pipeline.ExecuteAsync(async token => await _attempt.AskAsync(request, token).ConfigureAwait(false), stop).ConfigureAwait(false);
            return (Keep(answer, seen, address, shown, name, names), false);
        }
        catch (PullException failure) when (failure.Status == NotFound && mayMiss)
        {
            return (Result(shown, PullOutcome.NotYet, "that day's file is not there, or not yet (404)"), false);
        }
        catch (PullException failure)
        {
            Rest(failure.RetryAfter);
            return (Result(shown, PullOutcome.Failed, failure.Message), failure.Passing);
        }
        catch (TimeoutRejectedException)
        {
            return (Result(shown, PullOutcome.Failed, FormattableString.Invariant($"the server gave no whole answer within {Pull.Timeout.TotalSeconds:0.#} s")), true);
        }
        catch (BrokenCircuitException)
        {
            return (Result(shown, PullOutcome.Failed, Known("it failed too often and is left alone for a while")), true);
        }
    }

    private PullResult Keep(PullAnswer answer, SeenAddress? seen, string address, string shown, string name, HashSet<string> names)
    {
        if (answer.Bytes is not { } bytes)
        {
            memory.Remember(source.Id, address, new(answer.Marks.ETag, answer.Marks.LastModified, seen!.Sha));
            return Result(shown, PullOutcome.Unchanged, "unchanged (304)");
        }

        var now = new SeenAddress(answer.Marks.ETag, answer.Marks.LastModified, PulledFile.ShaOf(bytes));
        if (_file.IsKnown(now.Sha))
        {
            memory.Remember(source.Id, address, now);
            return Result(shown, PullOutcome.Unchanged, "unchanged (the same bytes again)");
        }

        if (_file.Put(name, bytes, names) is not { } given)
        {
            return Result(shown, PullOutcome.Waiting, $"{name} lies in the inbox already");
        }

        memory.Remember(source.Id, address, now);
        return Result(shown, PullOutcome.New, FormattableString.Invariant($"new, {bytes.Length} bytes, in the inbox as {given}"));
    }

    /// <summary>A file is told by its name: it must not look like another source's.</summary>
    private void CheckOwner(Site site, string name)
    {
        var owner = ReadingsFile.SourceOf(name, site.Weather.Sources)!;
        if (!string.Equals(owner.Id, source.Id, StringComparison.Ordinal))
        {
            throw new PullException($"its file would be called {name}, which also fits the files of {owner.Id}: give one of the two another pattern", passing: false);
        }
    }

    private void Tell(List<PullResult> results)
    {
        foreach (var news in results.Where(r => r.Outcome == PullOutcome.New))
        {
            tools.Log.LogInformation("{Site}: {Source} pulled from {Address}: {What}", folder.Name, source.Id, news.Address, news.What);
        }

        if (results.Find(r => r.Outcome == PullOutcome.Failed) is { } failed)
        {
            var isNews = memory.Failed(source.Id, failed.What, tools.Time.GetUtcNow());
            tools.Log.Log(isNews ? LogLevel.Warning : LogLevel.Debug, "{Site}: {Source} could not be pulled from {Address}: {Why}", folder.Name, source.Id, failed.Address, failed.What);
        }
        else if (memory.Works(source.Id))
        {
            tools.Log.LogInformation("{Site}: {Source} can be pulled again", folder.Name, source.Id);
        }
    }

    private bool Rests => _restBegan is { } began && tools.Time.GetElapsedTime(began) < _rest;

    private void Rest(TimeSpan? asked)
    {
        if (asked > tools.Limits.LongestDelay)
        {
            _restBegan = tools.Time.GetTimestamp();
            _rest = asked < tools.Limits.LongestRest ? asked.Value : tools.Limits.LongestRest;
        }
    }

    /// <summary>Where nothing was asked, what it failed of before says more.</summary>
    private string Known(string otherwise) => memory.Failing(source.Id)?.Why ?? otherwise;

    private PullResult Result(string address, PullOutcome outcome, string what) => new(source.Id, address, outcome, what);
}
