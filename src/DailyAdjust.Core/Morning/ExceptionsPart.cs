using DailyAdjust.Core.Advice;
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
        GrowIns = [.. context.Programs.OrderBy(p => p.Controller.Route).Select(p => GrowInPart.Of(context, p)).OfType<GrowInLine>()],
        Shut = [.. context.Site.Controllers.OrderBy(c => c.Route).Select(c => ShutBoxOf(context, c, log)).OfType<ShutBox>()],
        Season = [.. context.Site.Controllers.OrderBy(c => c.Route).Select(c => SeasonOf(context, c)).OfType<SeasonBox>()],
        Stage = StageToday(context, log),
        Night = NightCautionPart.Of(inputs, context.Site),
        PutBack = PutBackPart.Of(context),
        TakenOutRuns = TakenOutPart.Of(context, log),
    };

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
