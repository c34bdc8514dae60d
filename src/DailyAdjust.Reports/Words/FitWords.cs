using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>Whether the changed programs fit the night.</summary>
internal static class FitWords
{
    public static readonly Phrase Later = new("The nights after");

    public static IReadOnlyList<Phrase> Problems(NightFit fit, SiteWords words) =>
    [
        .. fit.Cuts.Select(c => Cut(c, words)),
        .. fit.Overlaps.Select(Overlap),
        .. fit.Window.Where(w => !w.IsGrowIn).Select(w => Outside(w, words)),
        .. fit.Pump.Select(p => Pump(p, words)),
        .. fit.Clashes.Select(c => Clash(c, words)),
        .. fit.Moves.Count > 0 ? [Moves(fit)] : Array.Empty<Phrase>(),
        .. NotMended(fit, words),
        .. fit.Reaching.Select(r => Reaching(r, words)),
    ];

    /// <summary>A line for every grow-in that waters outside the window, as it was ordered to.</summary>
    public static IEnumerable<Phrase> ByDay(NightFit fit, SiteWords words) => fit.Window.Where(w => w.IsGrowIn).GroupBy(w => (w.Controller, w.Program)).Select(g =>
        Phrase.Of($"{g.Key.Controller}/{g.Key.Program} waters new turf outside the watering window, as was ordered: {Phrase.Count(g.Count(), "start", "starts")} from {words.When(g.Min(w => w.Begins))}, the last ending {words.When(g.Max(w => w.Finishes))}."));

    /// <summary>What was looked at and found well; nothing is claimed that the site does not describe.</summary>
    public static Phrase Well(NightFit fit, Site site)
    {
        var well = new List<Phrase>();
        if (fit.Overlaps.Count == 0)
        {
            well.Add(new("No two programs of a box overlap."));
        }

        if (fit.Window.Count == 0 && site.Window is { } window)
        {
            well.Add($"Everything runs inside the watering window, {SiteWords.Clock(window.Opens)} to {SiteWords.Clock(window.Closes)}.");
        }

        if (fit.Pump.Count == 0 && site.PumpCapacityLPerMin is not null)
        {
            well.Add(new("The pump keeps up."));
        }

        if (fit.Clashes.Count == 0 && site.NotTogether.Count > 0)
        {
            well.Add(new("No stations run together that must not."));
        }

        return Phrase.Join(" ", well);
    }

    private static Phrase Cut(FitCut cut, SiteWords words)
    {
        var because = AdviceSentences.NoMore(cut.Cause, words.SiteClock, words.SheetDate);
        var gone = cut.Short is { } missing ? $"; {words.DepthOf(missing.DepthMm)} or {SiteWords.Minutes(missing.Minutes)} short a start" : Phrase.Empty;
        var other = cut.StartThatFits is not { } start ? Phrase.Empty
            : cut.HoldsWithOthers ? Phrase.Of($" With a first start at {SiteWords.Clock(start)}, beside the other starts proposed, all of it would fit.")
            : $" With a first start at {SiteWords.Clock(start)} all of it would fit.";
        return cut.ToPercent > 0
            ? Phrase.Of($"{cut.Program}: cut from {SiteWords.Percent(cut.FromPercent)} to {SiteWords.Percent(cut.ToPercent)}, because {because}{gone}.{other}")
            : $"{cut.Program}: stays off instead of {SiteWords.Percent(cut.FromPercent)}, because {because}{gone}.{other}";
    }

