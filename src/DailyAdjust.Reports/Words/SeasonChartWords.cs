using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>What the strips of the season say, for eyes and for ears.</summary>
internal static class SeasonChartWords
{
    public static readonly Phrase Heading = new("The season so far: what was set, week by week");
    public static readonly Phrase KeyOff = new("off.");

    /// <summary>Upper ends of the shades, percent; the last is open. Off is a line, not a shade.</summary>
    public static IReadOnlyList<double> Ends { get; } = [40, 70, 100, 130, double.PositiveInfinity];

    public static Phrase Key(int shade) =>
        shade == Ends.Count - 1 ? Phrase.Of($"above {SiteWords.Percent(Ends[shade - 1])}.") : $"up to {SiteWords.Percent(Ends[shade])}";

    public static Phrase Title(SheetView view) => $"Percentage of every program by week, since {SiteWords.Date(view.Sheet.Season[0].From)}";

    public static Phrase Description(SheetView view)
    {
        var means = view.Sheet.Season.Select(p => (p.Program, Mean: p.Percents.Average())).OrderByDescending(p => p.Mean).ToList();
        return $"On the mean of all days, days off counted as 0: most on {means[0].Program}, {Whole(means[0].Mean)}; least on {means[^1].Program}, {Whole(means[^1].Mean)}.";
    }

    /// <summary>"Jul".</summary>
    public static Phrase Month(DateOnly date) => DateWords.ShortMonthName(date);

    /// <summary>The first day of every month that the season has touched.</summary>
    public static IEnumerable<DateOnly> Months(SheetView view)
    {
        var (from, days) = (view.Sheet.Season[0].From, view.Sheet.Season[0].Percents.Count);
        for (var month = new DateOnly(from.Year, from.Month, 1); month < from.AddDays(days); month = month.AddMonths(1))
        {
            yield return month;
        }
    }

    /// <summary>Of a program's days in a month, days off counted as 0.</summary>
    public static string Mean(ProgramSeason program, DateOnly month)
    {
        var days = program.Percents.Where((_, day) => program.From.AddDays(day) is var date && date.Month == month.Month && date.Year == month.Year).ToList();
        return days.Count == 0 ? "" : Whole(days.Average());
    }

    private static string Whole(double percent) => SiteWords.Percent(Math.Round(percent, MidpointRounding.AwayFromZero));
}
