using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Files.Guess;

/// <summary>Whatever a station's habits: the guess reads the file back as it was meant, or says what it is not sure of.</summary>
public sealed class GuessProperties
{
    private const int Files = 200;

    [Fact]
    public void Nothing_is_guessed_wrong_in_silence()
    {
        var wrong = new List<string>();
        var right = 0;
        for (var seed = 1UL; seed <= Files; seed++)
        {
            var dice = new Dice(seed);
            var weather = InventedWeather.Of(
                new DateOnly(2026, 1, 1).AddDays(dice.Whole(0, 340)), dice.Whole(4, 14), TimeSpan.FromMinutes(dice.OneOf(5, 10, 15, 30, 60)), dice);
            var written = WrittenFile.Of(dice, weather);
            var file = GuessedFile.Read(written.Text, dice.Chance(0.7) ? GuessedFile.Place : null, dice.OneOf<bool?>(true, false, null));
            var faults = Faults(written, file).ToList();
            right += faults.Count == 0 ? 1 : 0;
            wrong.AddRange(faults.Where(fault => fault.IsSilent).Select(fault => FormattableString.Invariant($"seed {seed}: {fault.What}\n{string.Join('\n', written.Text.Split('\n').Take(6))}\n{string.Join('\n', file.Guess.Findings)}")));
        }

        Assert.True(wrong.Count == 0, string.Join("\n\n", wrong.Take(5)) + FormattableString.Invariant($"\n\n{wrong.Count} in all, {right} files without fault"));

        // Where units stand nowhere and no place is known much must stay open; most files are read as they were meant all the same.
        Assert.True(right > 0.5 * Files, FormattableString.Invariant($"only {right} of {Files} files were read as they were meant"));
    }

    private static IEnumerable<(string What, bool IsSilent)> Faults(WrittenFile written, GuessedFile file)
    {
        // Where the clock is open the rows may lie some hours off, in their own order; where it is sure every instant is held to account. (At a
        // change of the clock a row may go astray.)
        var isSure = file.IsSure("interval") && file.IsSure("time.pattern") && file.IsSure("time.clock") && file.IsSure("time.stamp");
        var same = written.Weather.Select(r => r.Begin).SequenceEqual(file.Readings.Select(r => r.Begin));
        if (!same)
        {
            yield return ("the times are others", isSure && written.Weather.Select(r => r.Begin).Intersect(file.Readings.Select(r => r.Begin)).Count() < 0.95 * written.Weather.Count);
        }

        if (!isSure && !same && file.Readings.Count != written.Weather.Count)
        {
            yield break;
        }

        var read = isSure || same
            ? file.Readings.ToDictionary(r => r.Begin)
            : written.Weather.Zip(file.Readings).ToDictionary(pair => pair.First.Begin, pair => pair.Second);
        var open = !file.IsSure("decimal") || !file.IsSure("missing");
        foreach (var (key, value, tolerance) in new (string, Func<Reading, double>, double)[]
        {
            ("air_temperature", r => r.AirTemperatureC, 0.02), ("relative_humidity", r => r.RelativeHumidityPercent, 0.01), ("wind_speed", r => r.WindSpeedMPerS, 0.02),
            ("solar_radiation", r => r.SolarRadiationMJPerM2, 0.002), ("rain", r => r.RainMm, 0.02),
        })
        {
            if (key is "rain" && written.Counter)
            {
                if (!file.Source.Columns[Core.Sites.WeatherQuantity.Rain].Counter)
                {
                    yield return ("a running total is taken for rain of intervals", file.IsSure("columns.rain"));
                }

                continue;
            }

            var off = written.Weather.Where(r => read.ContainsKey(r.Begin)).Count(r => Math.Abs(value(read[r.Begin]) - value(r)) > tolerance);
            var lost = file.Readings.Count(r => double.IsNaN(value(r)));
            off += lost > 0.05 * file.Readings.Count ? lost : 0;
            if (off > 0)
            {
                yield return (FormattableString.Invariant($"{key} is wrong in {off} rows"), file.IsSure("columns." + key) && !open);
            }
        }
    }
}
