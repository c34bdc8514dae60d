using DailyAdjust.Core.Replay;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Formats;
using DailyAdjust.Files.Sites;

namespace DailyAdjust.Tests.Replay;

/// <summary>The committed sites of Data/six-zones under the weather of Outside/vega-datasets, read as the program reads them.</summary>
internal static class SixZones
{
    private static readonly string[] Cities = ["seattle", "new-york"];

    /// <summary>Each city's site and days, 2012 to 2015.</summary>
    public static IReadOnlyList<(Site Site, IReadOnlyList<WeatherDay> Weather)> Places { get; } = [.. Cities.Select(Read)];

    /// <summary>All eight seasons, April to September.</summary>
    public static IReadOnlyList<ReplayResult> Seasons(VisitDays visits, bool rainKnownAhead = false, Func<Site, Site>? change = null) =>
    [
        .. from place in Places
           from year in Enumerable.Range(2012, 4)
           select ReplayCalculation.Run(new ReplayInputs
           {
               Site = change is null ? place.Site : change(place.Site),
               Weather = place.Weather,
               From = new DateOnly(year, 4, 1),
               To = new DateOnly(year, 9, 30),
               Visits = visits,
               RainKnownAhead = rainKnownAhead,
           }),
    ];

    private static (Site Site, IReadOnlyList<WeatherDay> Weather) Read(string city)
    {
        string Text(string file) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", "six-zones", city, file));
        var reading = SiteReader.Read("site.yaml", Text("site.yaml"), "stations.csv", Text("stations.csv"));
        var site = reading.Site ?? throw new InvalidDataException(string.Join('\n', reading.Problems));
        var readings = new List<Reading>();
        using var file = File.OpenRead(Path.Combine(AppContext.BaseDirectory, "Outside", "vega-datasets", $"{city}-weather.csv"));
        WeatherFileReader.Read(city, file, site.Weather.Stations[0], site.Clock, day => readings.AddRange(day.Readings));
        return (site, WeatherDays.Compute(new WeatherDayInputs
        {
            Versions = [new SiteVersion(site.Start, site)],
            From = site.Start,
            Through = new DateOnly(2015, 12, 31),
            Readings = new Dictionary<string, IReadOnlyList<Reading>>(StringComparer.Ordinal) { [site.Weather.Stations[0].Id] = readings },
            Log = [],
            AsOf = DateTimeOffset.MaxValue,
        }));
    }
}
