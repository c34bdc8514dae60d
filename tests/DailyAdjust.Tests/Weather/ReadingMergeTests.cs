using CsCheck;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

public sealed class ReadingMergeTests
{
    private static readonly DateTimeOffset Midnight = new(2026, 6, 1, 5, 0, 0, TimeSpan.Zero);

    private static readonly Gen<Reading> AnyReading =
        from hour in Gen.Int[0, 5]
        from rain in Gen.Frequency((1, Gen.Const(double.NaN)), (2, Gen.Double[0, 9]))
        from temperature in Gen.Frequency((1, Gen.Const(double.NaN)), (2, Gen.Double[0, 30]))
        select Hour(hour) with { RainMm = rain, AirTemperatureC = temperature };

    [Fact]
    public void ALaterValueCountsAndALaterGapDoesNotErase()
    {
        var merged = ReadingMerge.Merge([[Hour(1) with { RainMm = 1, AirTemperatureC = 20 }], [Hour(1) with { RainMm = 2 }]]);

        var reading = Assert.Single(merged);
        Assert.Equal((2, 20), (reading.RainMm, reading.AirTemperatureC));
    }

    [Fact]
    public void EveryValueOfAReadingIsCarriedOver()
    {
        var full = Hour(0) with
        {
            AirTemperatureC = 1,
            AirTemperatureMaxC = 2,
            AirTemperatureMinC = 3,
            RelativeHumidityPercent = 4,
            RelativeHumidityMaxPercent = 5,
            RelativeHumidityMinPercent = 6,
            DewPointC = 7,
            WindSpeedMPerS = 8,
            SolarRadiationMJPerM2 = 9,
            SunshineH = 10,
            RainMm = 11,
            ReferenceEtMm = 12,
        };

        Assert.Equal(full, Assert.Single(ReadingMerge.Merge([[full], [Hour(0)]])));
        Assert.Equal(full, Assert.Single(ReadingMerge.Merge([[Hour(0)], [full]])));
    }

    [Fact]
    public void AnIntervalOfAnotherLengthIsAnotherMeasurement()
    {
        var tenMinutes = Hour(0) with { End = Midnight.AddMinutes(10), RainMm = 0.2 };

        Assert.Equal(tenMinutes, Assert.Single(ReadingMerge.Merge([[Hour(0) with { RainMm = 5, AirTemperatureC = 20 }], [tenMinutes]])));
    }

    [Fact]
    public void WhatCountsIsTheLastKnownValueOfEachInterval() =>
        AnyReading.List[0, 8].List[0, 5].Sample(blocks =>
        {
            var merged = ReadingMerge.Merge(blocks);
            var all = blocks.SelectMany(block => block).ToList();

            Assert.Equal(all.Select(r => r.Begin).Distinct().Order(), merged.Select(r => r.Begin));
            foreach (var reading in merged)
            {
                var rows = all.Where(r => r.Begin == reading.Begin).ToList();
                Assert.Equal(rows.LastOrDefault(r => !double.IsNaN(r.RainMm))?.RainMm ?? double.NaN, reading.RainMm);
                Assert.Equal(rows.LastOrDefault(r => !double.IsNaN(r.AirTemperatureC))?.AirTemperatureC ?? double.NaN, reading.AirTemperatureC);
            }

            Assert.Equal(merged, ReadingMerge.Merge([merged, .. blocks.TakeLast(1)]));
            Assert.Equal(merged, ReadingMerge.Merge([all]));
        });

    private static Reading Hour(int hour) => new() { Begin = Midnight.AddHours(hour), End = Midnight.AddHours(hour + 1) };
}
