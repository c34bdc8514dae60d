using System.Globalization;
using DailyAdjust.Core.Quantities;
using UnitsNet;
using UnitsNet.Units;
using Xunit;
using Unit = DailyAdjust.Core.Quantities.Unit;

namespace DailyAdjust.Tests.Quantities;

/// <summary>Every factor of the table against a units library that was written by others (UnitsNet 5.75.1).</summary>
public sealed class UnitFactorTests
{
    private static readonly Dictionary<(UnitKind Kind, string Symbol), Func<double, double>> Library = new()
    {
        [(UnitKind.Temperature, "°C")] = x => x,
        [(UnitKind.Temperature, "°F")] = x => Temperature.FromDegreesFahrenheit(x).DegreesCelsius,
        [(UnitKind.Temperature, "K")] = x => Temperature.FromKelvins(x).DegreesCelsius,

        [(UnitKind.Depth, "mm")] = x => x,
        [(UnitKind.Depth, "cm")] = x => Length.FromCentimeters(x).Millimeters,
        [(UnitKind.Depth, "in")] = x => Length.FromInches(x).Millimeters,
        [(UnitKind.Depth, "ft")] = x => Length.FromFeet(x).Millimeters,

        [(UnitKind.Length, "m")] = x => x,
        [(UnitKind.Length, "cm")] = x => Length.FromCentimeters(x).Meters,
        [(UnitKind.Length, "mm")] = x => Length.FromMillimeters(x).Meters,
        [(UnitKind.Length, "km")] = x => Length.FromKilometers(x).Meters,
        [(UnitKind.Length, "ft")] = x => Length.FromFeet(x).Meters,
        [(UnitKind.Length, "in")] = x => Length.FromInches(x).Meters,
        [(UnitKind.Length, "yd")] = x => Length.FromYards(x).Meters,

        [(UnitKind.DepthRate, "mm/h")] = x => x,
        [(UnitKind.DepthRate, "cm/h")] = x => Speed.FromCentimetersPerHour(x).MillimetersPerHour,
        [(UnitKind.DepthRate, "in/h")] = x => Speed.FromInchesPerHour(x).MillimetersPerHour,

        [(UnitKind.DepthPerDay, "mm/day")] = x => x,
        [(UnitKind.DepthPerDay, "cm/day")] = x => Speed.FromCentimetersPerHour(x / 24).MillimetersPerHour * 24,
        [(UnitKind.DepthPerDay, "in/day")] = x => Speed.FromInchesPerHour(x / 24).MillimetersPerHour * 24,

        [(UnitKind.DepthPerDepth, "mm/m")] = x => Length.FromMillimeters(x) / Length.FromMeters(1) * 1000,
        [(UnitKind.DepthPerDepth, "cm/m")] = x => Length.FromCentimeters(x) / Length.FromMeters(1) * 1000,
        [(UnitKind.DepthPerDepth, "in/ft")] = x => Length.FromInches(x) / Length.FromFeet(1) * 1000,
        [(UnitKind.DepthPerDepth, "in/in")] = x => Length.FromInches(x) / Length.FromInches(1) * 1000,
        [(UnitKind.DepthPerDepth, "%")] = x => Ratio.FromPercent(x).PartsPerThousand,

        [(UnitKind.Area, "m²")] = x => x,
        [(UnitKind.Area, "ft²")] = x => Area.FromSquareFeet(x).SquareMeters,
        [(UnitKind.Area, "yd²")] = x => Area.FromSquareYards(x).SquareMeters,
        [(UnitKind.Area, "cm²")] = x => Area.FromSquareCentimeters(x).SquareMeters,
        [(UnitKind.Area, "in²")] = x => Area.FromSquareInches(x).SquareMeters,
        [(UnitKind.Area, "acre")] = x => Area.FromAcres(x).SquareMeters,
        [(UnitKind.Area, "ha")] = x => Area.FromHectares(x).SquareMeters,

        [(UnitKind.Flow, "L/min")] = x => x,
        [(UnitKind.Flow, "L/s")] = x => VolumeFlow.FromLitersPerSecond(x).LitersPerMinute,
        [(UnitKind.Flow, "L/h")] = x => VolumeFlow.FromLitersPerHour(x).LitersPerMinute,
        [(UnitKind.Flow, "m³/h")] = x => VolumeFlow.FromCubicMetersPerHour(x).LitersPerMinute,
        [(UnitKind.Flow, "m³/s")] = x => VolumeFlow.FromCubicMetersPerSecond(x).LitersPerMinute,
        [(UnitKind.Flow, "gpm")] = x => VolumeFlow.FromUsGallonsPerMinute(x).LitersPerMinute,
        [(UnitKind.Flow, "gph")] = x => VolumeFlow.FromUsGallonsPerHour(x).LitersPerMinute,
        [(UnitKind.Flow, "imp gpm")] = x => Volume.FromImperialGallons(x).Liters,
        [(UnitKind.Flow, "ft³/s")] = x => VolumeFlow.FromCubicFeetPerSecond(x).LitersPerMinute,

        [(UnitKind.Volume, "L")] = x => x,
        [(UnitKind.Volume, "m³")] = x => Volume.FromCubicMeters(x).Liters,
        [(UnitKind.Volume, "mL")] = x => Volume.FromMilliliters(x).Liters,
        [(UnitKind.Volume, "fl oz")] = x => Volume.FromUsOunces(x).Liters,
        [(UnitKind.Volume, "gal")] = x => Volume.FromUsGallons(x).Liters,
        [(UnitKind.Volume, "imp gal")] = x => Volume.FromImperialGallons(x).Liters,
        [(UnitKind.Volume, "kgal")] = x => Volume.FromUsGallons(1000 * x).Liters,
        [(UnitKind.Volume, "Mgal")] = x => Volume.FromMegausGallons(x).Liters,
        [(UnitKind.Volume, "ft³")] = x => Volume.FromCubicFeet(x).Liters,
        [(UnitKind.Volume, "hundred ft³")] = x => Volume.FromHectocubicFeet(x).Liters,
        [(UnitKind.Volume, "acre-in")] = x => Volume.FromAcreFeet(x / 12).Liters,
        [(UnitKind.Volume, "acre-ft")] = x => Volume.FromAcreFeet(x).Liters,

        [(UnitKind.Speed, "m/s")] = x => x,
        [(UnitKind.Speed, "km/h")] = x => Speed.FromKilometersPerHour(x).MetersPerSecond,
        [(UnitKind.Speed, "mph")] = x => Speed.FromMilesPerHour(x).MetersPerSecond,
        [(UnitKind.Speed, "kn")] = x => Speed.FromKnots(x).MetersPerSecond,
        [(UnitKind.Speed, "ft/s")] = x => Speed.FromFeetPerSecond(x).MetersPerSecond,
        [(UnitKind.Speed, "km/day")] = x => Speed.FromKilometersPerHour(x / 24).MetersPerSecond,

        [(UnitKind.RadiationPower, "W/m²")] = x => x,
        [(UnitKind.RadiationPower, "kW/m²")] = x => Irradiance.FromKilowattsPerSquareMeter(x).WattsPerSquareMeter,
        [(UnitKind.RadiationPower, "MJ/m²/h")] = x => WattsOver(Joules(x, EnergyUnit.Megajoule), 3600),
        [(UnitKind.RadiationPower, "MJ/m²/day")] = x => WattsOver(Joules(x, EnergyUnit.Megajoule), 86400),
        [(UnitKind.RadiationPower, "ly/min")] = x => WattsOver(10000 * Joules(x, EnergyUnit.Calorie), 60),
        [(UnitKind.RadiationPower, "ly/h")] = x => WattsOver(10000 * Joules(x, EnergyUnit.Calorie), 3600),
        [(UnitKind.RadiationPower, "ly/day")] = x => WattsOver(10000 * Joules(x, EnergyUnit.Calorie), 86400),
        [(UnitKind.RadiationPower, "kWh/m²/day")] = x => WattsOver(Joules(x, EnergyUnit.KilowattHour), 86400),

        [(UnitKind.RadiationEnergy, "MJ/m²")] = x => x,
        [(UnitKind.RadiationEnergy, "kJ/m²")] = x => Irradiation.FromKilojoulesPerSquareMeter(x).JoulesPerSquareMeter / 1e6,
        [(UnitKind.RadiationEnergy, "J/m²")] = x => Irradiation.FromJoulesPerSquareMeter(x).JoulesPerSquareMeter / 1e6,
        [(UnitKind.RadiationEnergy, "J/cm²")] = x => Irradiation.FromJoulesPerSquareCentimeter(x).JoulesPerSquareMeter / 1e6,
        [(UnitKind.RadiationEnergy, "Wh/m²")] = x => Irradiation.FromWattHoursPerSquareMeter(x).JoulesPerSquareMeter / 1e6,
        [(UnitKind.RadiationEnergy, "kWh/m²")] = x => Irradiation.FromKilowattHoursPerSquareMeter(x).JoulesPerSquareMeter / 1e6,
        [(UnitKind.RadiationEnergy, "ly")] = x => 10000 * Joules(x, EnergyUnit.Calorie) / 1e6,
        [(UnitKind.RadiationEnergy, "Btu/ft²")] = x => Irradiation.FromBtusPerSquareFoot(x).JoulesPerSquareMeter / 1e6,

        [(UnitKind.Percent, "%")] = x => x,
        [(UnitKind.Percent, "m³/m³")] = x => Ratio.FromDecimalFractions(x).Percent,

        [(UnitKind.Duration, "min")] = x => x,
        [(UnitKind.Duration, "s")] = x => Duration.FromSeconds(x).Minutes,
        [(UnitKind.Duration, "h")] = x => Duration.FromHours(x).Minutes,
        [(UnitKind.Duration, "d")] = x => Duration.FromDays(x).Minutes,

        [(UnitKind.Pressure, "kPa")] = x => x,
        [(UnitKind.Pressure, "hPa")] = x => Pressure.FromHectopascals(x).Kilopascals,
        [(UnitKind.Pressure, "Pa")] = x => Pressure.FromPascals(x).Kilopascals,
        [(UnitKind.Pressure, "bar")] = x => Pressure.FromBars(x).Kilopascals,
        [(UnitKind.Pressure, "psi")] = x => Pressure.FromPoundsForcePerSquareInch(x).Kilopascals,
        [(UnitKind.Pressure, "inHg")] = x => Pressure.FromInchesOfMercury(x).Kilopascals,
        [(UnitKind.Pressure, "mmHg")] = x => Pressure.FromMillimetersOfMercury(x).Kilopascals,

        [(UnitKind.WindRun, "km")] = x => Length.FromKilometers(x).Meters,
        [(UnitKind.WindRun, "mi")] = x => Length.FromMiles(x).Meters,
        [(UnitKind.WindRun, "m")] = x => x,

        [(UnitKind.Data, "MB")] = x => (double)Information.FromMegabytes(x).Megabytes,
        [(UnitKind.Data, "kB")] = x => (double)Information.FromKilobytes(x).Megabytes,
    };

