using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Irrigation;

/// <summary>A rain switch that was shut, and what people say all the same. The program gives the station 5 mm from 02:00 to 02:30; 10 mm of rain came at midnight.</summary>
public class ShutSwitchTests
{
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");
    private static readonly Place Area = new(PlaceKind.Area, "ground", "");
    private static readonly Place Other = new(PlaceKind.Station, "C1", "2");

    [Fact]
    public void A_start_meanwhile_counts_as_not_run() => Assert.Equal(0, Irrigated());

    [Fact]
    public void Whoever_speaks_of_the_station_wins()
    {
        Assert.Equal(5, Irrigated(Ran(Program, 100)), 9);
        Assert.Equal(5, Irrigated(Ran(OneZone.Here, 100)), 9);
        Assert.Equal(4, Irrigated(Ran(Area, 80)), 9);
        Assert.Equal(0, Irrigated(Ran(Other, 100)), 9);
        Assert.Equal(0, Irrigated(Ran(Program, 100), Ran(OneZone.Here, 0)), 9); // station over program
    }

    [Fact]
    public void Of_a_span_only_what_was_told_ran() =>
        Assert.Equal(5 / 3.0, Irrigated(Ran(OneZone.Here, 100) with { Time = new(OneZone.First, new(2, 0)), Until = new(OneZone.First, new(2, 10)) }), 9);

    private static LogEntry Ran(Place where, double percent) => OneZone.Entry(0, new(5, 0), LogKind.Ran, percent, LogUnit.Percent) with { Where = where };

    /// <summary>Irrigation of the first day, mm.</summary>
    private static double Irrigated(params LogEntry[] log)
    {
        var site = OneZone.Site(OneZone.Area, controller: OneZone.EveryNight with { RainSwitch = new RainSwitch(5, TimeSpan.FromDays(1)) });
        return OneZone.Run(site, [OneZone.Day(0, 0, 10)], depletionMm: 40, [.. log])[0].IrrigationMm;
    }
}
