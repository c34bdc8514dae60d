using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>What people found in the ground, what is watered by hand, and minutes to change.</summary>
internal static class GroundWords
{
    public static readonly Phrase Spots = new("Hot spots: hose the spot, not the zone");
    public static readonly Phrase Probes = new("Probe beside the balance");
    public static readonly Phrase ByHand = new("Watered by hand");
    public static readonly Phrase Minutes = new("Base minutes to change");

    /// <summary>A moisture meter shows no less, mm.</summary>
    private const double CutWorthAWordMm = 0.05;

    /// <summary>Title and lines of what there is to say; nothing where there is nothing.</summary>
    public static IReadOnlyList<(Phrase Title, IReadOnlyList<Phrase> Lines)> Of(SheetView view)
    {
        var ground = view.Sheet.Ground;
        (Phrase Title, IReadOnlyList<Phrase> Lines)[] all =
        [
            (Spots, [.. ground.Spots.Select(s => Spot(s, view.Words))]),
            (Probes, [.. ground.Probes.Select(p => Probe(p, view.Words))]),
            (ByHand, [.. ground.ByHand.Select(h => Hand(h, view.Words))]),
            (Minutes, [.. ground.Minutes.Select(Change)]),
        ];
        return [.. all.Where(g => g.Lines.Count > 0)];
    }

    /// <summary>"Sure? Probed Tue 2 June; 2 of the last 7 days estimated; precipitation rate assumed."</summary>
    public static Phrase Sure(HowSure sure)
    {
        var known = sure.Since is not { } date ? new Phrase("neither full nor probed for weeks") : sure.Probed ? Phrase.Of($"last probed {SiteWords.Date(date)}") : $"last full {SiteWords.Date(date)}";
        var estimated = sure.EstimatedDays > 0 ? $"; weather of {SiteWords.Count(sure.EstimatedDays)} of the last 7 days estimated" : Phrase.Empty;
        return $"How sure: {known}{estimated}{(sure.RateAssumed ? new Phrase("; precipitation rate assumed") : Phrase.Empty)}.";
    }

    /// <summary>What the other way of an unanswered round would ask; empty where everything is answered.</summary>
    public static Phrase OtherWay(DryZone zone, SiteWords words) => zone.OtherWay is not { } other ? Phrase.Empty
        : other.IsIfDone ? Phrase.Of($"If the round that is not answered was done: {Asks(other, words)}.")
        : $"If the round that is not answered was not done: {Asks(other, words)}.";

    private static Phrase Asks(OtherWay other, SiteWords words) => other.ShortMm > 0 ? words.DepthOf(other.ShortMm) : new("none, so probe first");

    /// <summary>What to know before a zone is hosed, as a sentence of its own; empty where there is nothing.</summary>
    public static Phrase BeforeHose(DryZone zone) =>
        FreshnessWords.Sentence(zone.BeforeHose.Shaped(SiteWords.Capital));

    private static Phrase Spot(DrySpot spot, SiteWords words)
    {
        var missing = spot.MissingMm is { } mm ? $", {words.DepthOf(mm)} below full there" : Phrase.Empty;
        var at = spot.Time.Clock is { } clock ? $"{SiteWords.Clock(clock)} {words.Day(spot.Time.Date)}" : words.Day(spot.Time.Date);
        return $"{ZoneWords.Named(spot.Name, spot.Station)}: {SiteWords.Percent(spot.Percent)} at {at}{missing}{(spot.Note.Length > 0 ? $" ({spot.Note})" : "")}.";
    }

    private static Phrase Probe(ProbedZone probe, SiteWords words) =>
        $"{ZoneWords.Named(probe.Name, probe.Station)}, {words.When(probe.At)}: the balance said {words.DepthOf(probe.ReckonedMm)} below full, the probe {words.DepthOf(probe.ProbedMm)}{With(probe, words)}."
        + Phrase.Concat(Remarks(probe, words).Select(r => Phrase.Of($" {r}")));

    /// <summary>" (meter 2, 3 in rods)"; empty where nobody said.</summary>
    private static Phrase With(ProbedZone probe, SiteWords words)
    {
        var rods = probe.RodLengthM is { } rod ? $"{words.SoilDepth(rod)} rods" : Phrase.Empty;
        var said = Phrase.Join(", ", new[] { Phrase.Verbatim(probe.Instrument), rods }.Where(s => !s.IsEmpty));
        return said.IsEmpty ? Phrase.Empty : $" ({said})";
    }

    /// <summary>What a person should know before believing it.</summary>
    private static IEnumerable<Phrase> Remarks(ProbedZone probe, SiteWords words)
    {
        if (probe.CutMm < -CutWorthAWordMm)
        {
            yield return new("That is wetter than field capacity: it counts as full. Probe again when it has drained, or look at field_capacity.");
        }
        else if (probe.CutMm > CutWorthAWordMm)
        {
            yield return new("That is drier than the soil is described to go: it counts as empty. Probe again, or look at the soil's figures.");
        }

        if (probe.RodLengthM is { } rod && !probe.RodsEndAtRoots)
        {
            yield return rod < probe.RootDepthM
                ? Phrase.Of($"The rods end at {words.SoilDepth(rod)}, the roots at {words.SoilDepth(probe.RootDepthM)}: what lies below was not read.")
                : $"The rods reach {words.SoilDepth(rod)}, below the roots' {words.SoilDepth(probe.RootDepthM)}.";
        }

        if (probe.IsOtherInstrument)
        {
            yield return new("The reading before was made with another moisture meter or other rods: do not compare the two.");
        }
    }

    private static Phrase Hand(HandWatered hand, SiteWords words)
    {
        var since = hand.WasFull ? Phrase.Of($"since it was full on {SiteWords.Date(hand.Since)}") : $"since {SiteWords.Date(hand.Since)}, and longer (not full in the days at hand)";
        return $"{ZoneWords.Named(hand.Name, hand.Station)}: ETo {words.DepthOf(hand.EtoMm)}{About(hand.EtoL, words)} {since}; rain and hose counted, {words.DepthOf(hand.MissingMm)} below full{About(hand.MissingL, words)}.";
    }

    private static Phrase Change(MinutesToChange change) =>
        $"Change station {ZoneWords.Named(change.Name, change.Station)} in {change.Program} from {SiteWords.Minutes(change.From)} to {SiteWords.Minutes(change.To)}: on {SiteWords.Count(change.Mornings)} mornings since {SiteWords.Date(change.Since)} it alone needed {SiteWords.Percent(Math.Round(change.NeedPercent))} where half of its area did with {SiteWords.Percent(Math.Round(change.MedianPercent))}; "
        + $"{SiteWords.Minutes(change.From)} x {SiteWords.Percent(Math.Round(change.NeedPercent))} / {SiteWords.Percent(Math.Round(change.MedianPercent))}, cut to the controller's step. Look at heads and pressure first.";

    private static Phrase About(double? litres, SiteWords words) => litres is { } l ? $", about {words.AboutVolume(l)}" : Phrase.Empty;
}