    private static Phrase Overlap(ProgramOverlapFound found) =>
        $"{found.Controller}, {SiteWords.Date(found.Date)}: {found.First} and {found.Second} overlap by {SiteWords.Minutes(found.Minutes)}. {(found.LargestPercent > 0
            ? Phrase.Of($"Up to {SiteWords.Percent(found.LargestPercent)} on {found.First} they do not.")
            : $"No percentage of {found.First} avoids it: move a start.")}";

    private static Phrase Outside(OutsideWindow run, SiteWords words) =>
        $"{run.Controller}/{run.Program}, {SiteWords.Date(run.Date)}: outside the watering window, ends {words.When(run.Finishes)}.";

    private static Phrase Clash(StationClash clash, SiteWords words) =>
        $"{words.Time(clash.From)} to {words.When(clash.To)}: stations {clash.First} and {clash.Second} would run together and must not ({clash.Group}). Move a start.";

    private static Phrase Pump(PumpExceeded pump, SiteWords words) =>
        $"{words.Time(pump.From)} to {words.When(pump.To)}: what runs asks {words.Flow(pump.FlowLPerMin)}, the pump gives {words.Flow(pump.CapacityLPerMin)}.";

    private static Phrase Moves(NightFit fit)
    {
        var all = Phrase.Join("; ", fit.Moves.Select(m => Phrase.Of($"{m.Program} at {SiteWords.Clock(m.To)} instead of {SiteWords.Clock(m.From)}")));
        return fit.Cuts.Any(c => c.StartThatFits is not null) ? Phrase.Of($"Beside the starts named with the cuts would fit: {all}. Where a program has more starts, they move by as much.")
            : fit.Moves.Count == 1 ? Phrase.Of($"A first start that would fit: {all}. Where a program has more starts, they move by as much.")
            : $"First starts that would fit, together: {all}. Where a program has more starts, they move by as much.";
    }

    private static IEnumerable<Phrase> NotMended(NightFit fit, SiteWords words)
    {
        var lines = Left(fit, words).ToList();
        return lines.Take(1).Select(first => fit.Moves.Count > 0 ? $"Even then not everything fits. {first}" : first).Concat(lines.Skip(1));
    }

    private static readonly Phrase Others = new("Fewer minutes, other water days or more time to water are left.");

    private static IEnumerable<Phrase> Left(NightFit fit, SiteWords words)
    {
        List<ProgramKey> none = [.. fit.NoStartFits.Where(k => !fit.BeyondPump.Any(b => b.Program == k))];
        if (Names([.. none.Except(fit.KeptOnDate)]) is { } daily)
        {
            yield return $"{daily}: no first start within 12 hours of the present one fits while the others stay. {Others}";
        }

        if (Names([.. none.Intersect(fit.KeptOnDate)]) is { } onDate)
        {
            yield return $"{onDate}: no first start within 12 hours of the present one, on its own date and after the round, fits while the others stay. {Others}";
        }

        foreach (var beyond in fit.BeyondPump)
        {
            yield return $"{beyond.Program}: station {beyond.Station} alone asks {words.Flow(beyond.FlowLPerMin)} and the pump gives {words.Flow(beyond.CapacityLPerMin)}. No other start, fewer minutes or other days help: only more water, or less flow at that station.";
        }

        if (Names(fit.NotLookedFor) is { } later)
        {
            yield return $"{later}: no start was looked for yet; other starts are proposed for a few programs at a time.";
        }
    }

    /// <summary>Null where there are none.</summary>
    private static Phrase? Names(IReadOnlyList<ProgramKey> programs) => programs.Count > 0 ? Phrase.ListNames(programs.Select(k => k.ToString())) : null;

    private static Phrase Reaching(ReachingRun run, SiteWords words)
    {
        Phrase who = run.Stations.Count switch
        {
            0 => Phrase.Verbatim(run.Program.ToString()),
            1 => $"{run.Program}, station {run.Stations[0]},",
            _ => $"{run.Program}, stations {string.Join(", ", run.Stations)},",
        };
        var earlier = run.EarlierBy is { } by ? $", or let it start {SiteWords.Minutes(Math.Ceiling(by.TotalMinutes))} earlier if that fits" : Phrase.Empty;
        return $"{who} starts at {words.When(run.Start.At)} and is still running from {words.Time(run.From)} to {words.When(run.To)}, when it must not ({run.Why}). Take that start out{earlier}.";
    }
}
