using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>What is otherwise than on an ordinary day.</summary>
internal static class ExceptionsPart
{
    private static readonly TimeSpan Looked = TimeSpan.FromHours(24);

    public static SheetExceptions Of(AdviceContext context, AdviceContext? ifDone, MorningInputs inputs, IReadOnlyList<LogEntry> log) => new()
    {
        HandRuns = HandRunsPart.Of(context, ifDone, log, inputs.Before.Concat(inputs.Weather)),
        GrowIns = [.. context.Programs.OrderBy(p => p.Controller.Route).Select(p => GrowInToday(context, p)).OfType<GrowInLine>()],
        Shut = [.. context.Site.Controllers.OrderBy(c => c.Route).Select(c => ShutBoxOf(context, c, log)).OfType<ShutBox>()],
        Season = [.. context.Site.Controllers.OrderBy(c => c.Route).Select(c => SeasonOf(context, c)).OfType<SeasonBox>()],
        Stage = StageToday(context, log),
        Night = NightCautionPart.Of(inputs, context.Site),
    };

    private static GrowInLine? GrowInToday(AdviceContext context, PlannedProgram program)
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
        var yesterday = now.On(date.AddDays(-1));
        var changes = yesterday is not null
            && (!yesterday.Starts.SequenceEqual(today.Starts) || context.ZonesOf(program).Any(z => Minutes(now, yesterday, program, z) != Minutes(now, today, program, z)));
        return Line(now, program, today, minutes, changes, isOver: false);
    }

    private static GrowInLine Line(GrowIn growIn, PlannedProgram program, GrowInDay day, IReadOnlyList<GrowInMinutes> minutes, bool isChange, bool isOver) => new(
        program.Key, day.Sheet.DayNumber - growIn.First.DayNumber + 1, growIn.Last.DayNumber - growIn.First.DayNumber + 1, growIn.Last, day.Starts, minutes, isChange, isOver);

    private static IReadOnlyList<GrowInMinutes> MinutesOf(AdviceContext context, PlannedProgram program, GrowIn growIn, GrowInDay day) =>
        [.. context.ZonesOf(program).GroupBy(z => Minutes(growIn, day, program, z)).Select(g => new GrowInMinutes([.. g.Select(z => z.Station.Key)], g.Key))];

    private static double Minutes(GrowIn growIn, GrowInDay day, PlannedProgram program, ZonePlan zone) =>
        growIn.MinutesOf(day, zone.Station.BaseMinutes[program.Key.Program]);

    private static ShutBox? ShutBoxOf(AdviceContext context, Controller controller, IReadOnlyList<LogEntry> log)
    {
        if (controller.RainSwitch is null)
        {
            return null;
        }

        var ran = new RanHistory(context.Site.Clock, log);
        var due =
            from program in context.Programs
            where ReferenceEquals(program.Controller, controller)
            from start in context.StartsOf(program, context.AsOf - Looked).Select(s => s.Start).TakeWhile(s => s.At <= context.AsOf)
            where !context.SettingAt(program.Key, start.At).IsOff && !ran.IsAnswered(program.Key, start.Date, start.At)
            let shut = context.Switches.At(controller.Id, start.At)
            where shut is not null
            orderby start.At
            select (Start: new ShutStart(program.Key, start.Date, start.At), Span: shut);
        var starts = due.ToList();
        var span = context.Switches.At(controller.Id, context.AsOf) ?? (starts.Count > 0 ? starts[^1].Span : null);
        return span is null ? null : new ShutBox(controller.Id, span, [.. starts.Select(s => s.Start)]);
    }

    private static SeasonBox? SeasonOf(AdviceContext context, Controller controller)
    {
        var (state, since) = context.Season.At(controller.Id, context.AsOf);
        if (string.Equals(state, SeasonState.Open, StringComparison.Ordinal))
        {
            return null;
        }

        var ticked = context.Season.CheckedOff(controller.Id, context.AsOf);
        return new SeasonBox(controller.Id, state, since, ticked?.Time.Date, ticked?.By ?? "");
    }

    private static StageLine? StageToday(AdviceContext context, IReadOnlyList<LogEntry> log)
    {
        if (StageHistory.Of(log).FirstOrDefault(s => s.HoldsOn(context.Date)) is not { } stage)
        {
            return null;
        }

        var described = DroughtRules.Find(context.Site, stage);
        return new StageLine(stage, described, described is null ? [] : DroughtRules.Ceilings(context.Site, described, stage.First));
    }
}
