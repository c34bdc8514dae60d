using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Irrigation;

/// <summary>Depletion of every station at 00:00 of a date, mm: all that is carried from day to day.</summary>
public sealed record SoilState(DateOnly Date, IReadOnlyDictionary<StationKey, double> DepletionMm);

/// <summary>What the balance is a function of.</summary>
public sealed record BalanceInputs
{
    /// <summary>Ascending by date; the first holds from its site's start.</summary>
    public required IReadOnlyList<SiteVersion> Versions { get; init; }

    /// <summary>Consecutive days from the first one to run; none of them open.</summary>
    public required IReadOnlyList<WeatherDay> Weather { get; init; }

    /// <summary>
    /// Days right before the first of <see cref="Weather"/>, ascending: rain switches look back 45 days. None where the balance begins, or
    /// where no box has one.
    /// </summary>
    public IReadOnlyList<WeatherDay> Before { get; init; } = [];

    /// <summary>In order of arrival; voided and superseded entries removed.</summary>
    public required IReadOnlyList<LogEntry> Log { get; init; }

    /// <summary>Every sheet issued so far.</summary>
    public IReadOnlyList<IssuedSheet> Sheets { get; init; } = [];

    /// <summary>Depletion at 00:00 of the first weather day; null = the first day is the site's start.</summary>
    public SoilState? StartState { get; init; }

    /// <summary>The first date whose zone days are wanted; earlier ones are run and not listed. Null = all.</summary>
    public DateOnly? ListFrom { get; init; }

    /// <summary>The first date of which <see cref="BalanceResult.Traces"/> are wanted; null = of none.</summary>
    internal DateOnly? TracesFrom { get; init; }

    /// <summary>What was on the programs, where somebody has gathered that already from these versions, log and sheets, from <see cref="StartsFrom"/> on or earlier.</summary>
    internal SettingHistory? Settings { get; init; }

    /// <summary>A site of which somebody has laid out the zones already; null = nobody has.</summary>
    internal SitePlan? Plan { get; init; }

    /// <summary>The first instant of which a start is looked at, UTC: of the night before the first day, whose runs go on into it. Null = nothing is run.</summary>
    internal DateTimeOffset? StartsFrom => (Weather is [var first, ..] ? first.Date : StartState?.Date) is { } begin ? Versions[^1].Site.Clock.DayStart(begin.AddDays(-2)) : null;

    /// <summary>
    /// The share of a date's reference ET that is drawn where the draw curve stands at a share: of a day of which a part is measured already. Null = the curve itself.
    /// </summary>
    internal Func<DateOnly, double, double>? ShareDrawn { get; init; }

    /// <summary>Is told what every start and every hand gave a station; null = nobody asks.</summary>
    internal Action<StationWater>? OnWater { get; init; }
}

/// <summary>Zone days in order of date, then of stations.csv, and the state after the last.</summary>
public sealed record BalanceResult(IReadOnlyList<ZoneDay> Days, SoilState End)
{
    /// <summary>Estimated water of every day that was run, L, by the stations' flow; a station whose flow is not known has none.</summary>
    public required IReadOnlyList<double> Litres { get; init; }

    /// <summary>Of the days from <see cref="BalanceInputs.TracesFrom"/> on.</summary>
    internal IReadOnlyList<DayTraces> Traces { get; init; } = [];
}

/// <summary>The daily water balance of every zone. Source: [FAO56] ch. 8, p. 161-181; the order within a day is explained in docs/decisions/clock-order.md.</summary>
public static class Balance
{
    /// <summary>Runs the given days, one after another.</summary>
    /// <param name="inputs">Weather days must be consecutive and known.</param>
    /// <exception cref="ArgumentException">A gap in the days, or an open day.</exception>
    public static BalanceResult Run(BalanceInputs inputs) => Run(inputs, new BalanceRun(inputs));

