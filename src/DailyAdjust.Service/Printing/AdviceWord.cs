using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Service.Printing;

/// <summary>Advice as files spell it.</summary>
internal static class AdviceWord
{
    public static string Of(AdviceKind kind) => AdviceCode.Of(kind);
}
