using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>The links of the chain behind the sheet's one sentence: what comes next, what each area needs, what the number leaves, and what is to be taken out.</summary>
internal sealed class FurtherReasons(AdviceContext context)
{
    private UnitSystem Units => context.Site.Units;

    public IEnumerable<Reason> Of(ProgramCase program, Decision decision, ProgramAdvice advice) =>
    [
        .. Limits(decision, advice),
        .. Need(program, advice),
        .. Leftovers(program, advice),
        .. advice.TakenOut.Select(t => Reason.Plain("restricted-start", $"The start of {Words.DateAndTime(context.Site.Clock, t.At)} must not run ({t.Why}): take that start out.")),
        .. advice.StationsOut.Select(o => Reason.Plain("stations-out", OutWords(o))),
    ];

    private IEnumerable<Reason> Need(ProgramCase program, ProgramAdvice advice)
    {
        if (program.Need is not { } need)
        {
            yield break;
        }

        // Where nothing is set there is no number that could serve any.
        var served = advice.Advice is AdviceKind.Set or AdviceKind.Resume ? $"; the number serves {Words.Share(context.Site.Report.Satisfy)} of the ground" : Phrase.Empty;
        foreach (var area in need.Zones.GroupBy(z => z.Zone.Station.Area.Name, StringComparer.Ordinal))
        {
            var zones = area.Where(z => !need.SetAside.Contains(z)).ToList();
            var data = new SortedDictionary<string, double>(StringComparer.Ordinal)
            {
                ["leastPercent"] = zones.Min(z => z.Percent),
                ["mostPercent"] = zones.Max(z => z.Percent),
                ["zones"] = zones.Count,
            };
            yield return Reason.With("area-need", $"{area.Key}: {Phrase.Count(zones.Count, "zone needs", "zones need")} {Range(zones)}{served}.", data);
        }

        foreach (var zone in need.SetAside.OrderByDescending(z => z.Percent))
        {
            yield return Reason.With("set-aside", $"{zone.Zone.Station.Label} needs {Words.Percent(Math.Round(zone.Percent))}, far more than its area: hose and probe there.", new SortedDictionary<string, double>(StringComparer.Ordinal) { ["percent"] = zone.Percent });
        }
    }

    private IEnumerable<Reason> Limits(Decision decision, ProgramAdvice advice)
    {
        if (advice.After is { } after && advice.Advice is (AdviceKind.Set or AdviceKind.Resume))
        {
            yield return Reason.Plain("after", $"{Words.Percent(advice.Percent!.Value)}{(advice.MinutesOnly ? new Phrase(" of the minutes in stations.csv") : Phrase.Empty)} now, about {Words.Percent(after.Percent)} from {Words.Date(after.On)} if no rain falls.");
        }

        if (advice is { GrowInBegins: { } first, Advice: AdviceKind.Skip or AdviceKind.KeepOff })
        {
            yield return Reason.Plain("grow-in-ahead", $"It has to be on again for the grow-in that begins {Words.When(context.Site.Clock, context.Date, first)}.");
        }

        if (advice.LookAgain is { } day && (advice.GrowInBegins is null || advice.After is not null) && decision.Cause is (Cause.CanWait or Cause.NotDue))
        {
            yield return Reason.Plain("look-again", $"{Words.Date(day)}{(advice.After is { } then ? $", at about {Words.Percent(then.Percent)}," : Phrase.Empty)} it is wanted again if no rain falls.");
        }

        if (advice.Shortfall is { } cut && AdviceSentences.NumberEnds(advice, Units) is { IsEmpty: false } ends)
        {
            yield return Reason.With("shortfall", ends, new SortedDictionary<string, double>(StringComparer.Ordinal) { ["depthMm"] = cut.DepthMm, ["minutes"] = cut.Minutes });
        }

        if (advice.StopRule is { } rule)
        {
            yield return Reason.With("stop-rule", AdviceSentences.Stop(rule, Units, context.Site.Clock, context.Date), new SortedDictionary<string, double>(StringComparer.Ordinal) { ["rainMm"] = rule.RainMm });
        }
    }

    private IEnumerable<Reason> Leftovers(ProgramCase program, ProgramAdvice advice)
    {
        var shortOnes = advice.Zones.Where(z => z.ShortMm > 0).OrderByDescending(z => z.ShortMm).ToList();
        if (shortOnes.Count > 0)
        {
            yield return Reason.With("short", $"Left past the allowable: {Words.List([.. shortOnes.Select(z => Phrase.Of($"{z.Name} by {Words.Depth(Units, z.ShortMm)}"))])}.", new SortedDictionary<string, double>(StringComparer.Ordinal) { ["zones"] = shortOnes.Count, ["worstMm"] = shortOnes[0].ShortMm });
        }

        if (advice.LongRuns.MaxBy(r => r.Split.Cycles) is { } longest && AdviceSentences.Split(advice) is { IsEmpty: false } split)
        {
            yield return Reason.With(
                "cycles",
                split,
                new SortedDictionary<string, double>(StringComparer.Ordinal) { ["stations"] = advice.LongRuns.Count, ["cycles"] = longest.Split.Cycles, ["soakMinutes"] = longest.Split.SoakMinutes, ["minutesEach"] = longest.Split.MinutesEach });
        }

        var wet = advice.Zones.Where(z => z.DrainsMm > context.Site.Report.Worth * z.AllowableMm).OrderByDescending(z => z.DrainsMm).ToList();
        if (wet.Count > 0 && program.Need is not null)
        {
            yield return Reason.With("too-wet", $"Too wet at this number, hold back base minutes: {Words.List([.. wet.Select(z => Phrase.Of($"{z.Name} ({Words.Depth(Units, z.DrainsMm)} would drain)"))])}.", new SortedDictionary<string, double>(StringComparer.Ordinal) { ["zones"] = wet.Count, ["worstMm"] = wet[0].DrainsMm });
        }
    }

    private static Phrase Range(List<ZoneNeed> zones)
    {
        double least = Math.Round(zones.Min(z => z.Percent)), most = Math.Round(zones.Max(z => z.Percent));
        return least == most ? Phrase.Verbatim(Words.Percent(least)) : $"{Words.Percent(least)} to {Words.Percent(most)}";
    }

    private Phrase OutWords(TakenOutStations stations) => stations.Stations.Count == 1
        ? Phrase.Of($"{stations.Stations[0]} must not run from {Words.DateAndTime(context.Site.Clock, stations.From)} on ({stations.Why}): take it out.")
        : $"{Words.List([.. stations.Stations.Select(s => Phrase.Verbatim(s.ToString()))], most: 12)} must not run from {Words.DateAndTime(context.Site.Clock, stations.From)} on ({stations.Why}): take them out.";
}
