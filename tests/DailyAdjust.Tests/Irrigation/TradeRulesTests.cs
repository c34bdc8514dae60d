using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Irrigation;

/// <summary>Rules of the trade; where each comes from stands beside it.</summary>
public class TradeRulesTests
{
    private const double LitresPerGallon = 3.785411784;
    private const double SquareMetresPerSquareFoot = 0.09290304;

    [Theory]
    [InlineData(10, 1000, 0.9625, 0.00005)] // 96.25 × gpm / ft²: extension handbook sheets
    [InlineData(27.4, 0.866 * 65 * 65, 0.72, 0.005)] // sprinklers at 65 ft, triangular: Golf Course Industry 2016
    [InlineData(22.8, 0.866 * 65 * 65, 0.60, 0.005)] // the same at 60 psi
    public void Precipitation_rate_follows_from_flow_and_area(double gpm, double squareFeet, double inchesPerHour, double tolerance)
    {
        var rate = ApplicationRate.FromFlow(gpm * LitresPerGallon, squareFeet * SquareMetresPerSquareFoot);
        Assert.Equal(inchesPerHour, rate.MmPerHour / Depth.MmPerInch, tolerance);
    }

    [Fact]
    public void The_same_in_metric()
    {
        // 60 × (L/min) / m², derived: 10 L on 100 m² are 0.1 mm.
        Assert.Equal(6, ApplicationRate.FromFlow(10, 100).MmPerHour, 12);
    }

    [Fact]
    public void Thirty_minutes_at_150_percent_are_45()
    {
        // A contractor's example.
        var day = Night(150, OneZone.EveryNight, 30);
        Assert.Equal(45, day.MinutesRun, 9);
    }

    [Theory]
    [InlineData(MinutesRounding.Nearest, 25, 90, 23)] // 22.5: halves go up
    [InlineData(MinutesRounding.Down, 25, 90, 22)]
    [InlineData(MinutesRounding.Up, 25, 85, 22)] // 21.25
    public void Minutes_go_to_the_controllers_step(MinutesRounding rounding, double baseMinutes, double percent, double minutes)
    {
        // Common practice; no source.
        Assert.Equal(minutes, Night(percent, OneZone.EveryNight with { Rounding = rounding }, baseMinutes).MinutesRun, 9);
    }

    [Theory]
    [InlineData(7)]
    [InlineData(12)]
    [InlineData(25)]
    public void A_box_that_rounds_to_the_dry_side_never_gives_more_than_was_asked(double baseMinutes)
    {
        // Too much water harms more than too little, the hose corrects it next day: USGA. Less than a minute is lacking.
        for (var percent = 5.0; percent <= 200; percent += 5)
        {
            var asked = baseMinutes * percent / 100;
            var day = Night(percent, OneZone.EveryNight with { Rounding = MinutesRounding.Down }, baseMinutes);
            Assert.InRange(day.MinutesRun, Math.Max(0, asked - 1 + 1e-9), asked + 1e-9);
        }
    }

    [Theory]
    [InlineData(0.55)]
    [InlineData(0.75)]
    [InlineData(1.0)]
    public void The_run_time_multiplier_puts_the_whole_depth_into_the_ground(double uniformity)
    {
        // Multiplier 1 / (0.4 + 0.6 DU): landscape irrigation handbook, from memory. 6 mm at 10 mm/h are 36 minutes before it.
        var efficiency = 0.4 + (0.6 * uniformity);
        var log = new[] { OneZone.Entry(0, new(3, 0), LogKind.Run, 36 / efficiency, LogUnit.Minutes) };
        var day = OneZone.Run(OneZone.Site(OneZone.Area with { Efficiency = efficiency }), [OneZone.Day(0, 0)], 20, log)[0];
        Assert.Equal(6, day.IrrigationMm, 9);

        // The same where it was measured at the station, whatever its area says.
        var site = OneZone.Site(OneZone.Area with { Efficiency = 0.9 });
        var measured = site with { Stations = [site.Stations[0] with { DistributionUniformity = uniformity }] };
        Assert.Equal(6, OneZone.Run(measured, [OneZone.Day(0, 0)], 20, log)[0].IrrigationMm, 9);
    }

    [Fact]
    public void A_station_with_minutes_in_two_programs_runs_in_both()
    {
        // Common practice; no source.
        var program = OneZone.EveryNight.Programs[0];
        var box = OneZone.EveryNight with { Programs = [program, program with { Id = "P2", Starts = [new(4, 0)] }] };
        var site = OneZone.Site(OneZone.Area, controller: box);
        var station = site.Stations[0] with { BaseMinutes = new Dictionary<string, double>(StringComparer.Ordinal) { ["P1"] = 12, ["P2"] = 18 } };
        var day = OneZone.Run(site with { Stations = [station] }, [OneZone.Day(0, 0)], 20)[0];
        Assert.Equal(5, day.IrrigationMm, 9);
    }

    private static Core.Irrigation.ZoneDay Night(double percent, Controller controller, double baseMinutes)
    {
        var setting = OneZone.Entry(0, new(1, 0), LogKind.Setting, percent, LogUnit.Percent) with { Where = new(PlaceKind.Program, "C1", "P1") };
        return OneZone.Run(OneZone.Site(OneZone.Area, 10, baseMinutes, controller), [OneZone.Day(0, 0)], 20, [setting])[0];
    }
}
