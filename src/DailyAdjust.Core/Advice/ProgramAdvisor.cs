using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Judges every program of a site on one morning, and lays the advice out. Finish times are filled in by the fit.</summary>
internal sealed class ProgramAdvisor(
    AdviceContext context,
    IReadOnlyList<RecentRain> recentRain,
    Doubts doubts,
    Phrase? noAdvice)
{
    private readonly ReasonWriter _reasons = new(context, recentRain, noAdvice);
    private readonly BoxJudge _boxes = new(context, doubts, noAdvice is not null);

    /// <summary>Every program, in walking order.</summary>
    public IReadOnlyList<Judged> Judge()
    {
        var all = new List<Judged>();
        foreach (var controller in context.Site.Controllers.OrderBy(c => c.Route))
        {
            all.AddRange(_boxes.Judge(this, controller, _ => true));
        }

        return all;
    }

    /// <summary>Programs that nobody visits today and that would be changed, the costliest to leave first.</summary>
    public IReadOnlyList<VisitWorth> IfVisited() => noAdvice is null ? Worth(AsIfVisited(p => !context.Visits.IsVisit(p, context.Date))) : [];

    /// <summary>The same of all programs, visited today or not; and those that must be switched off.</summary>
    public (IReadOnlyList<VisitWorth> Worth, IReadOnlyList<SwitchOff> Orders) Visits()
    {
        var judged = AsIfVisited(_ => true).ToList();
        return (Worth(judged), [.. judged
            .Where(j => j.Decision is { Advice: AdviceKind.Off, Prohibition: not null } && !j.Case.Present.Setting.IsOff)
            .Select(j => new SwitchOff(j.Case.Program.Key, j.Decision.Prohibition!.Why, j.Decision.Prohibition.Until))]);
    }

    private IEnumerable<Judged> AsIfVisited(Func<PlannedProgram, bool> asked) =>
        context.Site.Controllers.SelectMany(controller => _boxes.Judge(this, controller, asked, asIfVisited: true));

    private IReadOnlyList<VisitWorth> Worth(IEnumerable<Judged> judged) =>
        [.. judged.Select(j => VisitWorth.Of(context, j.Case, j.Decision)).OfType<VisitWorth>().OrderByDescending(w => w.Cost)];

    /// <summary>The morning that it judges by.</summary>
    public AdviceContext Context => context;

    /// <summary>One program judged as if some rain had fallen besides.</summary>
    public Judged Supposing(ProgramCase program, SupposedRain rain) =>
        _boxes.Judge(this, program.Program.Controller, p => p.Key == program.Program.Key, rain: rain).Single();

    /// <summary>The whole advice for a program.</summary>
    /// <param name="judged">As this advisor judged it.</param>
    /// <param name="decision">What is decided.</param>
    /// <param name="supposing">What would be decided under a supposed rain.</param>
    /// <param name="otherWay">The other way of judging it, where nobody answered an earlier sheet; null = there is none.</param>
    public ProgramAdvice Advise(Judged judged, Decision decision, Func<SupposedRain, Decision> supposing, Judged? otherWay)
    {
        var program = judged.Case;
        var present = program.Present.Setting;
        var advised = decision.Percent ?? present.Percent;
        var advice = new ProgramAdvice
        {
            Key = program.Program.Key,
            Name = program.Program.Program.Name,
            Present = present,
            Confirmed = program.Present.Confirmed,
            Advice = decision.Advice,
            Percent = decision.Advice switch
            {
                AdviceKind.Set or AdviceKind.Resume => decision.Percent,
                AdviceKind.Leave or AdviceKind.KeepOff => present.Percent,
                _ => null,
            },
            ExactPercent = decision.ExactPercent,
            Reason = Phrase.Empty,
            Zones = [.. context.ZonesOf(program.Program).Select(z => ZoneOf(z, program, decision, advised))],
            MayBeOn = !present.IsOff,
            LongRuns = decision.Advice is AdviceKind.Set or AdviceKind.Resume or AdviceKind.Leave && advised > 0 ? LongRunsOf(program, advised) : [],
            DialShowsChange = program.Program.Controller.ShowsChange,
            MinutesOnly = program.Program.Controller.Applies == PercentApplies.None,
            OffUntil = decision.Prohibition?.Until,
            OffUntilClock = decision.Prohibition?.UntilClock,
            PausedUntil = program.Present.PausedUntil,
            GrowInBegins = decision.Cause == Cause.GrowInBegins ? program.GrowInBegins : null,
            Fault = program.Noted is { Answer: null } ? program.Noted : null,
        };
        if (decision.Advice is not (AdviceKind.Off or AdviceKind.Skip or AdviceKind.KeepOff))
        {
            advice = advice with
            {
                TakenOut = program.TakenOut,
                StationsOut = OrderHits.Stations(context, program.Program, program.Horizon),
            };
        }

        advice = advice with { InPlace = StartsInPlace.Of(context, program, advice.LongRuns, advised) };
        advice = Ahead(advice, judged, decision, otherWay, () => StopRules.Of(context, [.. judged.Box.Where(c => c.Need is not null)], supposing));
        var chain = _reasons.Of(judged, decision, advice);
        var condition = _reasons.Condition(program, decision);
        var (reason, because) = (Phrase.Sentences(condition, chain[0].Words), ReasonWriter.Because(decision, chain[0]));
        return advice with { NamedDay = ReasonWriter.NamedDay(decision, advice), Condition = condition, Because = because, Reason = reason, Chain = [chain[0] with { Words = reason }, .. chain.Skip(1)] };
    }

    private ProgramAdvice Ahead(ProgramAdvice advice, Judged judged, Decision decision, Judged? otherWay, Func<StopRule?> stopRule)
    {
        var program = judged.Case;
        switch (decision.Advice)
        {
            case AdviceKind.Skip:
                var resume = LookAhead.Resume(context, program);
                if (otherWay is not null && LookAhead.Resume(otherWay.Case.Context, otherWay.Case) is { } sooner && !(resume?.On <= sooner.On))
                {
                    // The drier ground decides when it is turned on again.
                    resume = sooner;
                }

                advice = advice with
                {
                    LookAgain = resume?.On ?? LookAhead.NextJudged(program),
                    After = resume,
                    PauseDays = Pauses.DaysOf(program.Program.Controller, context.Date, resume?.On),
                };
                return GrowInAhead.Bound(context, advice, program, judged.Box);
            case AdviceKind.KeepOff or AdviceKind.Leave or AdviceKind.Resume when !program.IsOwn:
                return advice;
            case AdviceKind.Leave when program.Need is null:
                return advice with { LookAgain = LookAhead.NextJudged(program) };
            case AdviceKind.KeepOff when program.Need is null:
                return GrowInAhead.Bound(context, advice with { LookAgain = LookAhead.NextJudged(program) }, program, judged.Box);
            case AdviceKind.KeepOff:
                var later = LookAhead.Resume(context, program);
                return GrowInAhead.Bound(context, advice with { LookAgain = later?.On, After = later, Shortfall = decision.Cut is null ? null : ShortfallOf(judged, decision) }, program, judged.Box);
            case AdviceKind.Leave:
                // It runs tonight as it is: rain before its start may make it one to leave out too.
                return advice with { StopRule = stopRule() };
            case AdviceKind.Set or AdviceKind.Resume:
                return advice with
                {
                    After = program.Need is null ? null : LookAhead.After(context, program, decision.Percent!.Value),
                    StopRule = program.Need is null ? null : stopRule(),
                    Shortfall = ShortfallOf(judged, decision),
                    NewMinutes = StationMinutes.Of(context, program.Program, program.Present.Setting, decision.Percent!.Value),
                };
            default:
                return advice;
        }
    }

    private ZoneAdvice ZoneOf(ZonePlan zone, ProgramCase program, Decision decision, double advised)
    {
        var need = program.Need?.Zones.FirstOrDefault(z => ReferenceEquals(z.Zone, zone));
        var isAside = need is not null && program.Need!.SetAside.Contains(need);
        double shortMm = 0, drains = 0;
        if (need is not null && decision.Advice is not (AdviceKind.Off or AdviceKind.AsSet))
        {
            // Left off, a program can leave ground short too: of a skip, what lies beyond the share that can wait.
            var water = decision.Advice is AdviceKind.Skip or AdviceKind.KeepOff ? 0 : GoodEnough.WaterOf(program.Program, need.Forecast, advised);
            var outcome = need.Forecast.Run(water);
            shortMm = Beyond(outcome.WorstLaterMm, zone.AllowableMm);
            drains = outcome.DrainedMm;
        }

        return new ZoneAdvice
        {
            Station = zone.Station.Key,
            Name = zone.Station.Label,
            Area = zone.Station.Area.Name,
            Percent = need?.Percent,
            DepletionMm = context.DepletionMm[zone.Station.Key],
            AllowableMm = zone.AllowableMm,
            CanWait = need?.CanWait ?? false,
            Due = need?.Due ?? false,
            SetAside = isAside,
            AreaMedianPercent = isAside ? program.Need!.MedianOf(need!) : null,
            ShortMm = shortMm,
            DrainsMm = drains,
        };
    }

    private static double Beyond(double mm, double allowableMm) => mm - allowableMm > Depth.ToleranceMm ? mm - allowableMm : 0;

    /// <summary>What a number that the dial cuts off, or that was cut to fit the night, leaves undone of what the ground needs, a start: for the zone that the exact number was made for.</summary>
    private static Shortfall? ShortfallOf(Judged judged, Decision decision)
    {
        var program = judged.Case;
        var controller = program.Program.Controller;
        var given = decision.Percent ?? 0;
        var whole = decision.Cut is not null || given >= controller.PercentMax ? decision.ExactPercent : null;
        if (decision.Cut is { } cut && whole is { } exact && DialNumber.Nearest(controller, exact) > cut.FromPercent)
        {
            // Another rule than the dial kept the number lower already: the night does not lack that.
            whole = cut.FromPercent;
        }

        if (program.Need is null || !(whole > given))
        {
            return null;
        }

        var need = judged.Leader?.Need ?? program.Need;
        var zone = need.Zones.Where(z => !need.SetAside.Contains(z)).MaxBy(z => z.Percent)!.Forecast;
        double wanted = zone.BaseMinutes * whole.Value / 100, runs = zone.BaseMinutes * given / 100;
        return new Shortfall(zone.Zone.Net.DepthMm(wanted) - zone.Zone.Net.DepthMm(runs), wanted - runs, DialEnds: decision.Cut is null);
    }

    private IReadOnlyList<LongRun> LongRunsOf(ProgramCase program, double percent) =>
    [
        .. from zone in context.ZonesOf(program.Program)
           let minutes = RunMinutes.At(program.Program.Controller, zone.Station.BaseMinutes[program.Program.Key.Program], percent)
           let split = CycleAndSoak.Of(zone.Station, minutes)
           where split is not null
           select new LongRun(zone.Station.Key, zone.Station.Label, minutes, split),
    ];
}
