using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;

namespace DailyAdjust.Core.Explain;

/// <summary>Whether the present setting serves a zone as well as the new number would.</summary>
internal static class GoodEnoughSteps
{
    /// <summary>Every zone not set aside.</summary>
    public static IReadOnlyList<Section> Of(ProgramCase program, double proposed, string titleBefore)
    {
        var (present, worth) = (program.Present.Setting.Percent, program.Context.Site.Report.Worth);
        List<ZoneNeed> zones = [.. program.Need!.Zones.Where(z => !program.Need.SetAside.Contains(z))];
        bool Holds(ZoneNeed z) => GoodEnough.Holds(program.Program, z.Forecast, present, proposed, worth);
        var example = zones.Find(z => !Holds(z)) ?? zones[0];
        return [.. zones.Select(z => Of(program, z, present, proposed, worth, Holds(z), titleBefore) with { IsExample = ReferenceEquals(z, example) })];
    }

    private static Section Of(ProgramCase program, ZoneNeed zone, double present, double proposed, double worth, bool holds, string titleBefore)
    {
        var (controller, forecast) = (program.Program.Controller, zone.Forecast);
        var walk = new ForecastWalk(program, zone);
        walk.Steps.InsertRange(0, [.. DemandSteps.RootZone(zone.Zone), .. WateringSteps.Efficiency(zone.Zone.Station)]);
        var steps = walk.Steps;
        Term slack = new("slack", worth * zone.Zone.AllowableMm), raw = new("RAW", zone.Zone.AllowableMm);
        steps.Add(Step.Of("worth a walk", "slack", "{worth} * {RAW}", slack.Value, "mm", "site description", new("worth", worth), raw));
        var now = Way(walk, controller, forecast, "at the present setting", new("setting", present), "wnow");
        List<string> drains = [.. now.BeforeStarts.Select(t => $"max(0, {{wnow}} - {{{(t.Symbol is "Dr" ? "Dr1" : t.Symbol)}}})")];
        Term water = new("wnow", GoodEnough.WaterOf(program.Program, forecast, present)), first = new("Dr1", forecast.BeforeFirstMm);
        var outcome = forecast.Run(water.Value);
        steps.Add(Step.Of("of this water drains", "drains", string.Join(" + ", drains), outcome.DrainedMm, "mm", "each start's excess over the depth below full", [water, first, .. now.BeforeStarts.Skip(1)]));
        steps.Add(ZoneNeedSteps.Largest("most below full before a later start", "worst", outcome.WorstLaterMm, now.BeforeLater));
        var then = Way(walk, controller, forecast, "at the new number", new("number", proposed), "wnew");
        for (var i = 0; i < now.BeforeLater.Count; i++)
        {
            Term there = now.BeforeLater[i], here = then.BeforeLater[i];
            steps.Add(Step.Of(
                "drier than with the new number by", "drier", $"{{{there.Symbol}}} - {{{here.Symbol}}}", there.Value - here.Value, "mm", "counts where the first is beyond RAW", there, here));
        }

        steps.Add(Step.Said($"good enough: {ZoneNeedSteps.Yes(holds)} (drains at most slack; and before every later start within RAW, or drier by at most slack)"));
        return new Section($"{titleBefore}Good enough as it is? {zone.Zone.Station.Key}", steps) { Brief = ["slack", "wnow", "drains", "worst", "RAW"] };
    }

    private static WalkedHorizon Way(ForecastWalk walk, Sites.Controller controller, ZoneForecast forecast, string name, Term percent, string symbol)
    {
        Term minutes = new("minutes", RunMinutes.At(controller, forecast.BaseMinutes, percent.Value)), water = new(symbol, forecast.Zone.Net.DepthMm(minutes.Value));
        if (percent.Symbol is "setting")
        {
            walk.Steps.Add(Step.Of("below full before the first start", "Dr1", "{Dr}", forecast.BeforeFirstMm, "mm", "", walk.BeforeFirst));
        }

        walk.Steps.Add(WateringSteps.Minutes("minutes " + name, minutes, controller, forecast.BaseMinutes, percent));
        walk.Steps.Add(WateringSteps.Net(forecast.Zone, minutes, symbol, "net depth of a start"));
        return walk.Run(water, WalkTo.FirstStartAfter);
    }
}
