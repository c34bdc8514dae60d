using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Sites;

/// <summary>How one weather station's files are read for the days of one stretch of time.</summary>
/// <param name="From">The first day.</param>
/// <param name="Until">The day after the last one.</param>
/// <param name="Source">The column map.</param>
/// <param name="Clock">The site's clock.</param>
/// <param name="Text">Everything that decides how a row is read, as one text.</param>
public sealed record MapSpan(DateOnly From, DateOnly Until, WeatherSource Source, SiteClock Clock, string Text);

/// <summary>
/// The column maps of one station through the versions of the site: a day is read with the map that holds on it, so that an
/// edited map leaves earlier days as they were.
/// </summary>
/// <param name="Spans">By date; the first reaches back for ever, the last for ever on.</param>
public sealed record ColumnMaps(IReadOnlyList<MapSpan> Spans)
{
    /// <summary>Raised when the same file and map would give other readings.</summary>
    private const string ReaderVersion = "1";

    public MapSpan Newest => Spans[^1];

    /// <summary>Files read with another hash are read again.</summary>
    public string Sha { get; } = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(
        ReaderVersion + string.Concat(Spans.Select(s => string.Create(CultureInfo.InvariantCulture, $"\n{s.From:yyyy-MM-dd} {s.Text}"))))));

    /// <summary>The maps of a station that the newest version knows.</summary>
    public static ColumnMaps Of(string stationId, IReadOnlyList<SiteVersion> versions)
    {
        var spans = new List<MapSpan>();
        foreach (var version in versions)
        {
            var source = version.Site.Weather.Sources.FirstOrDefault(s => string.Equals(s.Id, stationId, StringComparison.Ordinal));
            if (source is null)
            {
                continue;
            }

            var text = TextOf(source, version.Site.Clock);
            var from = spans.Count == 0 ? DateOnly.MinValue : version.From;
            if (spans.Count > 0 && string.Equals(spans[^1].Text, text, StringComparison.Ordinal))
            {
                continue;
            }

            if (spans.Count > 0)
            {
                spans[^1] = spans[^1] with { Until = from };
            }

            spans.Add(new(from, DateOnly.MaxValue, source, version.Site.Clock, text));
        }

        return new(spans);
    }

    private static string TextOf(WeatherSource source, SiteClock clock) => string.Join('|',
    [
        source.Format,
        clock.ZoneId,
        CalculationVersions.TimeZones,
        source.Time.Column,
        source.Time.TimeOfDayColumn ?? "",
        source.Time.Pattern,
        source.Time.Clock.ToString(),
        source.Time.Stamp.ToString(),
        source.Interval.ToString("c", CultureInfo.InvariantCulture),
        string.Join('\u001f', source.Missing),
        source.Delimiter?.ToString() ?? "",
        source.DecimalComma ? "comma" : "point",
        source.StationCode ?? "",
        source.ObservedAt?.ToString("HH:mm", CultureInfo.InvariantCulture) ?? "",
        source.UnitsBelow ? "units below" : "",
        .. source.Columns.OrderBy(c => c.Key).Select(c => $"{c.Key}={c.Value.Header}\u001f{c.Value.Unit}{(c.Value.Counter ? "\u001fcounter" : "")}"),
    ]);
}
