using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>Whether the changed programs fit the night.</summary>
internal static class FitWords
{
    public const string Later = "The nights after";

    public static IReadOnlyList<string> Problems(NightFit fit, SiteWords words) =>
    [
        .. fit.Cuts.Select(c => Cut(c, words)),
        .. fit.Overlaps.Select(Overlap),
        .. fit.Window.Where(w => !w.IsGrowIn).Select(w => Outside(w, words)),
        .. fit.Pump.Select(p => Pump(p, words)),
        .. fit.Clashes.Select(c => Clash(c, words)),
        .. fit.Moves.Count > 0 ? [Moves(fit)] : Array.Empty<string>(),
        .. NotMended(fit, words),
        .. fit.Reaching.Select(r => Reaching(r, words)),
    ];

    /// <summary>A line for every grow-in that waters outside the window, as it was ordered to.</summary>
    public static IEnumerable<string> ByDay(NightFit fit, SiteWords words) => fit.Window.Where(w => w.IsGrowIn).GroupBy(w => (w.Controller, w.Program)).Select(g =>
        $"{g.Key.Controller}/{g.Key.Program} waters new turf outside the watering window, as was ordered: {CommonWords.Count(g.Count(), "start", "starts")} from {words.When(g.Min(w => w.Begins))}, the last ending {words.When(g.Max(w => w.Finishes))}.");

    /// <summary>What was looked at and found well; nothing is claimed that the site does not describe.</summary>
    public static string Well(NightFit fit, Site site)
    {
        var well = new List<string>();
        if (fit.Overlaps.Count == 0)
        {
            well.Add("No two programs of a box overlap.");
        }

        if (fit.Window.Count == 0 && site.Window is { } window)
        {
            well.Add($"Everything runs inside the watering window, {SiteWords.Clock(window.Opens)} to {SiteWords.Clock(window.Closes)}.");
        }

        if (fit.Pump.Count == 0 && site.PumpCapacityLPerMin is not null)
        {
            well.Add("The pump keeps up.");
        }

        if (fit.Clashes.Count == 0 && site.NotTogether.Count > 0)
        {
            well.Add("No stations run together that must not.");
        }

        return string.Join(" ", well);
    }

    private static string Cut(FitCut cut, SiteWords words) =>
        $"{cut.Program}: {(cut.ToPercent > 0 ? $"cut from {SiteWords.Percent(cut.FromPercent)} to {SiteWords.Percent(cut.ToPercent)}" : $"stays off instead of {SiteWords.Percent(cut.FromPercent)}")}, because the night or the pump does not give more"
        + (cut.Short is { } gone ? $"; {words.DepthOf(gone.DepthMm)} or {SiteWords.Minutes(gone.Minutes)} short a start" : "")
        + (cut.StartThatFits is { } start ? $". With a first start at {SiteWords.Clock(start)}{(cut.HoldsWithOthers ? ", beside the other starts proposed," : "")} all of it would fit." : ".");

    private static string Overlap(ProgramOverlapFound found) =>
        $"{found.Controller}, {SiteWords.Date(found.Date)}: {found.First} and {found.Second} overlap by {SiteWords.Minutes(found.Minutes)}. "
        + (found.LargestPercent > 0
            ? $"Up to {SiteWords.Percent(found.LargestPercent)} on {found.First} they do not."
            : $"No percentage of {found.First} avoids it: move a start.");

    private static string Outside(OutsideWindow run, SiteWords words) =>
        $"{run.Controller}/{run.Program}, {SiteWords.Date(run.Date)}: outside the watering window, ends {words.When(run.Finishes)}.";

    private static string Clash(StationClash clash, SiteWords words) =>
        $"{words.Time(clash.From)} to {words.When(clash.To)}: stations {clash.First} and {clash.Second} would run together and must not ({clash.Group}). Move a start.";

    private static string Pump(PumpExceeded pump, SiteWords words) =>
        $"{words.Time(pump.From)} to {words.When(pump.To)}: what runs asks {words.Flow(pump.FlowLPerMin)}, the pump gives {words.Flow(pump.CapacityLPerMin)}.";

    private static string Moves(NightFit fit) =>
        (fit.Cuts.Any(c => c.StartThatFits is not null) ? "Beside the starts named with the cuts would fit: "
            : fit.Moves.Count == 1 ? "A first start that would fit: " : "First starts that would fit, together: ")
        + string.Join("; ", fit.Moves.Select(m => $"{m.Program} at {SiteWords.Clock(m.To)} instead of {SiteWords.Clock(m.From)}"))
        + ". Where a program has more starts, they move by as much.";

    private static IEnumerable<string> NotMended(NightFit fit, SiteWords words)
    {
        var lines = Left(fit, words).ToList();
        return lines.Take(1).Select(first => fit.Moves.Count > 0 ? "Even then not everything fits. " + first : first).Concat(lines.Skip(1));
    }

    private static IEnumerable<string> Left(NightFit fit, SiteWords words)
    {
        const string Others = "Fewer minutes, other water days or more time to water are left.";
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
    private static string? Names(IReadOnlyList<ProgramKey> programs) => programs.Count > 0 ? CommonWords.List([.. programs.Select(k => k.ToString())]) : null;

    private static string Reaching(ReachingRun run, SiteWords words)
    {
        var who = run.Stations.Count switch
        {
            0 => run.Program.ToString(),
            1 => $"{run.Program}, station {run.Stations[0]},",
            _ => $"{run.Program}, stations {string.Join(", ", run.Stations)},",
        };
        var earlier = run.EarlierBy is { } by ? $", or let it start {SiteWords.Minutes(Math.Ceiling(by.TotalMinutes))} earlier if that fits" : "";
        return $"{who} starts at {words.When(run.Start.At)} and is still running from {words.Time(run.From)} to {words.When(run.To)}, when it must not ({run.Why}). Take that start out{earlier}.";
    }
}
