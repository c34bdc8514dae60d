using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather.Checks;

namespace DailyAdjust.Core.Weather;

/// <summary>Readings and rain entries to days of weather. Pure: the same inputs give the same days.</summary>
public static class WeatherDays
{
    /// <summary>A grid on which processors agree, decimals of a millimetre.</summary>
    private const int EtoDecimals = 6;

    /// <summary>One day for every date from <see cref="WeatherDayInputs.From"/> through <see cref="WeatherDayInputs.Through"/>.</summary>
    /// <exception cref="ArgumentException">There is no site version.</exception>
    public static IReadOnlyList<WeatherDay> Compute(WeatherDayInputs inputs)
    {
        if (inputs.Versions.Count == 0)
        {
            throw new ArgumentException("At least one site version is needed.", nameof(inputs));
        }

        var known = new List<WeatherDay>(inputs.Before);
        var clock = inputs.Versions[^1].Site.Clock;
        var rains = inputs.Readings.ToDictionary(r => r.Key, r => Counted(inputs.Versions[^1].Site, r.Key, r.Value, inputs.AsOf), StringComparer.Ordinal);
        inputs = inputs with { Readings = rains.ToDictionary(r => r.Key, r => r.Value.Readings, StringComparer.Ordinal) };
        List<SetAsideValue> setAside = [.. rains.Values.SelectMany(r => r.SetAside)];
        var spans = new Dictionary<(SiteClock, string), IReadOnlyList<RainSpan>>();
        for (var date = inputs.From; date <= inputs.Through; date = date.AddDays(1))
        {
            var day = Compute(inputs, rains, date, known, spans);
            var ofDay = setAside.Where(s => clock.DateOf(s.Begin) == date).ToList();
            known.Add(ofDay.Count == 0 ? day : day with { SetAside = [.. day.SetAside, .. ofDay] });
        }

        return known[inputs.Before.Count..];
    }

    /// <summary>What is known by now of a running day's rain, one per gauge in the site's order; no rain where nothing is known of it is null, not 0.</summary>
    /// <param name="readings">By weather station, ascending.</param>
    /// <param name="log">In order of arrival; voided and superseded entries removed.</param>
    /// <param name="totals">Totals of that date by hand that count already, though it is not over.</param>
    public static IReadOnlyList<GaugeDay> RainSinceMidnight(
        Site site,
        DateOnly date,
        DateTimeOffset asOf,
        IReadOnlyDictionary<string, IReadOnlyList<Reading>> readings,
        IReadOnlyList<LogEntry> log,
        IReadOnlyList<LogEntry>? totals = null)
    {
        var day = DaySpan.Of(site.Clock, date);
        var rains = site.Weather.Stations.ToDictionary(s => s.Id, s => Counted(site, s.Id, Of(readings, s.Id), asOf), StringComparer.Ordinal);
        var windows = site.Weather.Stations.Select(s => StationWindow.Of(site, s, day, rains[s.Id].Readings, asOf)).ToList();
        return RainSubstitutes.Apply(
            site.Weather.Gauges, [.. site.Weather.Gauges.Select(g => RainOf(g, day, windows, rains, RainSpan.Of(g.Id, log, site.Clock, asOf, totals)).SoFar(g.Id))]);
    }

    /// <summary>Rain of a running day that was there by now and set aside, in the order of the stations and of time.</summary>
    /// <param name="readings">By weather station, ascending.</param>
    public static IReadOnlyList<SetAsideValue> RainSetAsideSinceMidnight(
        Site site, DateOnly date, DateTimeOffset asOf, IReadOnlyDictionary<string, IReadOnlyList<Reading>> readings)
    {
        var day = DaySpan.Of(site.Clock, date);
        return [.. site.Weather.Stations.SelectMany(s => Counted(site, s.Id, Of(readings, s.Id), asOf) is var counted
            ? StationWindow.Of(site, s, day, counted.Readings, asOf).SetAside.Concat(counted.SetAside.Where(a => day.Holds(a.Begin)))
            : []).Where(a => string.Equals(a.Quantity, QuantityName.Of(WeatherQuantity.Rain), StringComparison.Ordinal))];
    }

