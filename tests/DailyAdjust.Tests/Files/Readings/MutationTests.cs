using System.Text;
using CsCheck;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Files.Readings;

/// <summary>Good files, spoilt at random: nothing throws, every row is counted, and no number becomes another.</summary>
[Trait("Promise", "10")]
public sealed class MutationTests
{
    private const int Hours = 30;

    private static readonly string[] LineEnds = ["\n", "\r\n", "\r", "\n\n", "\r\n,,,\r\n"];

    /// <summary>Where in the line (0 to 1), what, and whether it takes the place of a character or stands between two.</summary>
    private static readonly Gen<(double At, string What, bool Replaces)> Spoil =
        Gen.Select(Gen.Double[0, 1], Gen.Int[0, Spoiling.Junk.Length - 1], Gen.Bool)
            .Select((at, what, replaces) => (at, Spoiling.Junk[what], replaces && !string.IsNullOrWhiteSpace(Spoiling.Junk[what])));

    [Fact]
    public void JunkInARowSpoilsItsOwnValuesAndNothingElse() =>
        Gen.Select(Gen.Int[0, Hours - 1].Array[0, 6], Spoil.Array[6], Gen.Int[0, 1_000_000]).Sample(
            (lines, spoils, seed) =>
            {
                var rows = Rows(seed);
                var text = rows.ConvertAll(row => row.Text);
                foreach (var (line, spoil) in lines.Distinct().Zip(spoils))
                {
                    text[line] = Spoiling.Apply(text[line], spoil);
                }

                var result = StationFile.Read(StationFile.PlainHeader + string.Join('\n', text) + "\n");

                Assert.Equal(Hours, result.Report.RowsRead + result.Report.RowsSetAside + result.Report.RowsRefused);
                AssertNoOtherNumber(rows, result, untouched: i => !lines.Contains(i));
            },
            iter: 4000);

    [Fact]
    public void AFileCutAtAnyByteKeepsEveryRowBeforeTheCut()
    {
        var rows = Rows(7);
        var bytes = Encoding.UTF8.GetBytes(StationFile.PlainHeader + string.Join("\r\n", rows.Select(row => row.Text)) + "\r\n");
        var header = Encoding.UTF8.GetByteCount(StationFile.PlainHeader);
        for (var length = header; length <= bytes.Length; length++)
        {
            var result = StationFile.Read(bytes[..length]);
            var whole = Encoding.UTF8.GetString(bytes, 0, length).Count(c => c == '\n') - 1;

            AssertNoOtherNumber(rows, result, untouched: i => i < whole);
        }
    }

    [Fact]
    public void LinesLostRepeatedOrMixedUpChangeNoReading() =>
        Gen.Select(Gen.Int[0, Hours - 1].Array[1, 2 * Hours], Gen.Int[0, 1_000_000], Gen.Int[0, LineEnds.Length - 1]).Sample(
            (order, seed, ending) =>
            {
                var end = LineEnds[ending];
                var rows = Rows(seed);

                var result = StationFile.Read(StationFile.PlainHeader + string.Concat(order.Select(i => rows[i].Text + end)));

                Assert.Equal((order.Length, 0, 0), result.Counts);
                Assert.Equal(order.Distinct().Order().Select(i => rows[i].Reading), result.Readings);
            },
            iter: 2000);

    [Fact]
    public void AnyBytesAreReadTheSameTwiceAndNeverThrow() =>
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Select(Gen.Double[0, 1], Gen.Byte, Gen.Int[0, 3]).Array[1, 12], Gen.Bool).Sample(
            (seed, changes, wide) =>
            {
                var encoding = wide ? Encoding.Unicode : Encoding.UTF8;
                var bytes = new List<byte>([.. encoding.GetPreamble(), .. encoding.GetBytes(StationFile.PlainHeader + string.Join('\n', Rows(seed).Select(row => row.Text)))]);
                foreach (var (at, value, how) in changes)
                {
                    Spoiling.Byte(bytes, at, value, how);
                    if (bytes.Count > 100_000)
                    {
                        break;
                    }
                }

                byte[] file = [.. bytes];
                var (once, again) = (StationFile.Read(file), StationFile.Read(file));
                Assert.Equal(once.Readings, again.Readings);
                Assert.Equal(once.Report.Problems, again.Report.Problems);
                Assert.Equal(once.Counts, again.Counts);
                Assert.All(once.Readings, r => Assert.True(double.IsNaN(r.RainMm) || double.IsFinite(r.RainMm)));
            },
            iter: 2000);

    private static void AssertNoOtherNumber(List<(string Text, Reading Reading)> rows, Result result, Func<int, bool> untouched)
    {
        var read = result.Readings.ToDictionary(r => r.Begin);
        for (var i = 0; i < rows.Count; i++)
        {
            var good = rows[i].Reading;
            if (!read.Remove(good.Begin, out var got))
            {
                Assert.False(untouched(i));
                continue;
            }

            if (untouched(i))
            {
                Assert.Equal(good, got);
            }

            Assert.True(double.IsNaN(got.AirTemperatureC) || got.AirTemperatureC.Equals(good.AirTemperatureC));
            Assert.True(double.IsNaN(got.WindSpeedMPerS) || got.WindSpeedMPerS.Equals(good.WindSpeedMPerS));
            Assert.True(double.IsNaN(got.RainMm) || got.RainMm.Equals(good.RainMm));
        }

        Assert.Empty(read);
    }

    /// <summary>Hours of one and a quarter days, their numbers from the seed; rain always with two decimals.</summary>
    private static List<(string Text, Reading Reading)> Rows(int seed)
    {
        var begin = StationFile.Chicago.DayStart(new DateOnly(2026, 6, 1));
        return
        [
            .. Enumerable.Range(0, Hours).Select(i =>
            {
                var (t, w, p) = (10 + ((seed + (i * 7)) % 230 / 10.0), (seed + (i * 3)) % 90 / 10.0, (seed + i) % 40 == 0 ? (seed + i) % 1000 / 100.0 : 0);
                var reading = new Reading { Begin = begin.AddHours(i), End = begin.AddHours(i + 1), AirTemperatureC = t, WindSpeedMPerS = w, RainMm = p };
                return (FormattableString.Invariant($"{StationFile.Chicago.ToLocal(reading.End):yyyy-MM-dd HH:mm},{t:0.0},{w:0.0},{p:0.00}"), reading);
            }),
        ];
    }
}
