using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Core.Advice;

/// <summary>What people ordered, as a clause that says why a program must not run.</summary>
internal static class OrderWords
{
    public static string Of(OffOrder order) => order.Reason switch
    {
        OffReason.NoWater => order.Note.Length > 0 ? $"no water, {order.Note}" : "no water: what was applied has to stay on the leaves",
        OffReason.Event => With("event, ", order.Note),
        OffReason.Cold => $"cold ({order.Note})",
        OffReason.Wind => $"wind ({order.Note})",
        _ => With("hold: ", order.Note),
    };

    private static string With(string what, string note) => note.Length > 0 ? what + note : what[..^2];
}
