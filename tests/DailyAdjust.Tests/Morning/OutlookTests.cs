using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Advice;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>If nobody visits: what the second, plain balance comes to when the days ahead bring the ETo to expect, no rain, and nobody turns a dial.</summary>
public class OutlookTests
{
    [Fact]
    public void On_the_example_site_it_is_what_the_balance_comes_to()
    {
        for (var date = new DateOnly(2026, 6, 5); date <= ExampleInputs.Last; date = date.AddDays(1))
        {
            Hold(ExampleInputs.Morning(date));
        }
    }

    [Fact]
    public void On_random_sites_too()
    {
        var (dry, drained) = (0, 0);
        for (var seed = 1; seed <= 60; seed++)
        {
            var random = RandomCase.Of(seed);
            var outlook = Hold(random.Morning(random.Weather[^1].Date));
            dry += outlook.Any(o => o.ZonesBeyond > 0) ? 1 : 0;
            drained += outlook.Any(o => o.DrainedMm > 0) ? 1 : 0;
        }

        Assert.True(dry > 10 && drained > 10, $"{dry} with dry zones, {drained} with water lost");
    }

    [Fact]
    public void On_a_later_look_rain_meets_what_was_measured_by_its_hour_and_not_the_curve_s_part_of_the_day()
    {
        // Full at dawn and off; 4 mm measured by noon, and 20 mm of rain then: 16 drain. About 2.5 of 5 are drawn after it; half of 6.5 would be 3.25, and 16.75 drain.
        DateTimeOffset noon = new(SmallCourse.Monday.ToDateTime(new(11, 57)), TimeSpan.Zero);
        var off = new LogEntry { Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = new(PlaceKind.Program, "C1", "P1") };
        var look = SmallCourse.OneStation(0) with { At = new(12, 30), EtoSoFar = new(4, noon, "yard", false), RainSinceMidnight = [new(noon, 20)], Log = [off] };
        Assert.All(look.Sheet().Outlook, o => Assert.Equal(16, o.DrainedMm, 6));
    }

    private static IReadOnlyList<Outlook> Hold(MorningInputs inputs)
    {
        var sheet = MorningCalculation.Run(inputs);
        if (sheet.Freshness.NoAdvice is not null)
        {
            Assert.Empty(sheet.Outlook);
            return [];
        }

        Assert.Equal([1, 3, 7], sheet.Outlook.Select(o => o.Days));
        var plain = new PlainMorning(inputs);
        var site = sheet.Site;
        var days = PlainBalance.Run(new BalanceInputs
        {
            Versions = [new SiteVersion(site.Start, site)],
            Weather = [.. Enumerable.Range(0, 7).Select(i => Ahead(inputs, plain, i))],
            Log = inputs.Log,
            Sheets = inputs.Sheets,
            StartState = new SoilState(inputs.Date, site.Stations.ToDictionary(s => s.Key, plain.DepletionOf)),
        });
        foreach (var outlook in sheet.Outlook)
        {
            var span = days.Where(d => d.Date < inputs.Date.AddDays(outlook.Days)).ToList();
            double Allowable(StationKey key) => site.Stations.First(s => s.Key == key).Area.AllowableDepletionMm;
            double Ground(StationKey key) => site.Stations.First(s => s.Key == key).GroundM2 ?? 1;
            var beyond = span.Where(d => d.DepletionMm > Allowable(d.Station) + 1e-6).ToList();
            Assert.Equal(beyond.Select(d => d.Station).Distinct().Count(), outlook.ZonesBeyond);
            Assert.Equal(beyond.Select(d => d.DepletionMm - Allowable(d.Station)).Append(0).Max(), outlook.WorstBeyondMm, 6);
            Assert.Equal(span.Sum(d => d.DrainageMm * Ground(d.Station)) / site.Stations.Sum(s => Ground(s.Key)), outlook.DrainedMm, 6);
        }

        return sheet.Outlook;
    }

    private static WeatherDay Ahead(MorningInputs inputs, PlainMorning plain, int after)
    {
        var date = inputs.Date.AddDays(after);
        return new WeatherDay
        {
            Date = date,
            Station = "",
            EtoMm = plain.ExpectedEto(date),
            Basis = EtoBasis.Expected,
            Rain = [.. plain.Site.Weather.Gauges.Select(g =>
            {
                var falls = after == 0 ? inputs.RainSinceMidnight.First(r => r.Gauge.Is(g.Id)).Falls : [];
                return new GaugeDay(g.Id, falls.Sum(f => f.Mm), falls, RainBasis.Measured, 0);
            })],
        };
    }
}
