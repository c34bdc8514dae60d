namespace DailyAdjust.Files.Formats;

/// <summary>The public formats that are read, in the order in which a file is tried for them.</summary>
internal static class PublicFormats
{
    public static IReadOnlyList<PublicFormat> All { get; } =
    [
        GhcnDailyFormat.Format, GsodFormat.Format, UscrnDailyFormat.Format, IsdLiteFormat.Format, EcccDailyFormat.Format, DwdDailyFormat.Format, GridpointFormat.Format,
    ];

    /// <summary>The format so named; null = none.</summary>
    public static PublicFormat? Find(string name) => All.FirstOrDefault(format => string.Equals(format.Name, name, StringComparison.Ordinal));
}
