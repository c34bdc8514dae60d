using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>What to know before a zone is hosed: an order or a watering rule over it, a season that is not open, rain that nobody knows, or that it is on the list to be run by hand.</summary>
internal sealed class BeforeHose(AdviceContext context, RunByHand? byHand, UnknownRainCheck unknownRain)
{
    private readonly HashSet<StationKey> _run = [.. (byHand?.Groups ?? []).SelectMany(g => g.Boxes).SelectMany(b => b.Stations).Select(s => s.Station)];

    /// <summary>Plain clauses, what forbids first; empty where there is nothing to know.</summary>
    public Phrase Of(Station station) => Phrase.Join("; ", Clauses(station));

    private IEnumerable<Phrase> Clauses(Station station)
    {
        if (context.Off.At(context.AsOf).FirstOrDefault(o => o.Where.Covers(station)) is { } order)
        {
            var until = order.Until is not { } end ? Phrase.Empty : end.Clock is { } clock ? Phrase.Of($", until {clock:HH:mm} {Words.Date(end.Date)}") : $", through {Words.Date(end.Date)}";
            yield return $"{OrderWords.Of(order)}{until}: ask before you hose";
        }
        else if (!context.Season.IsOpen(station.Key.Controller, context.AsOf))
        {
            yield return $"{Prohibitions.SeasonWords(context.Season.At(station.Key.Controller, context.AsOf).State)}: ask before you hose";
        }

        if (context.Rules.FirstOrDefault(r => r.Covers(station.Area) && r.HoldsOn(context.Date) && (r.DaysNotAllowed?.Includes(context.Date) == true || r.MostPercent is 0)) is { } rule)
        {
            yield return $"{Prohibitions.Named(rule)}, which forbids today: ask whether that is for the hose too";
        }

        if (unknownRain.IsIn(station.Key))
        {
            yield return new("rain that is unknown counts as none here: probe before you hose");
        }

        if (_run.Contains(station.Key))
        {
            yield return new("it is to be run by hand first; then look again");
        }

    }
}
