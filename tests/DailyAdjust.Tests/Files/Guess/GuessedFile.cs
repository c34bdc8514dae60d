using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files;
using DailyAdjust.Files.Formats;
using DailyAdjust.Files.Guess;
using DailyAdjust.Files.Readings;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Files.Guess;

/// <summary>A file, what is guessed of it, and what comes of pasting that into a site.</summary>
internal sealed record GuessedFile(WeatherGuess Guess, WeatherSource Source, IReadOnlyList<Reading> Readings, ReadingsReport Report)
{
    /// <summary>The example site's own place.</summary>
    public static readonly GuessPlace Place = new(44.2, -98.3, StationFile.Chicago);

    public Finding Finding(string key) => Guess.Findings.Single(f => string.Equals(f.Key, key, StringComparison.Ordinal));

    public bool IsSure(string key) => Finding(key).IsSure;

    public static WeatherGuess Only(string text, GuessPlace? place = null, string name = "yard-2026.csv", bool? monthFirst = null) => Only(Encoding.UTF8.GetBytes(text), place, name, monthFirst);

    public static WeatherGuess Only(byte[] bytes, GuessPlace? place = null, string name = "yard-2026.csv", bool? monthFirst = null)
    {
        using var stream = new MemoryStream(bytes);
        return WeatherGuess.Of(name, stream, place, monthFirst);
    }

    /// <summary>Guesses, pastes the proposal into the example site and reads the file with what SiteReader makes of it.</summary>
    public static GuessedFile Read(string text, GuessPlace? place = null, bool? monthFirst = null)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var guess = Only(bytes, place, monthFirst: monthFirst);
        Assert.True(guess.Source is not null, string.Join('\n', guess.Findings));
        var source = Pasted(guess);
        using var stream = new MemoryStream(bytes);
        var days = new List<ReadingDay>();
        var report = WeatherFileReader.Read("yard-2026.csv", stream, source, StationFile.Chicago, days.Add);
        Assert.False(report.FileRefused, string.Join('\n', report.Problems));
        return new(guess, source, ReadingMerge.Merge(days.Select(day => day.Readings)), report);
    }

    /// <summary>The source that SiteReader reads from the proposal; it is the one that was guessed.</summary>
    public static WeatherSource Pasted(WeatherGuess guess)
    {
        var site = ExampleSiteFiles.SiteYaml;
        var yaml = site[..site.IndexOf("weather:\n", StringComparison.Ordinal)]
            + GuessYaml.Weather(guess).Replace("id: hand", "id: yard", StringComparison.Ordinal)
            + site[(site.IndexOf("\nsoils:", StringComparison.Ordinal) + 1)..];
        var reading = SiteReader.Read("site.yaml", yaml, "stations.csv", ExampleSiteFiles.StationsCsv);
        var errors = reading.Problems.Where(p => p.Severity == Severity.Error).ToList();
        Assert.True(errors.Count == 0, string.Join('\n', errors) + "\n" + GuessYaml.Weather(guess));
        var source = Assert.Single(reading.Site!.Weather.Stations);
        var guessed = guess.Source!;
        Assert.Equal(guessed.Time, source.Time);
        Assert.Equal(guessed.Missing, source.Missing);
        Assert.Equal((guessed.Files, guessed.Interval, guessed.Delimiter, guessed.DecimalComma, guessed.UnitsBelow), (source.Files, source.Interval, source.Delimiter, source.DecimalComma, source.UnitsBelow));
        Assert.Equal(guessed.Columns.OrderBy(c => c.Key), source.Columns.OrderBy(c => c.Key));
        return source;
    }
}
