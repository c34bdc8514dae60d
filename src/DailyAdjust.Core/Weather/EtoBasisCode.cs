namespace DailyAdjust.Core.Weather;

/// <summary>How ETo is known, as files and commands write it; machines read it, so it is never translated.</summary>
public static class EtoBasisCode
{
    /// <summary>"hourly", "part-estimated", ...</summary>
    public static string Of(EtoBasis basis) => basis switch
    {
        EtoBasis.Hourly => "hourly",
        EtoBasis.Daily => "daily",
        EtoBasis.PartEstimated => "part-estimated",
        EtoBasis.TemperatureOnly => "temperature-only",
        EtoBasis.Supplied => "supplied",
        EtoBasis.OtherStation => "other-station",
        EtoBasis.Expected => "expected",
        EtoBasis.Open => "open",
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "Not a way to know ETo."),
    };
}
