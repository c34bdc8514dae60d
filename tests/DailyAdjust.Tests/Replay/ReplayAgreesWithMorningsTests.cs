using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Replay;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Replay;

/// <summary>The replay takes a short cut; here the whole morning is computed day by day, and what its sheet says is entered in the logbook when the round is done.</summary>
public class ReplayAgreesWithMorningsTests
{
    [Fact]
    public void On_the_example_site()
    {
        var (site, weather) = (ExampleSite.Build(), ExampleInputs.Weather());
        var changes = Agrees(site, weather, site.Start, ExampleInputs.Last);
        Assert.True(changes >= 10, $"{changes} changes");
    }

    [Fact]
    public void On_the_six_zones_in_spring()
    {
        var (site, weather) = SixZones.Places[1];
        var changes = Agrees(site, weather, new DateOnly(2014, 4, 10), new DateOnly(2014, 5, 12));
        Assert.True(changes >= 30, $"{changes} changes");
    }

    /// <returns>How many changes were made.</returns>
    private static int Agrees(Site given, IReadOnlyList<WeatherDay> all, DateOnly from, DateOnly to)
    {
        List<WeatherDay> weather = [.. all.Where(w => w.Date >= from && w.Date <= to)];
        var site = given with { Start = from };
        IReadOnlyList<SiteVersion> versions = [new(from, site)];
        List<LogEntry> log = [];
        for (var date = from; date <= to; date = date.AddDays(1))
        {
            log.AddRange(MorningCalculation.Run(Morning(versions, weather, log, date)).Programs.Where(p => p.NeedsVisit).Select(p => Carried(site, date, p.Key, p.Percent)));
        }

        var days = Balance.Run(new BalanceInputs { Versions = versions, Weather = weather, Log = log }).Days.ToLookup(d => d.Station);
        var replay = ReplayCalculation.Run(new ReplayInputs { Site = given, Weather = weather, From = from, To = to, Visits = null }).Of(ReplayPolicy.Advice);
        Assert.Equal(log.Count, replay.Changes);
        Assert.Equal(log.Select(e => (e.Time.Date, e.Where.Name)).Distinct().Count(), replay.Visits);
        Assert.All(replay.Stations, s => Assert.Equal(days[s.Station.Key].Sum(d => d.IrrigationMm), s.Figures.NetMm, 1e-6));
        Assert.All(replay.Stations, s => Assert.Equal(days[s.Station.Key].Sum(d => d.DrainageMm), s.Figures.DrainageMm, 1e-6));
        return log.Count;
    }

    private static MorningInputs Morning(IReadOnlyList<SiteVersion> versions, IReadOnlyList<WeatherDay> weather, IReadOnlyList<LogEntry> log, DateOnly date)
    {
        var site = versions[0].Site;
        var asOf = site.Clock.ToInstant(date, site.Report.At[0]);
        var midnight = site.Clock.DayStart(date);
        var today = weather.Single(w => w.Date == date);
        return new MorningInputs
        {
            Versions = versions,
            Date = date,
            AsOf = asOf,
            Weather = [.. weather.Where(w => w.Date < date)],
            RainSinceMidnight = [.. today.Rain.Select(g => g with { Falls = [.. g.Falls.Where(f => f.At > midnight && f.At <= asOf)] })],
            NewestReadingEnd = asOf,
            Log = [.. log.Where(e => e.Time.Date <= date)],
        };
    }

    private static LogEntry Carried(Site site, DateOnly date, ProgramKey program, double? percent) => new()
    {
        Time = new(date, site.Report.RoundDoneBy),
        Kind = percent is null ? LogKind.Off : LogKind.Setting,
        Where = new(PlaceKind.Program, program.Controller, program.Program),
        Value = percent,
        Unit = percent is null ? LogUnit.None : LogUnit.Percent,
    };
}
