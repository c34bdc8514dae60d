using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>
/// Judges the programs of one controller: together where they share a percentage; one after another, in the order of their starts, where a station
/// stands in two of them, so that the second is judged with the first one's new number; else each by itself.
/// </summary>
internal sealed class BoxJudge(AdviceContext context, Doubts doubts, bool noSoundAdvice)
{
    private static readonly IReadOnlyDictionary<ProgramKey, Setting> Nothing = new Dictionary<ProgramKey, Setting>();

    /// <param name="advisor">Who asks.</param>
    /// <param name="controller">The box.</param>
    /// <param name="asked">Which of its programs are asked about.</param>
    /// <param name="asIfVisited">As if somebody came today, whatever the visit days are.</param>
    /// <param name="rain">Rain to suppose.</param>
    /// <returns>Those programs, in the controller's order.</returns>
    public IEnumerable<Judged> Judge(ProgramAdvisor advisor, Controller controller, Func<PlannedProgram, bool> asked, bool asIfVisited = false, SupposedRain rain = default)
    {
        var programs = context.Programs.Where(p => ReferenceEquals(p.Controller, controller)).ToList();
        if (!programs.Exists(p => asked(p)))
        {
            return [];
        }

        ProgramCase CaseOf(PlannedProgram program, IReadOnlyDictionary<ProgramKey, Setting> newSettings) =>
            new(context, program, !noSoundAdvice, asIfVisited, newSettings, rain);
        if (controller.Applies == PercentApplies.Controller)
        {
            var box = programs.ConvertAll(p => CaseOf(p, Nothing));
            return box.Where(c => asked(c.Program)).Select(c => new Judged(advisor, c, box, Decide(c, box)));
        }

        if (!programs.Exists(p => context.ZonesOf(p).Any(z => z.Programs.Count > 1)))
        {
            return programs.Where(asked).Select(p => CaseOf(p, Nothing)).Select(c => new Judged(advisor, c, [c], Decide(c, [c])));
        }

        return InOrderOfStarts(advisor, programs, CaseOf).OrderBy(j => programs.IndexOf(j.Case.Program)).Where(j => asked(j.Case.Program));
    }

    private List<Judged> InOrderOfStarts(ProgramAdvisor advisor, List<PlannedProgram> programs, Func<PlannedProgram, IReadOnlyDictionary<ProgramKey, Setting>, ProgramCase> caseOf)
    {
        var judged = new List<Judged>();
        foreach (var program in programs.OrderBy(FirstStart))
        {
            var known = judged.Where(j => j.Case.IsVisit).ToDictionary(j => j.Case.Program.Key, j => NewSetting(j.Case, j.Decision));
            var next = caseOf(program, known);
            judged.Add(new Judged(advisor, next, [next], Decide(next, [next])));
        }

        return judged;
    }

    private Decision Decide(ProgramCase program, IReadOnlyList<ProgramCase> box) => DecisionRules.Decide(context, program, box, noSoundAdvice, doubts);

    /// <summary>The first one from the round on; a program without any comes last.</summary>
    private DateTimeOffset FirstStart(PlannedProgram program) => context.StartsOf(program, context.RoundDone)
        .Select(s => s.Start.At).DefaultIfEmpty(DateTimeOffset.MaxValue).First();

    /// <summary>What stands on the program once the advice is carried out.</summary>
    private static Setting NewSetting(ProgramCase program, Decision decision) => decision.Advice switch
    {
        AdviceKind.Set or AdviceKind.Resume => new Setting(decision.Percent!.Value),
        AdviceKind.Skip or AdviceKind.Off or AdviceKind.KeepOff => Setting.Off,
        _ => program.Present.Setting,
    };
}
