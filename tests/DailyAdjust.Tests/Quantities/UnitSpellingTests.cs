using DailyAdjust.Core.Quantities;
using Xunit;

namespace DailyAdjust.Tests.Quantities;

public sealed class UnitSpellingTests
{
    [Theory]
    [InlineData(UnitKind.Temperature, "°F", "°F")]
    [InlineData(UnitKind.Temperature, "degF", "°F")]
    [InlineData(UnitKind.Temperature, "deg F", "°F")]
    [InlineData(UnitKind.Temperature, "Deg_F", "°F")]
    [InlineData(UnitKind.Temperature, "f", "°F")]
    [InlineData(UnitKind.Temperature, "FAHRENHEIT", "°F")]
    [InlineData(UnitKind.Temperature, "ºC", "°C")]
    [InlineData(UnitKind.Temperature, "C", "°C")]
    [InlineData(UnitKind.Temperature, "Â°F", "°F")]
    [InlineData(UnitKind.Depth, "in.", "in")]
    [InlineData(UnitKind.Depth, "Inches", "in")]
    [InlineData(UnitKind.Depth, "\"", "in")]
    [InlineData(UnitKind.Depth, "MM", "mm")]
    [InlineData(UnitKind.DepthRate, "in/hr", "in/h")]
    [InlineData(UnitKind.DepthRate, "in./hr", "in/h")]
    [InlineData(UnitKind.DepthRate, "iph", "in/h")]
    [InlineData(UnitKind.DepthRate, "mm/hr", "mm/h")]
    [InlineData(UnitKind.DepthPerDepth, "in/ft", "in/ft")]
    [InlineData(UnitKind.DepthPerDepth, "cm/m", "cm/m")]
    [InlineData(UnitKind.Flow, "GPM", "gpm")]
    [InlineData(UnitKind.Flow, "gal/min", "gpm")]
    [InlineData(UnitKind.Flow, "USgpm", "gpm")]
    [InlineData(UnitKind.Flow, "l/s", "L/s")]
    [InlineData(UnitKind.Flow, "m3/h", "m³/h")]
    [InlineData(UnitKind.Volume, "acre-in", "acre-in")]
    [InlineData(UnitKind.Volume, "gallons", "gal")]
    [InlineData(UnitKind.Area, "ft2", "ft²")]
    [InlineData(UnitKind.Area, "sq. ft.", "ft²")]
    [InlineData(UnitKind.Area, "m^2", "m²")]
    [InlineData(UnitKind.Area, "acres", "acre")]
    [InlineData(UnitKind.Speed, "MPH", "mph")]
    [InlineData(UnitKind.Speed, "kph", "km/h")]
    [InlineData(UnitKind.Speed, "m s⁻¹", "m/s")]
    [InlineData(UnitKind.Speed, "kt", "kn")]
    [InlineData(UnitKind.RadiationPower, "W/m2", "W/m²")]
    [InlineData(UnitKind.RadiationPower, "Wm-2", "W/m²")]
    [InlineData(UnitKind.RadiationPower, "W m^-2", "W/m²")]
    [InlineData(UnitKind.RadiationEnergy, "MJ/m2", "MJ/m²")]
    [InlineData(UnitKind.RadiationEnergy, "langleys", "ly")]
    [InlineData(UnitKind.RadiationEnergy, "J/cm2", "J/cm²")]
    [InlineData(UnitKind.Duration, "hr", "h")]
    [InlineData(UnitKind.Duration, "days", "d")]
    public void A_usual_spelling_is_found(UnitKind kind, string spelling, string symbol) =>
        Assert.Equal(symbol, Units.Find(spelling, kind)?.Symbol);

    [Theory]
    [InlineData(UnitKind.Depth, "mph")]
    [InlineData(UnitKind.Temperature, "mm")]
    [InlineData(UnitKind.Speed, "m")]
    [InlineData(UnitKind.Duration, "m")]
    [InlineData(UnitKind.Flow, "")]
    [InlineData(UnitKind.Depth, "furlong")]
    public void A_unit_of_another_quantity_is_not(UnitKind kind, string spelling) =>
        Assert.Null(Units.Find(spelling, kind));

    [Fact]
    public void No_spelling_of_a_kind_stands_for_two_units()
    {
        var doubled = UnitTable.All
            .SelectMany(row => row.Spellings.Append(row.Unit.Symbol).Select(s => (row.Unit, Spelling: s)))
            .Where(row => Units.Find(row.Spelling, row.Unit.Kind) != row.Unit)
            .Select(row => $"{row.Unit.Kind} {row.Spelling}");
        Assert.Empty(doubled);
    }

    [Theory]
    [InlineData("1.0 in/ft", 1.0, "in/ft")]
    [InlineData("30%", 30, "%")]
    [InlineData(" 850 gpm ", 850, "gpm")]
    [InlineData("1e-3 m", 0.001, "m")]
    [InlineData("2", 2, "")]
    [InlineData("-4 °F", -4, "°F")]
    public void A_number_and_its_unit_are_split(string text, double value, string unit)
    {
        Assert.True(NumberText.TrySplit(text, out var number, out var spelling));
        Assert.Equal((value, unit), (number, spelling));
    }

    [Theory]
    [InlineData("1,5 in")]
    [InlineData("in 5")]
    [InlineData("")]
    [InlineData("NaN mm")]
    [InlineData("1.2.3 mm")]
    public void What_is_no_number_is_refused(string text) => Assert.False(NumberText.TrySplit(text, out _, out _));
}