    private static IEnumerable<Unit> Table => Enum.GetValues<UnitKind>()
        .SelectMany(kind => Units.Spellings(kind).Select(symbol => Units.Find(symbol, kind)!));

    [Fact]
    public void Every_unit_of_the_table_is_held_against_the_library() =>
        Assert.Equal(
            Table.Select(u => $"{u.Kind} {u.Symbol}").Order(StringComparer.Ordinal),
            Library.Keys.Select(k => $"{k.Kind} {k.Symbol}").Order(StringComparer.Ordinal));

    [Fact]
    public void Every_factor_agrees_with_the_library_to_a_millionth()
    {
        foreach (var unit in Table)
        {
            foreach (var value in new[] { 1.0, 37.5, 1234.5 })
            {
                var expected = Library[(unit.Kind, unit.Symbol)](value);
                var actual = unit.ToMetric(value);
                // 1e-6: the library rounds the acre, the calorie-based and the mercury units in the seventh digit.
                Assert.True(
                    Math.Abs(actual - expected) <= 1e-6 * Math.Max(Math.Abs(expected), 1e-9),
                    string.Create(CultureInfo.InvariantCulture, $"{value} {unit.Symbol} ({unit.Kind}): {actual:R}, library {expected:R}"));
            }
        }
    }

    [Fact]
    public void From_metric_undoes_to_metric()
    {
        foreach (var unit in Table)
        {
            Assert.Equal(12.34, unit.FromMetric(unit.ToMetric(12.34)), 1e-10);
        }
    }

    // Water freezes at 32 °F and boils at 212 °F: the definition of the scale.
    [Theory]
    [InlineData(32, 0)]
    [InlineData(212, 100)]
    [InlineData(-40, -40)]
    public void Fahrenheit_fixed_points_are_exact(double f, double c) =>
        Assert.Equal(c, Units.Find("°F", UnitKind.Temperature)!.ToMetric(f), 1e-12);

    private static double Joules(double value, EnergyUnit unit) => Energy.From(value, unit).Joules;

    private static double WattsOver(double joules, double seconds) => joules / seconds;
}
