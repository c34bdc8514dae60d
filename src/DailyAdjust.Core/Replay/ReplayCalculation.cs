using System.Collections.Concurrent;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Replay;

/// <summary>Runs past weather through a site in several ways to water. Pure: the same inputs give the same figures.</summary>
public static class ReplayCalculation
{
    /// <param name="inputs">What is replayed.</param>
    /// <param name="dayDone">Called after each day of each way with the share that is done, one call at a time, from any thread.</param>
    /// <param name="atATime">How many ways to water are reckoned at a time, 1 or more: more than there are processors hold up the longest of them; -1 = as the runtime likes. Makes no difference to the result.</param>
    /// <exception cref="ArgumentOutOfRangeException">0, or below -1, at a time.</exception>
    /// <exception cref="ArgumentException">Days that do not follow one another, do not reach from first to last, or are open.</exception>
    public static ReplayResult Run(ReplayInputs inputs, Action<double>? dayDone = null, int atATime = -1)
    {
        var weather = inputs.Weather.ToArray();
        Check(weather, inputs.From, inputs.To);
        var site = inputs.Site with { Start = inputs.From };
        if (inputs.Visits is { } visits)
        {
            site = site with { Controllers = [.. site.Controllers.Select(c => c with { Programs = [.. c.Programs.Select(p => p with { Visit = visits })] })] };
        }

        var plan = new SitePlan(site);
        List<ReplayDay> days = [.. weather.Where(w => w.Date >= inputs.From && w.Date <= inputs.To).AsParallel().AsOrdered().Select(w => new ReplayDay(site, plan, w))];
        var policies = Enum.GetValues<ReplayPolicy>();
        var results = new PolicyResult[policies.Length];
        double all = days.Count * policies.Length;
        var done = 0;
        var telling = new Lock();
        void DayDone()
        {
            lock (telling)
            {
                dayDone?.Invoke(++done / all);
            }
        }

        // Every way has its own state; the days are only read. Those that judge every morning take most of the time: they begin first.
        var longestFirst = policies.OrderByDescending(p => p is ReplayPolicy.Advice or ReplayPolicy.Refill).Select(p => Array.IndexOf(policies, p));
        Parallel.ForEach(
            Partitioner.Create(longestFirst, EnumerablePartitionerOptions.NoBuffering),
            new ParallelOptions { MaxDegreeOfParallelism = atATime },
            i => results[i] = new PolicySeason(policies[i], site, plan, weather, inputs.RainKnownAhead).Run(days, DayDone));
        return new ReplayResult(inputs.From, inputs.To, results);
    }

    private static void Check(WeatherDay[] weather, DateOnly from, DateOnly to)
    {
        for (var i = 1; i < weather.Length; i++)
        {
            if (weather[i].Date != weather[i - 1].Date.AddDays(1))
            {
                throw new ArgumentException($"Weather days must follow one another: {weather[i].Date:yyyy-MM-dd} comes after {weather[i - 1].Date:yyyy-MM-dd}.", nameof(weather));
            }
        }

        if (Array.Find(weather, w => w.EtoMm is null && w.Date >= from && w.Date <= to) is { } open)
        {
            throw new ArgumentException($"{open.Date:yyyy-MM-dd} is open: its reference ET is not known.", nameof(weather));
        }

        if (weather.Length == 0 || weather[0].Date > from || weather[^1].Date < to || from > to)
        {
            throw new ArgumentException($"The days do not reach from {from:yyyy-MM-dd} to {to:yyyy-MM-dd}.", nameof(weather));
        }
    }
}
