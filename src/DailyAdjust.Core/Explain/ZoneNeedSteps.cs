using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Explain;

/// <summary>What one zone asks of one program, from its depletion at 00:00 to its percentage.</summary>
internal static class ZoneNeedSteps
{
    public static (Section Section, DateOnly Last) Of(ProgramCase program, ZoneNeed need, string title, bool isExample)
    {
        var walk = new ForecastWalk(program, need);
        var steps = walk.Steps;
        steps.InsertRange(0, [.. DemandSteps.RootZone(need.Zone), .. WateringSteps.Efficiency(need.Zone.Station)]);
        Term first = new("Dr1", need.Forecast.BeforeFirstMm), raw = new("RAW", need.Zone.AllowableMm);
        steps.Add(Step.Of("below full before the first start to decide about", "Dr1", "{Dr}", first.Value, "mm", "", walk.BeforeFirst));
        steps.Add(Step.Of(
            "watering is not due before", "r", "{run_at} * {RAW}", need.Zone.Station.Area.RunAt * raw.Value, "mm", "site description", new("run_at", need.Zone.Station.Area.RunAt), raw));
        steps.Add(Step.Said($"due: {Yes(need.Due)}, {Step.Number(first.Value)} is {(need.Due ? "more" : "not more")} than {Step.Number(need.Zone.Station.Area.RunAt * raw.Value)}"));
        var dry = CanWait(program, need, walk);
        PutBack(need, walk);
        StaysWithin(need, walk, dry);
        var parts = NeedParts.Of(need.Forecast);
        steps.Add(Step.Of(
            "the zone needs the larger of both", "need", "round(max({pa}, {pb}) * 10000) / 10000", need.Percent, "%", "", new("pa", parts.PutBack), new("pb", parts.StaysWithin)));
        return (new Section(title, steps) { Brief = ["Dr1", "RAW", "pa", "pb", "need"], IsExample = isExample }, walk.Last);
    }

    /// <summary>Without water in the horizon, and then with the most that the dial gives.</summary>
    private static double CanWait(ProgramCase program, ZoneNeed need, ForecastWalk walk)
    {
        var (forecast, controller, steps) = (need.Forecast, program.Program.Controller, walk.Steps);
        steps.Add(Step.Said("Can it wait? No water before the next visit, then the most that " + (program.Program.Controller.Applies == Sites.PercentApplies.None ? "is ever advised." : "the dial gives.")));
        Term most = new("most", RunMinutes.At(controller, forecast.BaseMinutes, controller.PercentMax)), net = new("wmost", need.Zone.Net.DepthMm(most.Value));
        steps.Add(WateringSteps.Minutes("minutes at the largest percentage", most, controller, forecast.BaseMinutes, new("largest", controller.PercentMax)));
        steps.Add(WateringSteps.Net(need.Zone, most, net.Symbol, "net depth of them"));
        var outcome = forecast.RunBeyond(net.Value);
        var walked = walk.Run(default, WalkTo.LaterDate, net);
        steps.Add(Largest("most below full before a later start, without water", "dry", outcome.WorstLaterMm, walked.BeforeLater));
        steps.Add(Largest("most below full from then to the first start on a later date", "beyond", outcome.WorstBeyondMm, walked.Beyond));
        steps.Add(Step.Said($"can wait: {Yes(need.CanWait)}, {Step.Number(outcome.WorstLaterMm)} and {Step.Number(outcome.WorstBeyondMm)} {(need.CanWait ? "are" : "are not both")} within RAW {Step.Number(need.Zone.AllowableMm)}"));
        return outcome.WorstLaterMm;
    }

