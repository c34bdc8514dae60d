using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>
/// Vapour pressure against the formulas of the ASHRAE handbook. FAO 56 takes a shorter formula; from 2 to 46 °C the two stay
/// within 0.3 %, and a dew point of theirs gives our vapour pressure within 0.5 %.
/// </summary>
public sealed class OutsideVapourTests
{
    [Fact]
    public void Saturation_and_dew_point_agree_with_the_handbook()
    {
        var rows = CheckTable.Read("Outside/psychrolib/vapour.csv");
        Assert.True(rows.Count >= 30);
        Assert.All(rows, row =>
        {
            var (temperature, humidity) = (row.Number("temperature_c"), row.Number("humidity_percent"));
            Assert.Equal(1, Atmosphere.SaturationVapourPressureKPa(temperature) / row.Number("saturation_kpa"), 0.003);
            var fromHumidity = Atmosphere.VapourPressureKPa(temperature, humidity);
            Assert.Equal(1, Atmosphere.VapourPressureFromDewPointKPa(row.Number("dew_point_c")) / fromHumidity, 0.005);
        });
    }
}
