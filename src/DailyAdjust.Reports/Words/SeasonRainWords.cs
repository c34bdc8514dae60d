using System.Globalization;
using DailyAdjust.Core.Plan;

namespace DailyAdjust.Reports.Words;

/// <summary>What the usual rain of a mean year rests on, and where there is none to take off.</summary>
public static class SeasonRainWords
{
    /// <param name="rain">12 months as they were taken off; null where none was.</param>
    /// <param name="own">12 months of the site's own days, however few years they know.</param>
    public static IReadOnlyList<string> Of(IReadOnlyList<MonthRain?> rain, IReadOnlyList<KnownMonth?> own)
    {
        var lines = new List<string>();
        Add(lines, Months(m => rain[m] is { FromNormals: false }), months => $"Usual rain of {months}: from this site's own days, {Years(rain.OfType<MonthRain>().Where(r => !r.FromNormals).Select(r => r.Years!.Value))}.");
        Add(lines, Months(m => rain[m] is { FromNormals: true }), months => $"Usual rain of {months}: from the normals in site.yaml.");
        Add(
            lines,
            Months(m => own[m] is { Years: < EffectiveRain.LeastYears }),
            months => $"This site's own days know {months} of {Years(own.OfType<KnownMonth>().Where(k => k.Years < EffectiveRain.LeastYears).Select(k => k.Years))} only: that is what fell, not what is usual, and is not taken off (a mean takes at least {SiteWords.Count(EffectiveRain.LeastYears)} years, a normal 30).");
        Add(lines, Months(m => rain[m] is null), months => $"No usual rain is known of {months}: go by the percentages without rain.");
        return lines;
    }

    private static void Add(List<string> lines, string months, Func<string, string> line)
    {
        if (months.Length > 0)
        {
            lines.Add(line(months));
        }
    }

    /// <summary>"June", "April to June and August"; empty for none.</summary>
    private static string Months(Func<int, bool> which)
    {
        var names = CultureInfo.InvariantCulture.DateTimeFormat.MonthNames;
        var runs = new List<string>();
        for (var month = 0; month < 12; month++)
        {
            if (!which(month) || (month > 0 && which(month - 1)))
            {
                continue;
            }

            var last = month;
            while (last < 11 && which(last + 1))
            {
                last++;
            }

            runs.Add(last == month ? names[month] : $"{names[month]} to {names[last]}");
        }

        return CommonWords.List(runs);
    }

    /// <summary>"1 year", "2 to 3 years".</summary>
    private static string Years(IEnumerable<int> years)
    {
        var all = years.Order().ToList();
        return all[0] == all[^1] ? CommonWords.Count(all[0], "year", "years") : $"{SiteWords.Count(all[0])} to {SiteWords.Count(all[^1])} years";
    }
}
