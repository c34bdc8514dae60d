namespace DailyAdjust.Core.Sites;

/// <summary>The report section of site.yaml. Shares are fractions (0.8 = 80 %).</summary>
public sealed record ReportPolicy
{
    /// <summary>Times on the site's clock at which a sheet lies ready; ascending, at least one.</summary>
    public IReadOnlyList<TimeOnly> At { get; init; } = [new TimeOnly(5, 0)];

    /// <summary>By then the round is walked; starts from then on run at the new settings.</summary>
    public TimeOnly RoundDoneBy { get; init; } = new(13, 0);

    /// <summary>When the first players set out: what is run by hand after a night that failed is done by then; null = not said.</summary>
    public TimeOnly? FirstPlay { get; init; }

    /// <summary>
    /// From when on starts run at what a sheet says, UTC: round_done_by of its date. A look later than that finds that round walked: it speaks about the starts after its own minute.
    /// </summary>
    /// <param name="clock">The site's.</param>
    /// <param name="date">The sheet's date.</param>
    /// <param name="asOf">The instant whose knowledge it has.</param>
    public DateTimeOffset StartsChangeFrom(SiteClock clock, DateOnly date, DateTimeOffset asOf)
    {
        var done = clock.ToInstant(date, RoundDoneBy);
        return asOf >= done ? asOf.AddMinutes(1) : done;
    }

    /// <summary>Whether the round of a date was to be done before an instant, so that a sheet as of it asks for a walk of its own.</summary>
    public bool IsAfterRound(SiteClock clock, DateOnly date, DateTimeOffset asOf) => asOf >= clock.ToInstant(date, RoundDoneBy);

    /// <summary>Whether an instant lies after the first report time of a date: a later look.</summary>
    public bool IsLaterLook(SiteClock clock, DateOnly date, DateTimeOffset asOf) => asOf > clock.ToInstant(date, At[0]);

    /// <summary>Share of the ground that a program's percentage has to meet, above 0 to 1.</summary>
    public double Satisfy { get; init; } = 0.80;

    /// <summary>A program that can wait is skipped at or below this exact percentage, percent (25 = 25 %).</summary>
    public double SkipBelowPercent { get; init; } = 25;

    /// <summary>
    /// Share of allowable depletion, 0 to 1: a program that could be skipped is left as it is set while no more than the rest of it fills up; null = it is skipped.
    /// </summary>
    public double? SkipRoom { get; init; }

    /// <summary>What is not worth a walk: share of allowable depletion, 0 to 1.</summary>
    public double Worth { get; init; } = 0.05;

    /// <summary>
    /// A program that was turned off with a note beside it stays off until somebody says that this is mended or over; otherwise the sheet asks, and
    /// turns it on again when its ground needs water.
    /// </summary>
    public bool OffWithNoteStaysOff { get; init; }

    /// <summary>Between visits: what not going may cost before the sheet says go, share of allowable depletion, 0 or more.</summary>
    public double VisitAlert { get; init; } = 0.25;

    /// <summary>What the sheet is written in.</summary>
    public SheetLanguage Language { get; init; }

    /// <summary>Older weather gives no advice.</summary>
    public TimeSpan WeatherMaxAge { get; init; } = TimeSpan.FromDays(2);
}

/// <summary>The hours in which irrigation may run; may cross midnight.</summary>
public sealed record WateringWindow(TimeOnly Opens, TimeOnly Closes)
{
    /// <summary>Whether a time of day lies in it: from its opening, before its closing.</summary>
    public bool Contains(TimeOnly time) => time.IsBetween(Opens, Closes);
}
