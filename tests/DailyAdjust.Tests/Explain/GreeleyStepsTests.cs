using System.Globalization;
using DailyAdjust.Core.Explain;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Irrigation;
using DailyAdjust.Tests.Plain;
using DailyAdjust.Tests.Weather;
using Xunit;

namespace DailyAdjust.Tests.Explain;

/// <summary>
/// The worked example of the standardized equation itself, read through the explanation's steps: what the publication prints between the readings and the
/// result stands in a step of its own. Source: [ASCE05] appendix C, Greeley, Colorado, July 2000; the files name the tolerances.
/// </summary>
public sealed class GreeleyStepsTests
{
    private const double LatitudeDeg = 40.41;
    private const double LongitudeDeg = -104.78;
    private const double ElevationM = 1462.4;

    private static readonly Site Greeley = OneZone.Site(OneZone.Area) with
    {
        LatitudeDeg = LatitudeDeg,
        LongitudeDeg = LongitudeDeg,
        ElevationM = ElevationM,
        Clock = new(TimeZoneInfo.CreateCustomTimeZone("mst", TimeSpan.FromHours(-7), "mst", "mst")),
    };

    private static readonly WeatherSource Mast = new()
    {
        Id = "mast",
        Files = "mast*",
        Format = "csv",
        Time = new("time", null, "yyyy-MM-dd HH:mm", StampClock.Utc, StampMeaning.End),
        Interval = TimeSpan.FromHours(1),
        WindHeightM = 3,
        Columns = new Dictionary<WeatherQuantity, MappedColumn>(),
    };

    [Fact]
    public void Every_published_hour_reads_through_the_steps_radiation_and_all()
    {
        var rows = CheckTable.Read("Published/reference-et/greeley-hourly.csv");
        Assert.Equal(30, rows.Count);
        var held = CloudFactorHold.Start;
        var net = 0;
        foreach (var row in rows)
        {
            var begin = new DateTimeOffset(Date(row).ToDateTime(TimeOnly.MinValue), TimeSpan.FromHours(-7)).AddHours(row.Number("hour_ending_mst") - 1);
            var ra = Sun.ExtraterrestrialRadiationMJPerM2(begin, begin.AddHours(1), LatitudeDeg, LongitudeDeg, Date(row).DayOfYear);
            var elevation = Sun.ElevationRad(begin.AddMinutes(30), LatitudeDeg, LongitudeDeg, Date(row).DayOfYear);
            held = held.Next(begin, begin.AddHours(1), elevation, row.Number("rs_mj_m2_h"), Radiation.ClearSkyMJPerM2(ra, ElevationM));
            var air = new HourlyAir
            {
                AirTemperatureC = row.Number("temperature_c"),
                VapourPressureKPa = row.Number("ea_kpa"),
                WindSpeed2mMPerS = Atmosphere.WindSpeed2mMPerS(row.Number("wind_3m_m_per_s"), 3),
                SolarRadiationMJPerM2 = row.Number("rs_mj_m2_h"),
                CloudFactor = held.Factor,
                ElevationM = ElevationM,
            };

            // The publication prints vapour pressure; the dew point that belongs to it stands in for the reading.
            var steps = HourSteps.Of(Greeley, Mast, new HourOfDay(begin, air, DewPointC(row.Number("ea_kpa")), row.Number("wind_3m_m_per_s")), WeatherQuantity.DewPoint);
            Assert.True(Reckoned.Lines([new Section("", steps)]) >= 9, row["hour_ending_mst"]);
            double Of(string symbol) => steps.Last(s => s.Symbol.Is(symbol)).Value!.Value;
            Assert.Equal(row.Number("temperature_c"), Of("T"));
            Assert.Equal(row.Number("ea_kpa"), Of("ea"), 1e-9);
            Assert.Equal(row.Number("rs_mj_m2_h"), Of("Rs"));
            Assert.Equal(row.Number("ra_mj_m2_h"), Of("Ra"), 0.0051);
            Assert.Equal(row.Number("eto_mm_h"), Of("ETh"), 0.0101);
            if (row["rn_mj_m2_h"].Length > 0)
            {
                Assert.Equal(row.Number("rn_mj_m2_h"), Of("Rn"), 0.006);
                net++;

                // Table 1 of the same: what goes into the soil, and the denominator's constant, turn with net radiation.
                Assert.Equal(row.Number("rn_mj_m2_h") > 0 ? (0.1, 0.24) : (0.5, 0.96), (Of("g"), Of("Cd")));
            }
        }

        Assert.Equal(29, net);
    }

    [Fact]
    public void Every_published_day_reads_through_the_steps_net_radiation_and_all()
    {
        var rows = CheckTable.Read("Published/reference-et/greeley-daily.csv");
        Assert.Equal(10, rows.Count);
        foreach (var row in rows)
        {
            var dayOfYear = Date(row).DayOfYear;
            var air = new DailyAir
            {
                AirTemperatureMaxC = row.Number("tmax_c"),
                AirTemperatureMinC = row.Number("tmin_c"),
                VapourPressureKPa = row.Number("ea_kpa"),
                WindSpeed2mMPerS = Atmosphere.WindSpeed2mMPerS(row.Number("wind_3m_m_per_s"), 3),
                SolarRadiationMJPerM2Day = row.Number("rs_mj_m2_day"),
                ExtraterrestrialRadiationMJPerM2Day = Sun.ExtraterrestrialRadiationMJPerM2Day(LatitudeDeg, dayOfYear),
                ElevationM = ElevationM,
            };
            List<Step> steps = [.. DailySteps.Of(air, LatitudeDeg, dayOfYear)];
            Assert.True(Reckoned.Lines([new Section("", steps)]) >= 14, row["date"]);
            double Of(string symbol) => steps.Last(s => s.Symbol.Is(symbol)).Value!.Value;
            Assert.Equal(row.Number("tmax_c"), Of("Tmax"));
            Assert.Equal(row.Number("ea_kpa"), Of("ea"));
            Assert.Equal(row.Number("rn_mj_m2_day"), Of("Rn"), 0.06);
            Assert.Equal(row.Number("eto_mm"), Of("ETo"), 0.03);
        }
    }

    /// <summary>[FAO56] eq. 14 turned round.</summary>
    private static double DewPointC(double vapourPressureKPa)
    {
        var log = Math.Log(vapourPressureKPa / 0.6108);
        return 237.3 * log / (17.27 - log);
    }

    private static DateOnly Date(IReadOnlyDictionary<string, string> row) => DateOnly.ParseExact(row["date"], "yyyy-MM-dd", CultureInfo.InvariantCulture);
}
