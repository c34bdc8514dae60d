using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Service.Printing;

/// <summary>Advice as files spell it.</summary>
internal static class AdviceWord
{
    public static string Of(AdviceKind kind) => kind switch
    {
        AdviceKind.KeepOff => "keep-off",
        AdviceKind.AsSet => "as-set",
        _ => kind.ToString().ToLowerInvariant(),
    };
}
