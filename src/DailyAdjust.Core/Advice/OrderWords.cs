using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Core.Advice;

/// <summary>What people ordered, as a clause that says why a program must not run.</summary>
internal static class OrderWords
{
    public static Phrase Of(OffOrder order) => order.Reason switch
    {
        OffReason.NoWater => order.Note.IsEmpty ? new Phrase("no water: what was applied has to stay on the leaves") : $"no water, {order.Note}",
        OffReason.Event => order.Note.IsEmpty ? new Phrase("event") : $"event, {order.Note}",
        OffReason.Cold => $"cold ({order.Note})",
        OffReason.Wind => $"wind ({order.Note})",
        _ => order.Note.IsEmpty ? new Phrase("hold") : $"hold: {order.Note}",
    };
}
