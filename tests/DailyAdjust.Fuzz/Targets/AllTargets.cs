using DailyAdjust.Tests.Files.Formats;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>Everything that is read from outside.</summary>
internal static class AllTargets
{
    private static readonly IReadOnlyList<Target> All =
    [
        new SiteTarget(),
        new StationsTarget(),
        new LogbookTarget(),
        new RoundTarget(),
        new CupsTarget(),
        new WordsTarget(),
        new GuessTarget(),
        new PackedTarget(),
        new ForecastTarget(),
        new ColumnMapTarget(),
        new FaultyTarget(),
        .. GoodFiles.ByLines.Append(Samples.CourseWeather).Select(file => new WeatherTarget(file)),
    ];

    public static IEnumerable<string> Names => All.Select(target => target.Name);

    public static IEnumerable<Target> Named(string name) => All.Where(target => string.Equals(target.Name, name, StringComparison.Ordinal));

    /// <summary>One by its weight, or the one that is named.</summary>
    public static Target Pick(Random random, string? name)
    {
        var left = random.Next(All.Sum(target => target.Weight));
        if (name is not null)
        {
            return Named(name).Single();
        }

        foreach (var target in All)
        {
            left -= target.Weight;
            if (left < 0)
            {
                return target;
            }
        }

        throw new InvalidOperationException("The weights do not add up.");
    }
}
