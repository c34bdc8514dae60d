using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>What to know before a zone is hosed: an order over it, a season that is not open, or that it is on the list to be run by hand.</summary>
internal sealed class BeforeHose(AdviceContext context, RunByHand? byHand)
{
    private readonly HashSet<StationKey> _run = [.. (byHand?.Groups ?? []).SelectMany(g => g.Boxes).SelectMany(b => b.Stations).Select(s => s.Station)];

    /// <summary>A plain clause; empty where there is nothing to know.</summary>
    public Phrase Of(Station station)
    {
        if (context.Off.At(context.AsOf).FirstOrDefault(o => o.Where.Covers(station)) is { } order)
        {
            var until = order.Until is { } end ? $", until {Words.Date(end.Date)}" : Phrase.Empty;
            return $"{OrderWords.Of(order)}{until}: ask before you hose";
        }

        if (!context.Season.IsOpen(station.Key.Controller, context.AsOf))
        {
            return $"{Prohibitions.SeasonWords(context.Season.At(station.Key.Controller, context.AsOf).State)}: ask before you hose";
        }

        return _run.Contains(station.Key) ? new("it is to be run by hand first; then look again") : Phrase.Empty;
    }
}
