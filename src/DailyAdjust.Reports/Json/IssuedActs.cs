using System.Globalization;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Json;

/// <summary>What a sheet said is to be done at the boxes beside their dials, read back from its advice.json.</summary>
internal static class IssuedActs
{
    /// <summary>Those of its exceptions that somebody carries out at a box.</summary>
    public static SheetExceptions Exceptions(ExceptionsJson? e, SiteClock clock) => new()
    {
        PutBack = [.. (e?.PutBack ?? []).Select(b => new PutBack(
            new ProgramKey(b.Controller, b.Program), Stations(b.Controller, b.Stations), [.. b.Starts.Select(Clock)], Phrase.Verbatim(b.Why), Until(b.Until)))],
        GrowIns = [.. (e?.GrowIns ?? []).Select(g => new GrowInLine(
            new ProgramKey(g.Controller, g.Program), g.Day, g.Days, IssuedAdvice.Day(g.Last), [.. g.Starts.Select(Clock)],
            [.. g.Minutes.GroupBy(m => m.Minutes).Select(m => new GrowInMinutes(Stations(g.Controller, m.Select(s => s.Station)), m.Key))], g.Change, g.Over)
        {
            Begins = g.Begins is { } begins ? Instant(begins, clock) : null,
            OutBeforeRound = TakenOut(g.OutBeforeRound, clock),
        })],
    };

    public static IReadOnlyList<TakenOutStart> TakenOut(IReadOnlyList<TakenOutJson>? starts, SiteClock clock) =>
        [.. (starts ?? []).Select(t => new TakenOutStart(Instant(t.At, clock), Phrase.Verbatim(t.Why), Until(t.Until)))];

    public static IReadOnlyList<TakenOutStations> StationsOut(ProgramJson p, SiteClock clock) =>
        [.. (p.StationsOut ?? []).Select(o => new TakenOutStations(Stations(p.Controller, o.Stations), Instant(o.From, clock), Phrase.Verbatim(o.Why), Until(o.Until)))];

    /// <summary>On what condition it is turned on, and that a pause is to be ended for it; mostly empty.</summary>
    public static Phrase Condition(ProgramJson p, SiteClock clock) => !string.Equals(p.Advice, AdviceCode.Of(AdviceKind.Resume), StringComparison.Ordinal) ? Phrase.Empty : Phrase.Sentences(
        p.Fault is { } fault ? AdviceSentences.OnlyIfMended(new Fault(Instant(fault.Since, clock), fault.Note, fault.By, IsOwnNote: true), clock) : Phrase.Empty,
        p.PausedUntil is { } ends ? AdviceSentences.EndPause(Instant(ends, clock), clock) : Phrase.Empty);

    public static DateTimeOffset Instant(string local, SiteClock clock) => clock.ToInstant(IssuedAdvice.Day(local), Clock(IssuedAdvice.Clock(local)));

    private static IReadOnlyList<StationKey> Stations(string controller, IEnumerable<string> stations) => [.. stations.Select(s => new StationKey(controller, s))];

    private static TimeOnly Clock(string text) => TimeOnly.ParseExact(text, "HH:mm", CultureInfo.InvariantCulture);

    private static LogTime? Until(string? text) => text is null ? null : new LogTime(IssuedAdvice.Day(text), text.Length > "yyyy-MM-dd".Length ? Clock(IssuedAdvice.Clock(text)) : null);
}