    /// <summary>The same day by day, none of them kept: for spans that are printed.</summary>
    /// <param name="inputs">As for <see cref="Run(BalanceInputs)"/>.</param>
    /// <returns>Zone days of one date after another, those that are to be listed; every date once, in order of stations.csv.</returns>
    /// <exception cref="ArgumentException">A gap in the days, or an open day.</exception>
    public static IEnumerable<IReadOnlyList<ZoneDay>> DayByDay(BalanceInputs inputs) => DaysOf(inputs, new BalanceRun(inputs), () => []).Select(day => day.Listed).OfType<IReadOnlyList<ZoneDay>>();

    /// <summary>The same, and what one station's last day was reckoned from.</summary>
    /// <param name="inputs">Weather days must be consecutive and known.</param>
    /// <param name="station">The station.</param>
    /// <returns>Null = the station has no such day.</returns>
    internal static (ZoneDay Day, ZoneDayParts Parts)? Watch(BalanceInputs inputs, StationKey station)
    {
        var run = new BalanceRun(inputs) { Watched = station };
        var days = Run(inputs, run).Days;
        return run.LastDay is { } parts && days.LastOrDefault(d => d.Station == station) is { } day && day.Date == parts.Day.Date ? (day, parts) : null;
    }

    /// <summary>The same as <see cref="Run(BalanceInputs)"/> of all of them, where only the days from a date on can differ from a result that is known.</summary>
    /// <param name="inputs">Those of the known result, but for what has a say from the date on.</param>
    /// <param name="known">The result, with its traces.</param>
    /// <param name="from">The first date on which they differ.</param>
    internal static BalanceResult RunFrom(BalanceInputs inputs, BalanceResult known, DateOnly from)
    {
        var earlier = inputs.Weather.TakeWhile(d => d.Date < from).Count();
        if (known.Traces.FirstOrDefault(d => d.Date == from) is not { } first)
        {
            return earlier == inputs.Weather.Count ? known : Run(inputs);
        }

        var later = Run(inputs with
        {
            Weather = [.. inputs.Weather.Skip(earlier)],
            Before = [.. inputs.Before, .. inputs.Weather.Take(earlier)],
            StartState = new SoilState(from, first.Zones.Select((zone, i) => (zone.Station.Key, first.BeforeMm[i])).ToDictionary()),
        });
        return later with
        {
            Days = [.. known.Days.TakeWhile(d => d.Date < from), .. later.Days],
            Litres = [.. known.Litres.Take(earlier), .. later.Litres],
            Traces = [.. known.Traces.TakeWhile(d => d.Date < from), .. later.Traces],
        };
    }

    private static BalanceResult Run(BalanceInputs inputs, BalanceRun run)
    {
        var days = new List<ZoneDay>(inputs.Weather.Count(d => !(d.Date < inputs.ListFrom)) * inputs.Versions[^1].Site.Stations.Count);
        List<double> litres = [.. DaysOf(inputs, run, () => days).Select(day => day.Litres)];
        var next = inputs.Weather is [.., var last] ? last.Date.AddDays(1) : inputs.StartState?.Date ?? inputs.Versions[0].Site.Start;
        return new BalanceResult(days, run.StateAt(next)) { Litres = litres, Traces = run.Traces };
    }

    /// <summary>One day after another: the list that took its zone days (null = they are not wanted) and its water, L.</summary>
    private static IEnumerable<(List<ZoneDay>? Listed, double Litres)> DaysOf(BalanceInputs inputs, BalanceRun run, Func<List<ZoneDay>> list)
    {
        DateOnly? previous = null;
        foreach (var weather in inputs.Weather)
        {
            if (previous is { } last && weather.Date != last.AddDays(1))
            {
                throw new ArgumentException($"Weather days must follow one another: {weather.Date:yyyy-MM-dd} comes after {last:yyyy-MM-dd}.", nameof(inputs));
            }

            previous = weather.Date;
            var listed = weather.Date < inputs.ListFrom ? null : list();
            yield return (listed, run.Day(weather, listed));
        }
    }
}
