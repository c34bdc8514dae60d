namespace DailyAdjust.Core.Weather;

/// <summary>How ETo is known, as files and commands write it; machines read it, so it is never translated.</summary>
public static class EtoBasisCode
{
    /// <summary>"hourly", "part-estimated", ...</summary>
    public static string Of(EtoBasis basis) => basis switch
    {
        EtoBasis.PartEstimated => "part-estimated",
        EtoBasis.TemperatureOnly => "temperature-only",
        EtoBasis.OtherStation => "other-station",
        _ => basis.ToString().ToLowerInvariant(),
    };
}
