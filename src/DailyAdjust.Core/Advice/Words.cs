using System.Globalization;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Numbers and dates inside plain sentences, in the site's units; always the invariant culture.</summary>
internal static class Words
{
    public static Phrase Depth(UnitSystem units, double mm) => DepthWords.Of(units, mm);

    public static string Percent(double percent) => percent.ToString("0.#", CultureInfo.InvariantCulture) + " %";

    public static string Share(double fraction) => (fraction * 100).ToString("0", CultureInfo.InvariantCulture) + " %";

    /// <summary>"Wed 10 June".</summary>
    public static Phrase Date(DateOnly date) => DateWords.Date(date);

    /// <summary>"21:30 Wed 10 June" on the site's clock.</summary>
    public static Phrase DateAndTime(SiteClock clock, DateTimeOffset at) => TimeWords.Dated(clock, at);

    /// <summary>"at 15:00 today", "at 21:30 Wed 10 June".</summary>
    public static Phrase When(SiteClock clock, DateOnly today, DateTimeOffset at) => $"at {TimeWords.When(clock, today, at)}";

    public static string Minutes(double minutes) => minutes.ToString("0.#", CultureInfo.InvariantCulture) + " min";

    /// <summary>"a", "a and b", "a, b and c", "a, b, c and 4 more".</summary>
    public static Phrase List(IReadOnlyList<Phrase> items, int most = 3) => items.Count <= most
        ? Phrase.List(items)
        : $"{Phrase.Join(", ", items.Take(most))} and {items.Count - most} more";
}