    /// <summary>What was measured by now of a running day's reference ET; null = nothing.</summary>
    /// <param name="readings">By weather station, ascending, from the day before on.</param>
    public static EtoSoFar? EtoSinceMidnight(Site site, DateOnly date, DateTimeOffset asOf, IReadOnlyDictionary<string, IReadOnlyList<Reading>> readings)
    {
        var day = DaySpan.Of(site.Clock, date);
        return EtoSoFar.Of([.. site.Weather.Stations.Select(s => new StationEto(StationWindow.Of(site, s, day, Of(readings, s.Id), asOf)))]);
    }

    /// <summary>The newest reading with any value in it that was there at an instant; null = there is none.</summary>
    /// <param name="readings">By weather station, ascending.</param>
    public static NewestReading? Newest(Site site, DateTimeOffset asOf, IReadOnlyDictionary<string, IReadOnlyList<Reading>> readings)
    {
        NewestReading? newest = null;
        foreach (var station in site.Weather.Stations)
        {
            var last = Of(readings, station.Id).LastOrDefault(r => r.End <= asOf && HasValue(r));
            if (last is not null && (newest is null || last.End > newest.End))
            {
                newest = new(station.Id, last.End);
            }
        }

        return newest;
    }

    private static WeatherDay Compute(
        WeatherDayInputs inputs,
        Dictionary<string, CountedRain> rains,
        DateOnly date,
        List<WeatherDay> before,
        Dictionary<(SiteClock, string), IReadOnlyList<RainSpan>> spans)
    {
        var site = SiteVersions.On(inputs.Versions, date);
        var day = DaySpan.Of(site.Clock, date);
        var windows = site.Weather.Stations.Select(s => StationWindow.Of(site, s, day, Of(inputs.Readings, s.Id), inputs.AsOf)).ToList();

        IReadOnlyList<RainSpan> SpansOf(string gauge)
        {
            if (!spans.TryGetValue((site.Clock, gauge), out var found))
            {
                found = RainSpan.Of(gauge, inputs.Log, site.Clock, inputs.AsOf);
                spans.Add((site.Clock, gauge), found);
            }

            return found;
        }

        var (stations, histories) = Believed(site, date, windows, before);
        var known = WithEto(stations, before, new WeatherDay
        {
            Date = date,
            Station = "",
            EtoMm = null,
            Basis = EtoBasis.Open,
            Rain = RainSubstitutes.Apply(
                site.Weather.Gauges, [.. site.Weather.Gauges.Select(g => RainOf(g, day, windows, rains, SpansOf(g.Id)).Finished(g.Id))]),
            SetAside = [.. stations.SelectMany(s => s.Window.SetAside)],
            Doubts = DoubtChecks.Of(site, date, histories),
            Stations = [.. histories.Select(h => h.Today)],
        }, site.Weather.Normals);
        return known with
        {
            Marks = MarkWords.Of(windows.Where(w =>
                string.Equals(w.Source.Id, known.Station, StringComparison.Ordinal)
                || site.Weather.Gauges.Any(g => string.Equals(g.StationId, w.Source.Id, StringComparison.Ordinal)))),
            StandIn = known.Station.Length > 0 && !string.Equals(known.Station, site.Weather.Stations[0].Id, StringComparison.Ordinal)
                ? StandIn.Of(site, site.Weather.StationOf(known.Station)!)
                : null,
        };
    }

    /// <summary>The station and the inputs that the reference ET of <see cref="WeatherDayInputs.From"/> was reckoned from; null = it was not reckoned from readings.</summary>
    internal static (StationEto Station, KnownEto Eto)? OriginOf(WeatherDayInputs inputs)
    {
        var (date, site) = (inputs.From, SiteVersions.On(inputs.Versions, inputs.From));
        var day = DaySpan.Of(site.Clock, date);
        var newest = inputs.Versions[^1].Site;
        var windows = site.Weather.Stations
            .Select(s => StationWindow.Of(site, s, day, Counted(newest, s.Id, Of(inputs.Readings, s.Id), inputs.AsOf).Readings, inputs.AsOf))
            .ToList();
        return Choose(Believed(site, date, windows, [.. inputs.Before]).Stations);
    }

    /// <summary>Every station with what it says, without the temperatures that the other stations contradict.</summary>
    private static (List<StationEto> Stations, List<StationHistory> Histories) Believed(Site site, DateOnly date, List<StationWindow> windows, List<WeatherDay> before)
    {
        List<StationEto> stations = [.. windows.Select(w => new StationEto(w))];
        List<StationHistory> histories = [.. stations.Select(s => new StationHistory(date, StationDay.Of(s.Window, s.Inputs), before))];
        var wrong = SecondStationCheck.Find(site.Weather.Stations, histories);
        for (var i = 0; i < stations.Count; i++)
        {
            stations[i] = wrong[i] is { } why ? new StationEto(stations[i].Window.WithoutTemperatures(SecondStationCheck.About, why)) : stations[i];
        }

        return (stations, histories);
    }

