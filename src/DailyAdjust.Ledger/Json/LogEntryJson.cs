using System.Text.Json;
using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Ledger.Json;

internal sealed record LogTimeDto(DateOnly Date, TimeOnly? Clock = null);

internal sealed record PlaceDto(string Kind, string? Name = null, string? Item = null);

internal sealed record LogEntryDto(
    LogTimeDto Time,
    string Kind,
    PlaceDto Where,
    int Ordinal,
    double? Value = null,
    string? Unit = null,
    string? Text = null,
    DateOnly? Sheet = null,
    int? Issue = null,
    List<PlaceDto>? Except = null,
    LogTimeDto? Until = null,
    string? By = null,
    string? Note = null,
    int? Times = null,
    string? Instrument = null,
    double? RodM = null);

/// <summary>A logbook entry as text; equal entries give equal text.</summary>
internal static class LogEntryJson
{
    /// <summary>The kind as files spell it.</summary>
    public static string Word(LogKind kind) => KindWord.Of(kind);

    public static string Write(LogEntry entry) => JsonSerializer.Serialize(
        new LogEntryDto(
            ToDto(entry.Time),
            Word(entry.Kind),
            ToDto(entry.Where),
            entry.Ordinal,
            entry.Value,
            entry.Unit == LogUnit.None ? null : Words.Of(entry.Unit),
            NullIfEmpty(entry.Text),
            entry.Sheet,
            entry.Issue,
            entry.Except.Count == 0 ? null : [.. entry.Except.Select(ToDto)],
            entry.Until is { } until ? ToDto(until) : null,
            NullIfEmpty(entry.By),
            NullIfEmpty(entry.Note),
            entry.Times,
            NullIfEmpty(entry.Instrument),
            entry.RodLengthM),
        LedgerJson.Readable.LogEntryDto);

    public static LogEntry Read(string json)
    {
        var dto = JsonSerializer.Deserialize(json, LedgerJson.Readable.LogEntryDto) ?? throw new JsonException("An entry is empty.");
        return new LogEntry
        {
            Time = FromDto(dto.Time),
            Kind = Words.To<LogKind>(dto.Kind),
            Where = FromDto(dto.Where),
            Ordinal = dto.Ordinal,
            Value = dto.Value,
            Unit = dto.Unit is null ? LogUnit.None : Words.To<LogUnit>(dto.Unit),
            Text = dto.Text ?? "",
            Sheet = dto.Sheet,
            Issue = dto.Issue,
            Except = dto.Except is null ? [] : [.. dto.Except.Select(FromDto)],
            Until = dto.Until is null ? null : FromDto(dto.Until),
            By = dto.By ?? "",
            Note = dto.Note ?? "",
            Times = dto.Times,
            Instrument = dto.Instrument ?? "",
            RodLengthM = dto.RodM,
        };
    }

    private static string? NullIfEmpty(string text) => text.Length == 0 ? null : text;

    private static LogTimeDto ToDto(LogTime time) => new(time.Date, time.Clock);

    private static LogTime FromDto(LogTimeDto dto) => new(dto.Date, dto.Clock);

    private static PlaceDto ToDto(Place place) => new(Words.Of(place.Kind), NullIfEmpty(place.Name), NullIfEmpty(place.Item));

    private static Place FromDto(PlaceDto dto) => new(Words.To<PlaceKind>(dto.Kind), dto.Name ?? "", dto.Item ?? "");
}
