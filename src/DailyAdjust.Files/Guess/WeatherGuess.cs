using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Formats;

namespace DailyAdjust.Files.Guess;

/// <summary>
/// What a weather file seems to be and how it would be read. Nothing of it counts until a person has put it into site.yaml; what the
/// file does not prove says so.
/// </summary>
public sealed record WeatherGuess
{
    /// <summary>The file's name.</summary>
    public required string File { get; init; }

    /// <summary>In plain words: "a table of a weather station", or a public format's title.</summary>
    public required string What { get; init; }

    /// <summary>How it would be read; null = it was not recognised, and <see cref="Findings"/> say what was seen and what to do.</summary>
    public WeatherSource? Source { get; init; }

    /// <summary>In the order of site.yaml.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Columns that are not used, in the file's order.</summary>
    public IReadOnlyList<LeftColumn> Left { get; init; } = [];

    /// <summary>The date of its earliest row as the times are written; null = not known.</summary>
    public DateOnly? FirstDate { get; init; }

    /// <summary>What the dates could mean as well; null = nothing else.</summary>
    public string? OtherPattern { get; init; }

    /// <summary>It holds what is forecast, not what was measured.</summary>
    public bool IsForecast => string.Equals(Source?.Format, GridpointFormat.Name, StringComparison.Ordinal);

    /// <summary>Its units are those of the United States.</summary>
    public bool IsUs { get; init; }

    /// <param name="file">Its name, from which id and file pattern are made.</param>
    /// <param name="stream">Its bytes from the first on; is left open.</param>
    /// <param name="place">Where it comes from: then the sun tells the clock; null = not known.</param>
    /// <param name="monthFirst">How dates are taken that can be read in two ways; null = not known.</param>
    /// <exception cref="IOException">The bytes could not be read.</exception>
    public static WeatherGuess Of(string file, Stream stream, GuessPlace? place = null, bool? monthFirst = null)
    {
        var text = SampleText.Read(stream);
        if (text.Unreadable is { } why)
        {
            return new() { File = file, What = "nothing that can be read", Findings = [new("file", why, IsSure: true, "Save it as text (CSV), and unpack it if it is packed")] };
        }

        if (NoStation.Of(text) is { } other)
        {
            return new() { File = file, What = other.What, Findings = [new("file", other.Seen, IsSure: true, other.ToDo)] };
        }

        return PublicGuess.Of(file, text) ?? StationGuess.Of(file, text, place, monthFirst);
    }
}
