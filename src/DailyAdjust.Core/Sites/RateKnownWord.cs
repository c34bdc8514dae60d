namespace DailyAdjust.Core.Sites;

/// <summary>How a precipitation rate is known, as stations.csv and reports write it.</summary>
public static class RateKnownWord
{
    /// <summary>"measured", "catalogue", "assumed".</summary>
    public static string Of(RateKnown known) => known switch
    {
        RateKnown.Measured => "measured",
        RateKnown.Catalogue => "catalogue",
        RateKnown.Assumed => "assumed",
        _ => throw new ArgumentOutOfRangeException(nameof(known), known, "Not a way to know a rate."),
    };

    /// <summary>Null = no such word. "catalog" is one too; upper and lower case make no difference, and nothing means assumed.</summary>
    public static RateKnown? Find(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.ToLowerInvariant() switch
        {
            "measured" => RateKnown.Measured,
            "catalogue" or "catalog" => RateKnown.Catalogue,
            "assumed" or "" => RateKnown.Assumed,
            _ => null,
        };
    }
}
