using System.Globalization;

namespace DailyAdjust.Files.Guess;

/// <summary>Whether a column of rain is a running total or what fell in each interval.</summary>
internal static class CounterGuess
{
    private const int FewestRises = 3;

    /// <summary>A total stays where it is between two showers; rain of intervals is 0 between them.</summary>
    private const double MostlyStays = 0.5;

    /// <param name="rows">Time and number, ascending by time.</param>
    /// <param name="saysTotal">The header's words tell of a total.</param>
    /// <param name="daily">A row is a day: a "daily total" is then no running one.</param>
    public static Answer<bool> Of(IReadOnlyList<(DateTime Stamp, double Value)> rows, bool saysTotal, bool daily)
    {
        var (rises, stays, above) = (0, 0, 0);
        var falls = new List<DateTime>();
        var fallsShort = 0;
        for (var i = 1; i < rows.Count; i++)
        {
            var (before, now) = (rows[i - 1].Value, rows[i].Value);
            above += now > 0 ? 1 : 0;
            stays += now > 0 && now.Equals(before) ? 1 : 0;
            rises += now > before ? 1 : 0;
            if (now < before)
            {
                falls.Add(rows[i].Stamp);
                fallsShort += now > 0.5 * before ? 1 : 0;
            }
        }

        // A total may begin again at one time of every day; of daily rows, which all have one time, only now and then.
        var resets = !daily && falls.TrueForAll(fall => fall.TimeOfDay == falls[0].TimeOfDay);
        var looksSo = rises >= FewestRises && fallsShort == 0 && stays >= MostlyStays * above && (falls.Count <= 1 || resets);
        var looksNot = fallsShort > 0 || (falls.Count > 1 && !resets);
        var seen = string.Create(CultureInfo.InvariantCulture, $"it grew {rises} times and fell {falls.Count} times in {rows.Count} rows");
        if (above == 0 || rises + falls.Count < FewestRises)
        {
            var total = (saysTotal && !daily) || (above > 0 && stays >= MostlyStays * above && falls.Count == 0 && above > 2);
            return new(total, false, $"too little rain in these rows to tell a running total from rain of each interval: {seen}");
        }

        // A header that tells of a total, and numbers that mostly stay or grow: what falls are wrong rows and beginnings.
        if (saysTotal && !daily && !looksSo && rises >= FewestRises && stays >= MostlyStays * above && falls.Count * 2 <= rises)
        {
            return new(true, false, $"the header tells of a total, and it looks so but for a few rows: {seen}");
        }

        return looksSo ? new(true, true, $"a running total: {seen}{(falls.Count > 1 ? ", always at one time of day" : "")}")
            : looksNot ? new(false, !saysTotal || daily, saysTotal && !daily ? $"the header tells of a total, but {seen}" : $"rain of each interval: {seen}")
            : new(saysTotal && !daily, false, $"a running total or not: {seen}");
    }
}
