using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>A program and a visit to its box today: what the sheet would say there, and what not going costs until the next visit.</summary>
/// <param name="Program">Which.</param>
/// <param name="NextVisit">When somebody comes.</param>
/// <param name="Advice">What would be said.</param>
/// <param name="Percent">set and resume: the number; null otherwise.</param>
/// <param name="WastedMm">Irrigation that drains until then and would not, mm by ground.</param>
/// <param name="WastedL">The same as a volume; null where the ground of a zone is not known.</param>
/// <param name="ZonesBeyond">Zones that go beyond their allowable depletion before a start until then, and would not.</param>
/// <param name="DaysBeyond">On how many starts' dates, summed over those zones.</param>
/// <param name="BeyondMm">By how much the worst of them, mm.</param>
/// <param name="IsAlert">It costs more than the site lets pass.</param>
public sealed record VisitWorth(
    ProgramKey Program, DateOnly NextVisit, AdviceKind Advice, double? Percent, double WastedMm, double? WastedL, int ZonesBeyond, int DaysBeyond, double BeyondMm, bool IsAlert)
{
    /// <summary>What going would save, as a share of allowable depletion: how visits compare.</summary>
    public double Cost { get; init; }

    /// <summary>resume of a program that is off and has a note: a sentence that quotes it, and says to turn it on only if that is mended or over, or quotes the later note that says so; empty otherwise.</summary>
    public Phrase NotedBefore { get; init; } = Phrase.Empty;

    /// <summary>The controller has no percentage: the number is percent of the minutes in stations.csv.</summary>
    public bool MinutesOnly { get; init; }

    /// <summary>set and resume where the controller has no percentage: the minutes to key in.</summary>
    public IReadOnlyList<StationMinutes> NewMinutes { get; init; } = [];

    /// <summary>Null: going would change nothing, or nobody can say.</summary>
    /// <param name="context">The morning.</param>
    /// <param name="program">As if somebody went today.</param>
    /// <param name="decision">What would be decided.</param>
    internal static VisitWorth? Of(AdviceContext context, ProgramCase program, Decision decision)
    {
        if (program.Need is not { } need || decision.Advice is not (AdviceKind.Set or AdviceKind.Resume or AdviceKind.Skip))
        {
            return null;
        }

        var then = decision.Advice == AdviceKind.Skip ? 0 : decision.Percent!.Value;
        var now = program.Present.Setting.Percent;
        double ground = 0, wasted = 0, worst = 0, cost = 0;
        double? litres = 0;
        int zones = 0, days = 0;
        var weigh = ProgramNeed.GroundOf(need.Zones);
        foreach (var zone in need.Zones)
        {
            var (going, staying) = (Run(program.Program, zone.Forecast, then), Run(program.Program, zone.Forecast, now));
            var drains = Math.Max(0, staying.DrainedMm - going.DrainedMm);
            var beyond = Math.Max(0, staying.WorstMm - Math.Max(going.WorstMm, zone.Zone.AllowableMm));
            ground += weigh(zone);
            wasted += drains * weigh(zone);
            litres += zone.Zone.Station.GroundM2 * drains;
            zones += beyond > Depth.ToleranceMm ? 1 : 0;
            days += beyond > Depth.ToleranceMm ? Math.Max(0, staying.StartsBeyond - going.StartsBeyond) : 0;
            worst = Math.Max(worst, beyond);
            cost += (drains + beyond) / zone.Zone.AllowableMm * weigh(zone);
        }

        cost /= ground;
        return new VisitWorth(
            program.Program.Key, context.Visits.NextAfter(program.Program, context.Date), decision.Advice, decision.Percent, wasted / ground, litres, zones, days, worst, cost > context.Site.Report.VisitAlert)
        {
            Cost = cost,
            MinutesOnly = program.Program.Controller.Applies == PercentApplies.None,
            NewMinutes = decision.Advice == AdviceKind.Skip ? [] : StationMinutes.Of(context, program.Program, program.Present.Setting, then),
            NotedBefore = program.Noted is { } noted && decision.Advice == AdviceKind.Resume ? FaultWords.BeforeTurningOn(noted, context.Site.Clock) : Phrase.Empty,
        };
    }

    private static (double DrainedMm, double WorstMm, int StartsBeyond) Run(PlannedProgram program, ZoneForecast forecast, double percent)
    {
        Span<double> before = new double[forecast.LaterStarts];
        var outcome = forecast.Run(GoodEnough.WaterOf(program, forecast, percent), before);
        var beyond = 0;
        foreach (var mm in before)
        {
            beyond += mm > forecast.Zone.AllowableMm + Depth.ToleranceMm ? 1 : 0;
        }

        return (outcome.DrainedMm, outcome.WorstLaterMm, beyond);
    }
}
