using DailyAdjust.Files.Guess;
using DailyAdjust.Fuzz.Checks;
using DailyAdjust.Tests.Files.Formats;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>What a weather file seems to be: any of them.</summary>
internal sealed class GuessTarget() : Target("guess", 8, [.. Samples.Weather.Select(Bytes), .. GoodFiles.ByLines.Select(f => Bytes(string.Join('\n', f.Header.Concat(f.Rows)) + "\n")), Bytes(GoodFiles.GridpointText)])
{
    public override void Try(byte[] bytes, Random random)
    {
        var guess = Of(bytes, random.Next(2) == 0 ? null : random.Next(2) == 0);
        Hold.That(!string.IsNullOrWhiteSpace(guess.What) && (guess.Source is not null || guess.Findings.Count > 0), "nothing is said of the file");
        if (guess.Source is { } source)
        {
            Hold.That(GuessYaml.Weather(guess).StartsWith("weather:", StringComparison.Ordinal), "no proposal");
            var read = WeatherFile.Read(source, bytes, WeatherFile.Clock(random));
            WeatherFile.Check(read, text: null, clock: null);
        }
    }

    private static WeatherGuess Of(byte[] bytes, bool? monthFirst)
    {
        using var stream = new MemoryStream(bytes);
        var guess = WeatherGuess.Of("yard-2026.csv", stream, place: null, monthFirst);
        stream.Position = 0;
        Hold.Same(guess, WeatherGuess.Of("yard-2026.csv", stream, place: null, monthFirst));
        return guess;
    }
}
