using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Formats;

namespace DailyAdjust.Service.Sites;

/// <summary>Normals from a site's own finished months, or from a typical year.</summary>
internal static class NormalsBook
{
    private const string Typical = "typical";

    /// <summary>Of all finished days.</summary>
    public static IReadOnlyList<MonthNormal> OfHistory(OpenSite site) => WeatherBook.LastFinished(site) is { } last
        ? NormalsOfDays.Of(WeatherBook.Through(site, last), site.Newest.Weather.Gauges[0].Id, last.AddDays(1))
        : NormalsOfDays.Of([], "", DateOnly.MinValue);

    /// <summary>Of a typical year, at the place that it was made for.</summary>
    /// <param name="file">Read, not refused.</param>
    public static IReadOnlyList<MonthNormal> OfTypicalYear(EpwFile file)
    {
        var place = file.Place!;
        var source = new WeatherSource
        {
            Id = Typical,
            Files = "*",
            Format = "epw",
            Time = new("", null, "", StampClock.Standard, StampMeaning.End),
            Interval = TimeSpan.FromHours(1),
            Columns = new Dictionary<WeatherQuantity, MappedColumn>(),
            WindHeightM = EpwReader.WindHeightM,
        };
        var site = BareSite.At(place.StandardTime(), place.LatitudeDeg, place.LongitudeDeg, place.ElevationM) with
        {
            Weather = new WeatherSetup { Stations = [source], Gauges = [new Gauge(Typical, Typical)] },
        };
        var (first, last) = (new DateOnly(EpwFile.NominalYear, 1, 1), new DateOnly(EpwFile.NominalYear, 12, 31));
        return NormalsOfDays.Of(
            WeatherDays.Compute(new WeatherDayInputs
            {
                Versions = [new SiteVersion(first, site)],
                From = first,
                Through = last,
                Readings = new Dictionary<string, IReadOnlyList<Reading>>(StringComparer.Ordinal) { [Typical] = file.Readings },
                Log = [],
                AsOf = site.Clock.DayEnd(last.AddDays(1)),
            }),
            Typical,
            last.AddDays(1));
    }
}
