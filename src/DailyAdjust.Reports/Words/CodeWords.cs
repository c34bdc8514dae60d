using System.Globalization;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Reports.Words;

/// <summary>The words that files use for how ETo is known, and how they write dates; machines read them, so they are never translated.</summary>
internal static class CodeWords
{
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
        _ => throw new ArgumentOutOfRangeException(nameof(basis), basis, "Not a basis."),
    };

    public static string Date(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>yyyy-MM-ddTHH:mm on the clock whose time it is.</summary>
    public static string Minute(DateTimeOffset local) => local.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);

    /// <summary>The sheet's id: 2026-06-10/1.</summary>
    public static string SheetId(DateOnly date, int issue) => Date(date) + "/" + issue.ToString(CultureInfo.InvariantCulture);
}
