using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Explain;

/// <summary>How a program's advice came about, from each zone's depletion at 00:00 to what the sheet says.</summary>
public static class ProgramSteps
{
    /// <summary>One program of a morning.</summary>
    /// <param name="inputs">The morning.</param>
    /// <param name="sheet">The sheet that they give.</param>
    /// <param name="key">A program of the sheet.</param>
    /// <exception cref="InvalidOperationException">There is no such program.</exception>
    public static IReadOnlyList<Section> Of(MorningInputs inputs, MorningSheet sheet, ProgramKey key)
    {
        var settled = MorningCalculation.Judge(inputs).Settled.First(s => s.Case.Program.Key == key);
        var last = inputs.Date;
        List<Section> sections = [];
        if (settled.Question is { } question)
        {
            var rests = ReferenceEquals(settled.Rests, question.IfDone);
            var other = rests ? question.AsLogged : question.IfDone;
            sections.AddRange(Way(other, rests ? "As logged: " : "If it was done: ", isExample: false, ref last));
            sections.AddRange(Way(settled.Rests, rests ? "If it was done: " : "As logged: ", isExample: true, ref last));
            sections.Add(Unanswered(settled, question));
        }
        else
        {
            sections.AddRange(Way(settled.Rests, "", isExample: true, ref last));
        }

        if (settled.Case.Need is not null)
        {
            sections.Insert(0, ExpectedEtoSteps.Of(inputs, settled.Case.Context, last));
        }

        sections.Add(Says(sheet, key));
        return sections;
    }

    private static List<Section> Way(Judged judged, string before, bool isExample, ref DateOnly last)
    {
        List<Section> sections = [];
        var program = judged.Case;
        if (program.Need is { } need)
        {
            var deciding = need.Zones.First(z => z.Percent == need.ExactPercent && !need.SetAside.Contains(z));
            foreach (var zone in need.Zones)
            {
                var station = zone.Zone.Station;
                var (section, lastDay) = ZoneNeedSteps.Of(program, zone, $"{before}{station.Key} {station.Label}", isExample && ReferenceEquals(zone, deciding));
                sections.Add(section);
                last = lastDay > last ? lastDay : last;
            }

            sections.Add(AreaSteps.Of(program, before + "From the zones to the program"));
        }

        // Programs that were asked whether they are good enough as they are.
        if (judged.Decision is { Proposed: { } proposed, Advice: not AdviceKind.Resume })
        {
            sections.AddRange(judged.Box.Where(c => c.Need is not null && c.IsOwn && !c.Present.Setting.IsOff).SelectMany(c => GoodEnoughSteps.Of(c, proposed, before)));
        }

        sections.Add(DecisionSteps.Of(judged, before + "Which rule decides"));
        return sections;
    }

    private static Section Unanswered(Settled settled, OpenQuestion question)
    {
        var (context, controller) = (settled.Case.Context, settled.Case.Program.Controller);
        var newest = question.Newest;
        List<Step> steps =
        [
            Step.Said($"The sheet of {Words.Date(newest.Sheet)} said {Said(newest.Line.Advice, newest.Line.Percent)}, and nobody answered: reckoned both ways."),
            Step.Said($"as logged: {Said(question.AsLogged.Decision.Advice, question.AsLogged.Decision.Percent)}; if it was done: {Said(question.IfDone.Decision.Advice, question.IfDone.Decision.Percent)}"),
            Step.Given("asked for as logged", "logged", OpenQuestion.Wanted(question.AsLogged), "%", "0 = nothing"),
            Step.Given("asked for if it was done", "done", OpenQuestion.Wanted(question.IfDone), "%", "0 = nothing"),
        ];
        if (question is { AsLogged: { Case.Need: not null, Decision.Advice: not (AdviceKind.Off or AdviceKind.AsSet) }, IfDone.Case.Need: not null } && settled.Decision.Percent is { } number)
        {
            var isMinutes = controller.Applies == PercentApplies.None;
            var onDial = DecisionSteps.OnDial(controller);
            var isCut = Prohibitions.Ceiling(context, question.AsLogged.Case.Program, question.AsLogged.Case.Horizon) is not null;
            var (lastSaid, far) = question.Reach(context);
            Term wanted = new("wanted", OpenQuestion.Wanted(settled.Rests)), last = new("last", lastSaid), reach = new("far", far), step = new("step", controller.PercentStep);
            steps.Add(Step.Given("the number rests on the way that asks", "wanted", wanted.Value, "%", ReferenceEquals(settled.Rests, question.IfDone) ? "if it was done" : "as logged"));
            steps.Add(Step.Given("number last advised", "last", lastSaid, "%", "before it was cut to fit the night, if it was; else the last at which it ran"));
            steps.Add(Step.Given(isMinutes ? "a step of the percentage for every day since" : "a step of the dial for every day since", "far", far, "%", ""));
            steps.Add(isCut ? Step.Given($"near it, {onDial}, no more than either way asks, and within the ceiling of the place", "number", number, "%", "") : Step.Of(
                $"near it, {onDial}, and no more than either way asks", "number",
                "min(max({logged}, {done}), min({largest}, max({smallest}, floor(min({last} + {far}, max({last} - {far}, {wanted})) / {step} + 0.5) * {step})))",
                number, "%", "halves up",
                new("logged", OpenQuestion.Wanted(question.AsLogged)), new("done", OpenQuestion.Wanted(question.IfDone)), new("largest", controller.PercentMax), new("smallest", DecisionSteps.Smallest(controller)), last, reach, wanted, step));
        }

        steps.Add(Step.Said($"the sheet rests on the way {(ReferenceEquals(settled.Rests, question.IfDone) ? "in which it was done" : "that was logged")}: {Said(settled.Decision.Advice, settled.Decision.Percent)}"));
        return new Section("An earlier sheet was not answered", steps);
    }

    private static Section Says(MorningSheet sheet, ProgramKey key)
    {
        var advice = sheet.Programs.First(p => p.Key == key);
        List<Step> steps = [];
        if (sheet.Fit.Cuts.FirstOrDefault(c => c.Program == key) is { } cut)
        {
            steps.Add(Step.Given("asked for", "asked", cut.FromPercent, "%", "as above"));
            steps.Add(Step.Given("cut to fit the night and the pump", "fits", cut.ToPercent, "%", $"largest number {(advice.MinutesOnly ? "of its steps" : "on the dial")} that fits, by trial"));
            if (cut.Short is { } left)
            {
                steps.Add(Step.Given("left undone of a start", "left", left.DepthMm, "mm", "of the zone that the number was made for"));
            }
        }

        if (advice.Shortfall is { DialEnds: true } shortfall)
        {
            steps.Add(Step.Given((advice.MinutesOnly ? "no more is ever advised" : "the dial ends") + ": left undone of a start", "left", shortfall.DepthMm, "mm", "of the zone that the number was made for"));
        }

        var said = "advice: " + AdviceCode.Of(advice.Advice);
        steps.Add(advice.Percent is { } percent ? Step.Given(said, "percent", percent, "%", advice.MinutesOnly ? "of the minutes in stations.csv" : "") : Step.Said(said + ", no number"));
        steps.AddRange(advice.NewMinutes.Select(m => Step.Said(FormattableString.Invariant($"station {m.Station.Station}: {m.From:0.##} -> {m.To:0.##} min"))));
        return new Section("What the sheet says", steps);
    }

    private static string Said(AdviceKind advice, double? percent) => AdviceCode.Of(advice) + (percent is { } p ? " " + Words.Percent(p) : "");
}
