using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>
/// The public US gridpoint forecast (JSON): layers by quantity, each with its unit and with values that hold over intervals; equal
/// hours are joined into one interval. A row is one value of a layer that is read; other layers are not looked at.
/// </summary>
internal static class GridpointFormat
{
    public const string Name = "gridpoint";

    /// <summary>Some ten times what a week's forecast of every layer takes, characters.</summary>
    private const int Longest = 8_000_000;

    public static PublicFormat Format { get; } = new(
        Name,
        "gridpoint forecast (JSON) of the US weather service",
        TimeSpan.FromHours(1),
        WindHeightM: 10,
        [.. GridpointLayers.ByName.Values],
        Recognises,
        Read);

    private static bool Recognises(IReadOnlyList<string> lines) =>
        lines.FirstOrDefault(line => !string.IsNullOrWhiteSpace(line))?.TrimStart() is ['{', ..]
        && lines.Any(line => line.Contains("\"forecastOffice\"", StringComparison.Ordinal) || line.Contains("\"gridId\"", StringComparison.Ordinal)
            || line.Contains("\"validTimes\"", StringComparison.Ordinal));

    private static void Read(LineReader lines, WeatherSource source, FormatRows rows)
    {
        if (lines.Rest(Longest) is not { } text)
        {
            rows.RefuseFile(1, 1, FormattableString.Invariant($"the forecast is longer than {Longest / 1_000_000} million characters"), "Is it a gridpoint forecast of one place?");
            return;
        }

        var json = Encoding.UTF8.GetBytes(text);
        if (GridpointJson.Parse(json, out var fault) is not { } document)
        {
            rows.RefuseFile(fault.Line, fault.Column, fault.What, "Nothing was read from it: fetch the file again");
            return;
        }

        if (document.Layers.Count == 0)
        {
            rows.RefuseFile(1, 1, "none of the layers of a gridpoint forecast stands in it", $"Layers that are read: {string.Join(", ", GridpointLayers.ByName.Keys)}");
            return;
        }

        var places = new TextPlaces(json);
        rows.Issued = Issued(document, places, rows);
        var hours = new ForecastHours();
        foreach (var layer in document.Layers)
        {
            GridpointLayers.Read(layer, places, hours, rows);
        }

        rows.Add(hours.ToReadings());
    }

    private static DateTimeOffset? Issued(GridpointDocument document, TextPlaces places, FormatRows rows)
    {
        if (document.UpdateTime is not { } said)
        {
            return null;
        }

        if (ForecastInterval.Instant(said.Text) is { } instant)
        {
            return instant;
        }

        var (line, column) = places.Of(said.Offset);
        rows.Tell("updateTime", line, column, $"updateTime {Wording.Quote(said.Text)} is no time", "The forecast counts from its first hour on");
        return null;
    }
}
