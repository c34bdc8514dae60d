using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Replay;

/// <summary>What all zones and all ways to water share on one site-local day.</summary>
internal sealed class ReplayDay
{
    private readonly ProgramStart[][] _starts;
    private readonly double[][] _drawnBy;

    public ReplayDay(Site site, SitePlan plan, WeatherDay weather)
    {
        Weather = weather;
        EtoMm = weather.EtoMm ?? throw new ArgumentException($"{weather.Date:yyyy-MM-dd} is open: its reference ET is not known.", nameof(weather));
        var sun = Sun.Day(site, weather.Date);
        Curve = new DrawCurve(sun.Sunrise, sun.Sunset);
        End = site.Clock.DayEnd(weather.Date);
        RoundDone = site.RoundDone(weather.Date);

        // A replay knows no logbook, so no grow-in either: a program's own starts are all it has.
        _starts = [.. plan.Programs.Select(p => ProgramStarts.InDay(site, p.Controller, p.Program, weather.Date).ToArray())];
        _drawnBy = [.. _starts.Select(starts => starts.Select(s => Curve.ShareBy(s.At)).ToArray())];
    }

    public WeatherDay Weather { get; }

    public DateOnly Date => Weather.Date;

    public double EtoMm { get; }

    public DrawCurve Curve { get; }

    public DateTimeOffset End { get; }

    /// <summary>Starts from then on run at what this morning's round put on the dials.</summary>
    public DateTimeOffset RoundDone { get; }

    /// <summary>What one zone's day brings, in order of time.</summary>
    public void Gather(ReplayZone zone, List<ReplayEvent> into)
    {
        into.Clear();
        var rain = Weather.RainAt(zone.Plan.Station.Gauge);
        if (rain.Falls.Count > 0)
        {
            var share = RainOnZone.OfDay(rain, EtoMm, zone.Plan.Station.Area.Soil).SoilShare;
            foreach (var fall in rain.Falls)
            {
                into.Add(new ReplayEvent(fall.At, fall.At >= End ? 1 : Curve.ShareBy(fall.At), fall.Mm, fall.Mm * share, null, default));
            }
        }

        foreach (var run in zone.Runs)
        {
            var starts = _starts[run.Program];
            for (var i = 0; i < starts.Length; i++)
            {
                into.Add(new ReplayEvent(starts[i].At, _drawnBy[run.Program][i], 0, 0, run, starts[i].Date));
            }
        }

        FewEvents.Sort(into, ReplayEvent.Later);
    }
}

/// <summary>Rain, or a start, in one zone's day.</summary>
/// <param name="At">UTC.</param>
/// <param name="DrawnBy">Share of the day's demand drawn by then.</param>
/// <param name="RainMm">As measured.</param>
/// <param name="SoilMm">What of it reaches the soil.</param>
/// <param name="Run">The start's program and minutes; null = rain.</param>
/// <param name="StartDate">The controller's own date of the start.</param>
internal readonly record struct ReplayEvent(DateTimeOffset At, double DrawnBy, double RainMm, double SoilMm, ZoneRun? Run, DateOnly StartDate)
{
    /// <summary>By time, rain before irrigation.</summary>
    public static readonly ComesAfter<ReplayEvent> Later = (in ReplayEvent one, in ReplayEvent other) =>
        one.At > other.At || (one.At == other.At && one.Run is not null && other.Run is null);
}

/// <summary>One program of a zone.</summary>
/// <param name="Program">Its place among the site's programs.</param>
/// <param name="Controller">The box.</param>
/// <param name="BaseMinutes">At 100 %.</param>
internal sealed record ZoneRun(int Program, Controller Controller, double BaseMinutes);
