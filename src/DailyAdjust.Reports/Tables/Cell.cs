using System.Globalization;

namespace DailyAdjust.Reports.Tables;

/// <summary>One value of a table: a text, a number with its decimals, or nothing.</summary>
/// <param name="Written">As it is written in every format; empty = unknown.</param>
/// <param name="IsNumber">Numbers are aligned to the right, stand bare in JSON, and are never guarded in CSV.</param>
public readonly record struct Cell(string Written, bool IsNumber)
{
    public static Cell Empty { get; } = new("", IsNumber: true);

    public static Cell Text(string? text) => new(text ?? "", IsNumber: false);

    /// <summary>yyyy-MM-dd.</summary>
    public static Cell Date(DateOnly date) => Text(date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));

    /// <summary>A number with a fixed count of decimals; null or not a number = empty.</summary>
    public static Cell Fixed(double? value, int decimals) =>
        value is { } v && double.IsFinite(v) ? new(Plain.Fixed(v, decimals), IsNumber: true) : Empty;

    /// <summary>A number with up to four decimals, as few as it needs; null or not a number = empty.</summary>
    public static Cell Short(double? value) =>
        value is { } v && double.IsFinite(v) ? new(Plain.Short(v), IsNumber: true) : Empty;
}
