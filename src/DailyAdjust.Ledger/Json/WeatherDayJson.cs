using System.Text.Json;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Ledger.Json;

internal sealed record RainFallDto(DateTimeOffset At, double Mm);

internal sealed record GaugeDayDto(string Gauge, string Basis, double MeasuredPartMm, List<RainFallDto> Falls, double? RainMm = null, string? Substitute = null, double? MissingH = null);

internal sealed record SetAsideDto(string Station, DateTimeOffset Begin, string What, string Why, string? Check = null, int? Values = null);

internal sealed record SensorDoubtDto(string Check, string Station, string Words);

internal sealed record StandInDto(string Station, double? DistanceM = null, double? HigherM = null);

internal sealed record StationDayDto(
    string Station,
    double? AirTemperatureMeanC = null,
    double? HumidityMaxPercent = null,
    double? HumidityMinPercent = null,
    double? SolarRatio = null,
    double? SolarCentroidMinutes = null);

/// <summary>What may be missing came later: days that were stored without it are still read.</summary>
internal sealed record WeatherDayDto(
    DateOnly Date,
    string Station,
    string Basis,
    List<string> Estimated,
    List<GaugeDayDto> Rain,
    List<SetAsideDto> SetAside,
    double? EtoMm = null,
    double? AirTemperatureMaxC = null,
    double? AirTemperatureMinC = null,
    List<SensorDoubtDto>? Doubts = null,
    List<string>? Marks = null,
    StandInDto? StandIn = null,
    List<StationDayDto>? Stations = null);

/// <summary>A weather day as text, bit for bit; equal days give equal text. Instants come back in UTC.</summary>
internal static class WeatherDayJson
{
    public static string Write(WeatherDay day) => JsonSerializer.Serialize(
        new WeatherDayDto(
            day.Date,
            day.Station,
            Words.Of(day.Basis),
            [.. day.Estimated],
            [.. day.Rain.Select(ToDto)],
            [.. day.SetAside.Select(s => new SetAsideDto(s.Station, s.Begin.ToUniversalTime(), s.What, s.Why, s.Check.Length == 0 ? null : s.Check, s.Values == 1 ? null : s.Values))],
            day.EtoMm,
            day.AirTemperatureMaxC,
            day.AirTemperatureMinC,
            OrNull(day.Doubts.Select(d => new SensorDoubtDto(d.Check, d.Station, d.Words))),
            OrNull(day.Marks),
            day.StandIn is { } standIn ? new StandInDto(standIn.Station, standIn.DistanceM, standIn.HigherM) : null,
            OrNull(day.Stations.Select(ToDto))),
        LedgerJson.Readable.WeatherDayDto);

    public static WeatherDay Read(string json)
    {
        var dto = JsonSerializer.Deserialize(json, LedgerJson.Readable.WeatherDayDto) ?? throw new JsonException("A weather day is empty.");
        return new WeatherDay
        {
            Date = dto.Date,
            Station = dto.Station,
            EtoMm = dto.EtoMm,
            Basis = Words.To<EtoBasis>(dto.Basis),
            AirTemperatureMaxC = dto.AirTemperatureMaxC,
            AirTemperatureMinC = dto.AirTemperatureMinC,
            Estimated = dto.Estimated,
            Rain = [.. dto.Rain.Select(FromDto)],
            SetAside = [.. dto.SetAside.Select(s => new SetAsideValue(s.Station, s.Begin, s.What, s.Why) { Check = s.Check ?? "", Values = s.Values ?? 1 })],
            Doubts = [.. (dto.Doubts ?? []).Select(d => new SensorDoubt(d.Check, d.Station, d.Words))],
            Marks = dto.Marks ?? [],
            StandIn = dto.StandIn is { } standIn ? new StandIn(standIn.Station, standIn.DistanceM, standIn.HigherM) : null,
            Stations = [.. (dto.Stations ?? []).Select(FromDto)],
        };
    }

    private static List<T>? OrNull<T>(IEnumerable<T> items) => items.ToList() is { Count: > 0 } list ? list : null;

    private static StationDayDto ToDto(StationDay s) =>
        new(s.Station, s.AirTemperatureMeanC, s.HumidityMaxPercent, s.HumidityMinPercent, s.SolarRatio, s.SolarCentroidMinutes);

    private static StationDay FromDto(StationDayDto s) =>
        new(s.Station, s.AirTemperatureMeanC, s.HumidityMaxPercent, s.HumidityMinPercent, s.SolarRatio, s.SolarCentroidMinutes);

    private static GaugeDayDto ToDto(GaugeDay g) => new(
        g.Gauge, Words.Of(g.Basis), g.MeasuredPartMm, [.. g.Falls.Select(f => new RainFallDto(f.At.ToUniversalTime(), f.Mm))], g.RainMm, g.Substitute.Length == 0 ? null : g.Substitute, g.MissingH == 0 ? null : g.MissingH);

    private static GaugeDay FromDto(GaugeDayDto g) => new(
        g.Gauge, g.RainMm, [.. g.Falls.Select(f => new RainFall(f.At, f.Mm))], Words.To<RainBasis>(g.Basis), g.MeasuredPartMm)
    { Substitute = g.Substitute ?? "", MissingH = g.MissingH ?? 0 };
}