    /// <summary>The first station that is complete; else the first that can be estimated; else what is expected; else the day stays open.</summary>
    private static WeatherDay WithEto(List<StationEto> stations, List<WeatherDay> before, WeatherDay day, MonthlyNormals? normals)
    {
        if (Choose(stations) is { } chosen)
        {
            return From(day, chosen.Station, chosen.Eto);
        }

        return ExpectedEto.ForUnknown(day.Date, before, normals) is { } expected
            ? day with { EtoMm = OnGrid(expected.Mm), Basis = EtoBasis.Expected, Estimated = [expected.Note] }
            : day;
    }

    private static (StationEto Station, KnownEto Eto)? Choose(List<StationEto> stations)
    {
        for (var i = 0; i < stations.Count; i++)
        {
            if (stations[i].Complete() is { } complete)
            {
                return (stations[i], i == 0 ? complete : complete with { Basis = EtoBasis.OtherStation });
            }
        }

        foreach (var station in stations)
        {
            if (station.WithEstimates() is { } estimated)
            {
                return (station, estimated);
            }
        }

        return null;
    }

    private static WeatherDay From(WeatherDay day, StationEto station, KnownEto eto) => day with
    {
        Station = station.Window.Source.Id,
        EtoMm = OnGrid(eto.Mm),
        Basis = eto.Basis,
        AirTemperatureMaxC = Known(station.Inputs.AirTemperatureMaxC),
        AirTemperatureMinC = Known(station.Inputs.AirTemperatureMinC),
        Estimated = eto.Estimated,
    };

    private static RainDay RainOf(Gauge gauge, DaySpan day, List<StationWindow> windows, Dictionary<string, CountedRain> rains, IReadOnlyList<RainSpan> spans)
    {
        var window = windows.Find(w => string.Equals(w.Source.Id, gauge.StationId, StringComparison.Ordinal));
        var notKnown = gauge.StationId is { } station && rains.TryGetValue(station, out var counted)
            ? counted.NotKnown.Where(n => n.Begin < day.End && n.End > day.Begin).Select(n => (n.Begin > day.Begin ? n.Begin : day.Begin, n.End < day.End ? n.End : day.End))
            : [];
        return new RainDay(day, window?.OfDay ?? [], window?.Source.IsDaily ?? false, spans, [.. window?.RainAside ?? [], .. notKnown]);
    }

    /// <summary>Running totals to rain, of nothing that was not there yet.</summary>
    internal static CountedRain Counted(Site site, string station, IReadOnlyList<Reading> readings, DateTimeOffset asOf)
    {
        var source = site.Weather.StationOf(station);
        IReadOnlyList<Reading> known = readings.Count == 0 || readings[^1].End <= asOf ? readings : [.. readings.Where(r => r.End <= asOf)];
        return RainCounter.ToRain(station, known, site.Clock, source?.Accepts(RainTotalCheck.About, WeatherQuantity.Rain) ?? false);
    }

    internal static IReadOnlyList<Reading> Of(IReadOnlyDictionary<string, IReadOnlyList<Reading>> readings, string station) =>
        readings.TryGetValue(station, out var found) ? found : [];

    private static bool HasValue(Reading r) =>
        !(double.IsNaN(r.AirTemperatureC) && double.IsNaN(r.AirTemperatureMaxC) && double.IsNaN(r.AirTemperatureMinC)
            && double.IsNaN(r.RelativeHumidityPercent) && double.IsNaN(r.RelativeHumidityMaxPercent) && double.IsNaN(r.RelativeHumidityMinPercent)
            && double.IsNaN(r.DewPointC) && double.IsNaN(r.WindSpeedMPerS) && double.IsNaN(r.SolarRadiationMJPerM2)
            && double.IsNaN(r.SunshineH) && double.IsNaN(r.RainMm) && double.IsNaN(r.ReferenceEtMm) && double.IsNaN(r.RainChancePercent)
            && double.IsNaN(r.RainCounterMm));

    private static double OnGrid(double mm) => Math.Round(mm, EtoDecimals, MidpointRounding.AwayFromZero);

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}
