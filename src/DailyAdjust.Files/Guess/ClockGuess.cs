using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Guess;

/// <summary>Which clock wrote the times, and whether they end or begin their intervals.</summary>
internal sealed record ClockGuess(Answer<StampClock> Clock, Answer<StampMeaning> Stamp)
{
    /// <summary>By which the sun of clear days may miss solar noon and the clock still be right, min. Common practice.</summary>
    private const double MostOffMinutes = 15;

    /// <summary>One row a day: its date is the site's.</summary>
    public static ClockGuess OfDays(bool hasTimeOfDay, bool endsAt24) => new(
        new(StampClock.Local, true, "a row is a calendar day"),
        endsAt24 ? new(StampMeaning.End, true, "24:00 ends a date")
            : hasTimeOfDay ? new(StampMeaning.Start, false, "the date has a time of day: does it end or begin its day")
            : new(StampMeaning.Start, true, "the date names its day"));

    /// <param name="said">What cells, headers and the lines above them say; null = nothing.</param>
    /// <param name="saidStamp">Likewise of the meaning of the stamp.</param>
    /// <param name="sun">Null = not measured.</param>
    /// <param name="whyNoSun">Then: why not.</param>
    public static ClockGuess Of(Answer<StampClock>? said, Answer<StampMeaning>? saidStamp, SunClock? sun, string whyNoSun)
    {
        if (sun is null)
        {
            return new(
                said ?? new(StampClock.Local, false, $"nothing in the file says it, and {whyNoSun}: local, standard or utc"),
                saidStamp ?? new(StampMeaning.End, false, $"nothing in the file says it, and {whyNoSun}: does 14:00 end its interval or begin it"));
        }

        if (sun.Fits[0].OffMinutes > MostOffMinutes)
        {
            var far = $"radiation of {Days(sun)} fits no clock: it is nearest to {Way(sun.Fits[0])}; is the place right, and the station's clock";
            return new(said is { } s ? s with { IsSure = false, Why = $"{s.Why}, but {far}" } : new(sun.Fits[0].Clock, false, far), saidStamp ?? new(sun.Fits[0].Stamp, false, far));
        }

        var possible = sun.Possible;
        var agreeing = possible.Where(fit => (said is null || fit.Clock == said.Value) && (saidStamp is null || fit.Stamp == saidStamp.Value)).ToList();
        if (agreeing.Count == 0)
        {
            var against = $"radiation of {Days(sun)} says {Way(sun.Fits[0])}";
            return new(
                said is { } c ? c with { IsSure = false, Why = $"{c.Why}, but {against}" } : new(sun.Fits[0].Clock, false, against),
                saidStamp is { } m ? m with { IsSure = false, Why = $"{m.Why}, but {against}" } : new(sun.Fits[0].Stamp, false, against));
        }

        // Ways that the sun cannot tell apart: the site's own clock is the commonest, and so is the stamp at the end.
        var chosen = agreeing.OrderBy(fit => fit.Clock).ThenBy(fit => fit.Stamp).First();
        var next = sun.Fits.FirstOrDefault(fit => !possible.Contains(fit));
        var measured = $"radiation of {Days(sun)} fits {Way(chosen)}" + (next is null ? "" : $", the next best way would be {Way(next)}");
        string Open(IEnumerable<SunFit> others) => $"{measured}; it fits as well: {string.Join(" or ", others.Select(Way))}. Rows like these cannot tell";
        var otherClocks = agreeing.Where(fit => fit.Clock != chosen.Clock).ToList();
        var otherStamps = agreeing.Where(fit => fit.Stamp != chosen.Stamp).ToList();
        return new(
            new(chosen.Clock, otherClocks.Count == 0, otherClocks.Count == 0 ? With(said?.Why, measured) : Open(otherClocks)),
            new(chosen.Stamp, otherStamps.Count == 0, otherStamps.Count == 0 ? With(saidStamp?.Why, measured) : Open(otherStamps)));
    }

    private static string With(string? said, string measured) => said is null ? measured : $"{said}, and {measured}";

    private static string Days(SunClock sun) => sun.Days == 1 ? "1 clear day" : string.Create(CultureInfo.InvariantCulture, $"{sun.Days} clear days");

    private static string Way(SunFit fit) => string.Create(
        CultureInfo.InvariantCulture, $"{fit.Clock.ToString().ToLowerInvariant()} and {fit.Stamp.ToString().ToLowerInvariant()} ({fit.OffMinutes:0} min from solar noon)");
}

/// <summary>A value with what speaks for it.</summary>
internal sealed record Answer<T>(T Value, bool IsSure, string Why);
