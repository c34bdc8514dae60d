using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
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
    public static Phrase Line(HandRain rain, DateTimeOffset asOf, SiteWords words)
    {
        var isRunning = rain.To > asOf;
        var depth = words.DepthOf(rain.Mm);
        var back = rain.To - rain.From < TimeSpan.FromHours(24) ? new Phrase("its last entry") : new Phrase("24 hours back");
        var booked = rain.IsWholeDate
            ? Phrase.Of($"{depth} is the total of {words.Day(rain.BookedTo)}.")
            : $"{depth} from {words.When(rain.From)} ({back}) to {words.When(rain.To)}, booked as rain of {words.Day(rain.BookedTo)}, when that time begins.";
        var twice = rain.InTotalOf is { } date
            ? $" Its hours after midnight are in the total of {words.Day(date)} too: if it rained in them that counts twice, so take one of the two back (`log void`)."
            : Phrase.Empty;
        var again = rain.IsWholeDate && isRunning ? new Phrase(" That date is not over: log its total again if more falls.") : Phrase.Empty;
        return $"Gauge {rain.Gauge}, read by hand: {booked}{Against(rain, words)}{again}{twice}";
    }

    /// <summary>Which days that the sheet asks about are known now, and which are not.</summary>
    /// <param name="gauge">The gauge.</param>
    /// <param name="answered">Known now.</param>
    /// <param name="open">Still asked about.</param>
    public static string Answered(string gauge, IReadOnlyList<DateOnly> answered, IReadOnlyList<DateOnly> open)
    {
        var dates = (IReadOnlyList<DateOnly> days) => Phrase.List([.. days.Select(SiteWords.Date)]);
        var known = answered.Count > 0 ? $"That answers the rain of gauge {gauge} on {dates(answered)}." : $"It answers none of the days whose rain is asked for at gauge {gauge}.";
        return open.Count > 0 ? $"{known} Still not known: {dates(open)}; a line with that date alone gives its total." : known;
    }

    /// <summary>Where a figure of a date comes from, to stand behind it: " (by hand)"; empty = its instrument alone.</summary>
    public static Phrase Source(OvernightRain rain, DateOnly date)
    {
        var ofDate = rain.ByHand.Where(h => h.Counts && h.BookedTo == date).ToList();
        return ofDate.Count == 0 ? Phrase.Empty
            : ofDate.Exists(h => h.IsWholeDate || h.Station.Length == 0) ? new(" (by hand)")
            : new(" (partly by hand)");
    }

    private static Phrase Against(HandRain rain, SiteWords words)
    {
        if (!rain.Counts)
        {
            return new(" It is not counted: that date's total by hand counts instead.");
        }

        if (rain.Station.Length == 0)
        {
            return Phrase.Empty;
        }

        if (rain.InstrumentMm is not { } measured)
        {
            return $" It counts: station {rain.Station} knows nothing of that time.";
        }

        var part = rain.InstrumentMissing >= WorthAWord ? $" ({SiteWords.Count((int)Math.Round(rain.InstrumentMissing.TotalHours))} h of it unknown)" : Phrase.Empty;
        return $" It counts in place of station {rain.Station}, which has {words.DepthOf(measured)} for that time{part}: what a person read goes before the instrument.";
    }
}
