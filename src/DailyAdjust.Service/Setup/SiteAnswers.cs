using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Guess;

namespace DailyAdjust.Service.Setup;

/// <summary>What somebody who knows boxes, minutes, areas and starts can say about a course.</summary>
public sealed record SiteAnswers
{
    public required string Name { get; init; }

    public required double LatitudeDeg { get; init; }

    public required double LongitudeDeg { get; init; }

    /// <summary>In the site's units: feet or metres.</summary>
    public required double Elevation { get; init; }

    public required string TimeZone { get; init; }

    public required UnitSystem Units { get; init; }

    public required DateOnly Start { get; init; }

    public required bool WarmSeasonGrass { get; init; }

    /// <summary>The first weather file; null = none yet.</summary>
    public required WeatherFileAnswer? Weather { get; init; }

    public required IReadOnlyList<ControllerAnswers> Controllers { get; init; }
}

/// <summary>A weather file that was given, and what is guessed of it.</summary>
/// <param name="Path">Where it lies.</param>
/// <param name="Guess">Recognised.</param>
public sealed record WeatherFileAnswer(string Path, WeatherGuess Guess);

/// <summary>One box.</summary>
public sealed record ControllerAnswers(string Id, string Place, IReadOnlyList<ProgramAnswers> Programs);

/// <summary>One program: its starts as HH:mm, its days as site.yaml writes them, and what it runs.</summary>
public sealed record ProgramAnswers(string Id, string Name, IReadOnlyList<string> Starts, string Days, IReadOnlyList<StationAnswer> Stations);

/// <summary>One station's minutes in one program.</summary>
public sealed record StationAnswer(int Station, string Area, double Minutes);
