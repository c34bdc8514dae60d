using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Reports.Words;

/// <summary>Which time a reading of a gauge by hand is booked to, and whether it or the instrument counts there.</summary>
public static class HandRainWords
{
    /// <summary>Less than this of an instrument's time missing is not worth a word.</summary>
    private static readonly TimeSpan WorthAWord = TimeSpan.FromHours(1);

    /// <param name="rain">The reading.</param>
    /// <param name="asOf">A date's total that ends later is one of a date that is not over, UTC.</param>
    /// <param name="words">The site's.</param>
    public static string Line(HandRain rain, DateTimeOffset asOf, SiteWords words)
    {
        var isRunning = rain.To > asOf;
        var depth = words.DepthOf(rain.Mm);
        var back = rain.To - rain.From < TimeSpan.FromHours(24) ? "its last entry" : "24 hours back";
        var booked = rain.IsWholeDate
            ? $"{depth} is the total of {words.Day(rain.BookedTo)}."
            : $"{depth} from {words.When(rain.From)} ({back}) to {words.When(rain.To)}, booked as rain of {words.Day(rain.BookedTo)}, when that time begins.";
        var twice = rain.InTotalOf is { } date
            ? $" Its hours after midnight are in the total of {words.Day(date)} too: if it rained in them that counts twice, so take one of the two back (`log void`)."
            : "";
        var again = rain.IsWholeDate && isRunning ? " That date is not over: log its total again if more falls." : "";
        return $"Gauge {rain.Gauge}, read by hand: {booked}{Against(rain, words)}{again}{twice}";
    }

    /// <summary>Which days that the sheet asks about are known now, and which are not.</summary>
    /// <param name="gauge">The gauge.</param>
    /// <param name="answered">Known now.</param>
    /// <param name="open">Still asked about.</param>
    public static string Answered(string gauge, IReadOnlyList<DateOnly> answered, IReadOnlyList<DateOnly> open)
    {
        var dates = (IReadOnlyList<DateOnly> days) => CommonWords.List([.. days.Select(SiteWords.Date)]);
        var known = answered.Count > 0 ? $"That answers the rain of gauge {gauge} on {dates(answered)}." : $"It answers none of the days whose rain is asked for at gauge {gauge}.";
        return open.Count > 0 ? $"{known} Still not known: {dates(open)}; a line with that date alone gives its total." : known;
    }

    /// <summary>Where a figure of a date comes from, to stand behind it: " (by hand)"; empty = its instrument alone.</summary>
    public static string Source(OvernightRain rain, DateOnly date)
    {
        var ofDate = rain.ByHand.Where(h => h.Counts && h.BookedTo == date).ToList();
        return ofDate.Count == 0 ? ""
            : ofDate.Exists(h => h.IsWholeDate || h.Station.Length == 0) ? " (by hand)"
            : " (partly by hand)";
    }

    private static string Against(HandRain rain, SiteWords words)
    {
        if (!rain.Counts)
        {
            return " It is not counted: that date's total by hand counts instead.";
        }

        if (rain.Station.Length == 0)
        {
            return "";
        }

        if (rain.InstrumentMm is not { } measured)
        {
            return $" It counts: station {rain.Station} knows nothing of that time.";
        }

        var part = rain.InstrumentMissing >= WorthAWord ? $" ({SiteWords.Count((int)Math.Round(rain.InstrumentMissing.TotalHours))} h of it unknown)" : "";
        return $" It counts in place of station {rain.Station}, which has {words.DepthOf(measured)} for that time{part}: what a person read goes before the instrument.";
    }
}
