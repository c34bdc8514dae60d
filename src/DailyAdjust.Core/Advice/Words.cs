using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Numbers and dates inside plain sentences, in the site's units; always the invariant culture.</summary>
internal static class Words
{
    public static string Depth(UnitSystem units, double mm) => units == UnitSystem.Us
        ? (mm / Quantities.Depth.MmPerInch).ToString("0.00", CultureInfo.InvariantCulture) + " in"
        : mm.ToString("0.0", CultureInfo.InvariantCulture) + " mm";

    public static string Percent(double percent) => percent.ToString("0.#", CultureInfo.InvariantCulture) + " %";

    public static string Share(double fraction) => (fraction * 100).ToString("0", CultureInfo.InvariantCulture) + " %";

    /// <summary>"Wed 10 June".</summary>
    public static string Date(DateOnly date) => date.ToString("ddd d MMMM", CultureInfo.InvariantCulture);

    /// <summary>"Wed 10 June 21:30" on the site's clock.</summary>
    public static string DateAndTime(SiteClock clock, DateTimeOffset at) =>
        clock.ToLocal(at).ToString("ddd d MMMM HH:mm", CultureInfo.InvariantCulture);

    public static string Minutes(double minutes) => minutes.ToString("0.#", CultureInfo.InvariantCulture) + " min";

    /// <summary>"a", "a and b", "a, b and c", "a, b, c and 4 more".</summary>
    public static string List(IReadOnlyList<string> items, int most = 3)
    {
        var shown = items.Take(most).ToList();
        var rest = items.Count - shown.Count;
        if (rest > 0)
        {
            return string.Join(", ", shown) + $" and {rest} more";
        }

        return shown.Count < 2
            ? string.Concat(shown)
            : string.Join(", ", shown.Take(shown.Count - 1)) + " and " + shown[^1];
    }
}
