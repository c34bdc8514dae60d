using DailyAdjust.Core.Morning;

namespace DailyAdjust.Reports.Words;

/// <summary>What people found in the ground, what is watered by hand, and minutes to change.</summary>
internal static class GroundWords
{
    public const string Spots = "Hot spots: hose the spot, not the zone";
    public const string Probes = "Probe beside the balance";
    public const string ByHand = "Watered by hand";
    public const string Minutes = "Base minutes to change";

    /// <summary>A moisture meter shows no less, mm.</summary>
    private const double CutWorthAWordMm = 0.05;

    /// <summary>Title and lines of what there is to say; nothing where there is nothing.</summary>
    public static IReadOnlyList<(string Title, IReadOnlyList<string> Lines)> Of(SheetView view)
    {
        var ground = view.Sheet.Ground;
        (string Title, IReadOnlyList<string> Lines)[] all =
        [
            (Spots, [.. ground.Spots.Select(s => Spot(s, view.Words))]),
            (Probes, [.. ground.Probes.Select(p => Probe(p, view.Words))]),
            (ByHand, [.. ground.ByHand.Select(h => Hand(h, view.Words))]),
            (Minutes, [.. ground.Minutes.Select(Change)]),
        ];
        return [.. all.Where(g => g.Lines.Count > 0)];
    }

    /// <summary>"Sure? Probed Tue 2 June; 2 of the last 7 days estimated; precipitation rate assumed."</summary>
    public static string Sure(HowSure sure)
    {
        var known = sure.Since is { } date ? $"{(sure.Probed ? "last probed" : "last full")} {SiteWords.Date(date)}" : "neither full nor probed for weeks";
        var estimated = sure.EstimatedDays > 0 ? $"; weather of {SiteWords.Count(sure.EstimatedDays)} of the last 7 days estimated" : "";
        return $"How sure: {known}{estimated}{(sure.RateAssumed ? "; precipitation rate assumed" : "")}.";
    }

    /// <summary>What to know before a zone is hosed, as a sentence of its own; empty where there is nothing.</summary>
    /// <summary>What the other way of an unanswered round would ask; empty where everything is answered.</summary>
    public static string OtherWay(DryZone zone, SiteWords words) => zone.OtherWay is not { } other ? ""
        : $"If the round that is not answered was {(other.IsIfDone ? "" : "not ")}done: {(other.ShortMm > 0 ? words.DepthOf(other.ShortMm) : "none, so probe first")}.";

    public static string BeforeHose(DryZone zone) =>
        zone.BeforeHose.Length == 0 ? "" : FreshnessWords.Sentence(char.ToUpperInvariant(zone.BeforeHose[0]) + zone.BeforeHose[1..]);

    private static string Spot(DrySpot spot, SiteWords words)
    {
        var missing = spot.MissingMm is { } mm ? $", {words.DepthOf(mm)} below full there" : "";
        var at = spot.Time.Clock is { } clock ? $"{SiteWords.Clock(clock)} {words.Day(spot.Time.Date)}" : words.Day(spot.Time.Date);
        return $"{ZoneWords.Named(spot.Name, spot.Station)}: {SiteWords.Percent(spot.Percent)} at {at}{missing}{(spot.Note.Length > 0 ? $" ({spot.Note})" : "")}.";
    }

    private static string Probe(ProbedZone probe, SiteWords words) =>
        $"{ZoneWords.Named(probe.Name, probe.Station)}, {words.When(probe.At)}: the balance said {words.DepthOf(probe.ReckonedMm)} below full, the probe {words.DepthOf(probe.ProbedMm)}{With(probe, words)}."
        + string.Concat(Remarks(probe, words).Select(r => " " + r));

    /// <summary>" (meter 2, 3 in rods)"; empty where nobody said.</summary>
    private static string With(ProbedZone probe, SiteWords words)
    {
        var rods = probe.RodLengthM is { } rod ? $"{words.SoilDepth(rod)} rods" : "";
        var said = string.Join(", ", new[] { probe.Instrument, rods }.Where(s => s.Length > 0));
        return said.Length > 0 ? $" ({said})" : "";
    }

    /// <summary>What a person should know before believing it.</summary>
    private static IEnumerable<string> Remarks(ProbedZone probe, SiteWords words)
    {
        if (probe.CutMm < -CutWorthAWordMm)
        {
            yield return "That is wetter than field capacity: it counts as full. Probe again when it has drained, or look at field_capacity.";
        }
        else if (probe.CutMm > CutWorthAWordMm)
        {
            yield return "That is drier than the soil is described to go: it counts as empty. Probe again, or look at the soil's figures.";
        }

        if (probe.RodLengthM is { } rod && !probe.RodsEndAtRoots)
        {
            yield return rod < probe.RootDepthM
                ? $"The rods end at {words.SoilDepth(rod)}, the roots at {words.SoilDepth(probe.RootDepthM)}: what lies below was not read."
                : $"The rods reach {words.SoilDepth(rod)}, below the roots' {words.SoilDepth(probe.RootDepthM)}.";
        }

        if (probe.IsOtherInstrument)
        {
            yield return "The reading before was made with another moisture meter or other rods: do not compare the two.";
        }
    }

    private static string Hand(HandWatered hand, SiteWords words)
    {
        var since = hand.WasFull ? $"since it was full on {SiteWords.Date(hand.Since)}" : $"since {SiteWords.Date(hand.Since)}, and longer (not full in the days at hand)";
        return $"{ZoneWords.Named(hand.Name, hand.Station)}: ETo {words.DepthOf(hand.EtoMm)}{About(hand.EtoL, words)} {since}; rain and hose counted, {words.DepthOf(hand.MissingMm)} below full{About(hand.MissingL, words)}.";
    }

    private static string Change(MinutesToChange change) =>
        $"Change station {ZoneWords.Named(change.Name, change.Station)} in {change.Program} from {SiteWords.Minutes(change.From)} to {SiteWords.Minutes(change.To)}: on {SiteWords.Count(change.Mornings)} mornings since {SiteWords.Date(change.Since)} it alone needed {SiteWords.Percent(Math.Round(change.NeedPercent))} where half of its area did with {SiteWords.Percent(Math.Round(change.MedianPercent))}; "
        + $"{SiteWords.Minutes(change.From)} x {SiteWords.Percent(Math.Round(change.NeedPercent))} / {SiteWords.Percent(Math.Round(change.MedianPercent))}, cut to the controller's step. Look at heads and pressure first.";

    private static string About(double? litres, SiteWords words) => litres is { } l ? $", about {words.AboutVolume(l)}" : "";
}
