using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;

namespace DailyAdjust.Core.Morning;

/// <summary>New turf: what is keyed in today, and when the program's own starts are keyed in again.</summary>
internal static class GrowInPart
{
    /// <summary>Null = its own starts run, today as yesterday.</summary>
    public static GrowInLine? Of(AdviceContext context, PlannedProgram program)
    {
        var (date, key) = (context.Date, program.Key);
        if (context.GrowIns.At(key, context.RoundDone) is not { } now)
        {
            if (GrowInAhead.BeforeNextVisit(context, program) is { GrowIn: { } ahead } first)
            {
                return Line(ahead.GrowIn, program, ahead.Day, MinutesOf(context, program, ahead.GrowIn, ahead.Day), isChange: false, isOver: false) with { Begins = first.Start.At };
            }

            var before = context.GrowIns.At(key, context.Site.RoundDone(date.AddDays(-1)));
            return before is null ? null : Line(before, program, new GrowInDay(date, 1, program.Program.Starts), [], isChange: false, isOver: true);
        }

        if (now.On(date) is not { } today)
        {
            return null;
        }

        var minutes = MinutesOf(context, program, now, today);
        return Line(now, program, today, minutes, Changes(context, program, now, date), isOver: false) with { OutBeforeRound = OutBeforeRound(context, program, today) };
    }

    private static IReadOnlyList<TakenOutStart> OutBeforeRound(AdviceContext context, PlannedProgram program, GrowInDay today)
    {
        List<ProgramStart> early = [.. today.Starts
            .Select(t => new ProgramStart(today.Sheet, ProgramStarts.Instant(context.Site, program.Controller, today.Sheet, t)))
            .Where(s => s.At > context.AsOf && s.At < context.RoundDone)];
        return OrderHits.Starts(context, program, new Horizon(context.AsOf, early, [], null) { Closes = context.RoundDone });
    }

    /// <summary>Whether a grow-in's starts and minutes are those that ran from the round of the date before.</summary>
    public static bool GoesOn(AdviceContext context, PlannedProgram program, GrowIn growIn, DateOnly date) =>
        growIn.On(date.AddDays(-1)) is not null && growIn.On(date) is not null && !Changes(context, program, growIn, date);

    private static bool Changes(AdviceContext context, PlannedProgram program, GrowIn growIn, DateOnly date) =>
        growIn.On(date.AddDays(-1)) is { } yesterday && growIn.On(date) is { } today
        && (!yesterday.Starts.SequenceEqual(today.Starts) || context.ZonesOf(program).Any(z => Minutes(growIn, yesterday, program, z) != Minutes(growIn, today, program, z)));

    private static GrowInLine Line(GrowIn growIn, PlannedProgram program, GrowInDay day, IReadOnlyList<GrowInMinutes> minutes, bool isChange, bool isOver) => new(
        program.Key, day.Sheet.DayNumber - growIn.First.DayNumber + 1, growIn.Last.DayNumber - growIn.First.DayNumber + 1, growIn.Last, day.Starts, minutes, isChange, isOver);

    private static IReadOnlyList<GrowInMinutes> MinutesOf(AdviceContext context, PlannedProgram program, GrowIn growIn, GrowInDay day) =>
        [.. context.ZonesOf(program).GroupBy(z => Minutes(growIn, day, program, z)).Select(g => new GrowInMinutes([.. g.Select(z => z.Station.Key)], g.Key))];

    private static double Minutes(GrowIn growIn, GrowInDay day, PlannedProgram program, ZonePlan zone) =>
        growIn.MinutesOf(day, zone.Station.BaseMinutes[program.Key.Program]);
}
