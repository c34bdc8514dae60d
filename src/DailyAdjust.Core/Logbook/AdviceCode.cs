namespace DailyAdjust.Core.Logbook;

/// <summary>An advice as files and commands write it.</summary>
public static class AdviceCode
{
    /// <summary>"set", "keep-off", ...</summary>
    public static string Of(AdviceKind advice) => advice switch
    {
        AdviceKind.KeepOff => "keep-off",
        AdviceKind.AsSet => "as-set",
        _ => advice.ToString().ToLowerInvariant(),
    };
}
