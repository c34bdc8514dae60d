using CsCheck;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

public sealed class ReadingBlockTests
{
    private static readonly DateTimeOffset Midnight = new(2026, 6, 1, 5, 0, 0, TimeSpan.Zero);

    private static readonly Gen<double> Value = Gen.Frequency((3, Gen.Const(0.0)), (2, Gen.Const(double.NaN)), (1, Gen.Const(-0.0)), (6, Gen.Double[-40, 120]), (1, Gen.Double));

    private static readonly Gen<Reading> AnyReading =
        from minutes in Gen.Int[0, 3000]
        from ticks in Gen.Long[0, 10]
        from length in Gen.Int[1, 1500]
        from v in Value.Array[12]
        select new Reading
        {
            Begin = Midnight.AddMinutes(minutes).AddTicks(ticks),
            End = Midnight.AddMinutes(minutes + length),
            AirTemperatureC = v[0],
            AirTemperatureMaxC = v[1],
            AirTemperatureMinC = v[2],
            RelativeHumidityPercent = v[3],
            RelativeHumidityMaxPercent = v[4],
            RelativeHumidityMinPercent = v[5],
            DewPointC = v[6],
            WindSpeedMPerS = v[7],
            SolarRadiationMJPerM2 = v[8],
            SunshineH = v[9],
            RainMm = v[10],
            ReferenceEtMm = v[11],
        };

    [Fact]
    public void ReadingsComeBackBitForBit() =>
        AnyReading.List[0, 30].Sample(readings =>
        {
            var block = ReadingBlock.Write(readings);
            var back = ReadingBlock.Read(block);
            Assert.Equal(readings, back);
            Assert.Equal(readings.SelectMany(Bits), back.SelectMany(Bits));
            Assert.Equal(block, ReadingBlock.Write(back));
        });

    [Fact]
    public void MarksComeBackWithTheirReadings()
    {
        IReadOnlyList<ValueMark>[] marks = [[], [new(WeatherQuantity.Rain, MarkKind.Trace, "T"), new(WeatherQuantity.AirTemperature, MarkKind.FailedAtSource, "")], [], [new(WeatherQuantity.WindSpeed, MarkKind.SeveralDays, "x")]];
        List<Reading> readings = [.. marks.Select((m, i) => new Reading { Begin = Midnight.AddHours(i), End = Midnight.AddHours(i + 1), RainMm = 3.2, Marks = m })];
        var block = ReadingBlock.Write(readings);
        Assert.Equal(marks, ReadingBlock.Read(block).Select(r => r.Marks));
        for (var length = 0; length < block.Length; length++)
        {
            Assert.Throws<InvalidDataException>(() => ReadingBlock.Read(block.AsSpan(0, length)));
        }
    }

    [Fact]
    public void DamagedBytesAreNeverReadingsOfAnotherLength() =>
        Gen.Select(AnyReading.List[1, 5], Gen.Int[0, 10_000], Gen.Byte).Sample((readings, at, change) =>
        {
            var block = ReadingBlock.Write(readings);
            Assert.Throws<InvalidDataException>(() => ReadingBlock.Read(block.AsSpan(0, at % block.Length)));
            Assert.Throws<InvalidDataException>(() => ReadingBlock.Read([.. block, change]));
            block[at % block.Length] ^= change;
            Assert.True(Record.Exception(() => ReadingBlock.Read(block)) is null or InvalidDataException);
        });

    /// <summary>The bytes are a contract with ledgers that exist: this block was made by a program of its own, from the layout's description.</summary>
    [Fact]
    public void TheLayoutIsTheOneThatLedgersHold()
    {
        IReadOnlyList<Reading> readings =
        [
            new() { Begin = Midnight, End = Midnight.AddHours(1), AirTemperatureC = 20.5, RainMm = 0 },
            new() { Begin = Midnight.AddHours(1), End = Midnight.AddHours(2), AirTemperatureC = 20.5, RainMm = 0.254 },
        ];

        Assert.Equal("0102010480A0F2A2D4E6DFDE1180A0A39C8C02FFFFCE86C8E4DFDE1100054034808080003FD04189374BC6A8", Convert.ToHexString(ReadingBlock.Write(readings)));
    }

    [Fact]
    public void ADayOfHoursIsSmall()
    {
        var day = Enumerable.Range(0, 24).Select(h => new Reading
        {
            Begin = Midnight.AddHours(h),
            End = Midnight.AddHours(h + 1),
            AirTemperatureC = (60 + (h * 0.7) - 32) * 5 / 9,
            RelativeHumidityPercent = 60 + h,
            WindSpeedMPerS = (4 + (h % 5 * 0.3)) * 0.44704,
            SolarRadiationMJPerM2 = h is > 6 and < 20 ? h * 37 * 0.0036 : 0,
            RainMm = 0,
        }).ToList();

        Assert.InRange(ReadingBlock.Write(day).Length, 1, 24 * 5 * sizeof(double) * 3 / 4);
    }

    [Fact]
    public void NothingIsABlockToo() => Assert.Empty(ReadingBlock.Read(ReadingBlock.Write([])));

    [Fact]
    public void AnotherLayoutIsNotGuessedAt() => Assert.Throws<InvalidDataException>(() => ReadingBlock.Read([2, 0, 0, 0]));

    private static IEnumerable<long> Bits(Reading r) =>
        new[]
        {
            r.AirTemperatureC, r.AirTemperatureMaxC, r.AirTemperatureMinC, r.RelativeHumidityPercent, r.RelativeHumidityMaxPercent, r.RelativeHumidityMinPercent,
            r.DewPointC, r.WindSpeedMPerS, r.SolarRadiationMJPerM2, r.SunshineH, r.RainMm, r.ReferenceEtMm,
        }.Select(BitConverter.DoubleToInt64Bits).Append(r.Begin.Ticks).Append(r.End.Ticks);
}