    /// <summary>(a).</summary>
    private static void PutBack(ZoneNeed need, ForecastWalk walk)
    {
        var (forecast, area, steps, parts) = (need.Forecast, need.Zone.Station.Area, walk.Steps, NeedParts.Of(need.Forecast));
        Term goal = new("e", area.LeaveEmpty * need.Zone.AllowableMm), refill = new("refill", parts.Refill ?? Setting.LargestPercent);
        steps.Add(Step.Said("(a) Fill it up, and leave room for rain."));
        steps.Add(Step.Of("may be below full after the last start", "e", "{leave_empty} * {RAW}", goal.Value, "mm", "site description", new("leave_empty", area.LeaveEmpty), new("RAW", need.Zone.AllowableMm)));
        steps.Add(Refill(need, parts, goal, refill));
        if (refill.Value > 0)
        {
            var water = Water(need, refill, "wa", steps);
            walk.Run(water, WalkTo.AfterLastStart);
            steps.Add(Step.Of("below full after the last start", "rest", "{Dr}", forecast.Run(water.Value).AfterLastMm, "mm", "", new Term("Dr", forecast.Run(water.Value).AfterLastMm)));
        }

        steps.Add(parts.Refill is null
            ? Step.Given("not even 1000 % does: (a) is", "pa", parts.PutBack, "%", "")
            : Step.Of("share of the need put back: (a) is", "pa", "{replace} * {refill}", parts.PutBack, "%", "site description", new("replace", area.Replace), refill));
    }

    private static Step Refill(ZoneNeed need, NeedParts parts, Term goal, Term refill)
    {
        var (forecast, station) = (need.Forecast, need.Zone.Station);
        var inOneRun = forecast.Starts.Horizon == 1 && need.Zone.Net.RunoffMm(forecast.BaseMinutes * refill.Value / 100) <= 0;
        const string name = "smallest percentage that does it";
        return parts.Refill is null ? Step.Given("even at the largest percentage looked at it stays further below full", "refill", Setting.LargestPercent, "%", "by trial")
            : inOneRun && refill.Value > 0 ? Step.Of(
                name, "refill", "({Dr1} - {e}) * 60 / ({rate} * {eff}) / {base} * 100", refill.Value, "%", "one start: straight on",
                new("Dr1", forecast.BeforeFirstMm), goal, new("rate", station.Rate.MmPerHour), new("eff", station.Efficiency), new("base", forecast.BaseMinutes))
            : Step.Given(name, "refill", refill.Value, "%", refill.Value > 0 ? "by trial, to 0.000001 %; the lines below show it" : "it is no further below full without water");
    }

    /// <summary>(b).</summary>
    private static void StaysWithin(ZoneNeed need, ForecastWalk walk, double dryMm)
    {
        var (steps, parts) = (walk.Steps, NeedParts.Of(need.Forecast));
        steps.Add(Step.Said("(b) Stay within allowable depletion before every later start."));
        Term percent = new("pb", parts.StaysWithin);
        if (percent.Value <= 0)
        {
            steps.Add(Step.Given($"without water it is at most {Step.Number(dryMm)} below full, within RAW: (b) is", "pb", 0, "%", "as above"));
            return;
        }

        steps.Add(Step.Given(
            parts.Within is not null ? "smallest percentage that does it" : parts.Fill is not null ? "none does: the smallest that fills the zone" : "none does, and not even 1000 % fills the zone: (b) is",
            "pb", percent.Value, "%", "by trial, to 0.000001 %; the lines below show it"));
        var water = Water(need, percent, "wb", steps);
        var walked = walk.Run(water, WalkTo.FirstStartAfter);
        steps.Add(Largest("most below full before a later start", "worst", need.Forecast.Run(water.Value).WorstLaterMm, walked.BeforeLater));
    }

    private static Term Water(ZoneNeed need, Term percent, string symbol, List<Step> steps)
    {
        Term minutes = new("minutes", need.Forecast.BaseMinutes * percent.Value / 100), water = new(symbol, NeedParts.WaterMm(need.Forecast, percent.Value));
        steps.Add(Step.Of("minutes of a start, not rounded", "minutes", $"{{base}} * {{{percent.Symbol}}} / 100", minutes.Value, "min", "", new("base", need.Forecast.BaseMinutes), percent));
        steps.Add(WateringSteps.Net(need.Zone, minutes, symbol, "net depth of a start"));
        return water;
    }

    public static Step Largest(string name, string symbol, double value, IReadOnlyList<Term> of) => of.Count == 0
        ? Step.Given(name + ": there is none", symbol, value, "mm", "")
        : Step.Of(name, symbol, $"max(0, {string.Join(", ", of.Select(t => "{" + t.Symbol + "}"))})", value, "mm", "", of);

    public static string Yes(bool value) => value ? "yes" : "no";
}
