using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Guess;

namespace DailyAdjust.Service.Setup;

/// <summary>The dozen questions of `new`.</summary>
internal static class SiteQuestions
{
    private const int MostControllers = 200;

    /// <param name="interview">Asks.</param>
    /// <param name="name">The course's name as given on the command line, or null.</param>
    /// <param name="today">Proposed as the start.</param>
    public static SiteAnswers Ask(Interview interview, string? name, DateOnly today)
    {
        interview.Say("A few questions; an empty answer takes what stands in [brackets]. All of it can be changed in site.yaml and stations.csv afterwards.");
        interview.Say("");
        var course = name ?? interview.Ask("1. Name of the course", null, answer => (answer, answer.Length > 80 ? "at most 80 characters" : null));
        var latitude = interview.Ask("2. Latitude in degrees (north is positive)", null, answer => Answers.Number(answer, -90, 90, "40.27"));
        var longitude = interview.Ask("3. Longitude in degrees (west is negative)", null, answer => Answers.Number(answer, -180, 180, "-84.15"));
        var zone = interview.Ask("4. Time zone", TimeZoneGuess.For(latitude, longitude), Answers.TimeZone);
        var units = interview.Ask("5. Units of files and reports: us or metric", InUs(zone) ? "us" : "metric", answer => Answers.OneOf(answer, "us", "metric"));
        var us = string.Equals(units, "us", StringComparison.Ordinal);
        var elevation = interview.Ask($"6. Height above sea level, {(us ? "feet" : "metres")}", null, answer => Answers.Number(answer, -1500, 30000, "960"));
        var grass = interview.Ask("7. Grass in the warm months: cool or warm (season)", "cool", answer => Answers.OneOf(answer, "cool", "warm"));
        var weather = interview.Ask("8. A weather file of your station, CSV (empty: later)", "", path => ReadWeather(path, Place(latitude, longitude, zone), us));
        SayWhatToCheck(interview, weather);
        var begin = weather?.Guess.FirstDate ?? today;
        var start = interview.Ask("9. Date on which the balance begins", begin.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), Answers.Date);
        var boxes = interview.Ask("10. How many controllers are there", "1", answer => Answers.Count(answer, MostControllers));
        return new SiteAnswers
        {
            Name = course,
            LatitudeDeg = latitude,
            LongitudeDeg = longitude,
            Elevation = elevation,
            TimeZone = zone,
            Units = us ? UnitSystem.Us : UnitSystem.Metric,
            Start = start,
            WarmSeasonGrass = string.Equals(grass, "warm", StringComparison.Ordinal),
            Weather = weather,
            Controllers = [.. Enumerable.Range(1, boxes).Select(number => AskController(interview, number, start))],
        };
    }

    private static ControllerAnswers AskController(Interview interview, int number, DateOnly start)
    {
        var id = FormattableString.Invariant($"C{number}");
        interview.Say("");
        var place = interview.AskText($"11. Where does controller {id} stand", "");
        var programs = interview.Ask($"12. How many programs of {id} are in use", "1", answer => Answers.Count(answer, 26));
        return new(id, place, [.. Enumerable.Range(1, programs).Select(p => AskProgram(interview, id, FormattableString.Invariant($"P{p}"), start))]);
    }

    private static ProgramAnswers AskProgram(Interview interview, string controller, string program, DateOnly start)
    {
        var key = $"{controller}/{program}";
        var name = interview.AskText($"    {key}: what does it water, in a word or two", "");
        var starts = interview.Ask($"    {key}: start times", "22:00", Answers.Starts);
        var days = interview.Ask($"    {key}: water days (every day, odd, even, every 3, mon wed fri)", "every day", answer => Answers.Days(answer, start));
        var stations = interview.Ask($"    {key}: stations, area, minutes (1-6 greens 12; 7 tees 10)", null, Answers.Stations);
        return new(program, name, starts, days, stations);
    }

    /// <summary>Dates that can be read in two ways are taken as the country writes them; the proposal says so.</summary>
    private static (WeatherFileAnswer?, string?) ReadWeather(string path, GuessPlace place, bool us)
    {
        if (path.Length == 0)
        {
            return (null, null);
        }

        if (!File.Exists(path))
        {
            return (null, "there is no such file");
        }

        using var stream = File.OpenRead(path);
        var guess = WeatherGuess.Of(Path.GetFileName(path), stream, place, monthFirst: us);
        return guess is { Source: not null, IsForecast: false }
            ? (new(path, guess), null)
            : (null, "no header with a time column and a known quantity was found in its first lines; leave it empty and fill in site.yaml by hand (`dailyadjust weather guess` says what was seen)");
    }

    private static GuessPlace Place(double latitudeDeg, double longitudeDeg, string zone) =>
        new(latitudeDeg, longitudeDeg, new SiteClock(TimeZoneInfo.FindSystemTimeZoneById(zone)));

    private static void SayWhatToCheck(Interview interview, WeatherFileAnswer? weather)
    {
        if (weather?.Guess is { OtherPattern: { } other } guess)
        {
            interview.Say($"   Its dates can be read in two ways: taken as {guess.Source!.Time.Pattern}; if they are {other}, correct the pattern in site.yaml.");
        }
    }

    private static bool InUs(string zone) =>
        zone.StartsWith("US/", StringComparison.Ordinal)
        || zone is "America/New_York" or "America/Chicago" or "America/Denver" or "America/Los_Angeles" or "America/Phoenix" or "America/Detroit" or "America/Boise" or "Pacific/Honolulu"
        || zone.StartsWith("America/Indiana", StringComparison.Ordinal)
        || zone.StartsWith("America/Kentucky", StringComparison.Ordinal)
        || zone.StartsWith("America/North_Dakota", StringComparison.Ordinal);
}
