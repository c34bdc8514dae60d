using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>The starts that a program's number is for, and those after them.</summary>
internal sealed record PlainHorizon(
    IReadOnlyList<PlainStart> Starts,
    PlainStart? FirstAfter,
    IReadOnlyList<PlainStart> FirstDateAfter,
    PlainStart? LaterDate)
{
    private const int DaysLookedAt = 800;

    public static PlainHorizon Of(Site site, Controller controller, WateringProgram program, PlainVisits visits, DateOnly date)
    {
        var begin = site.Clock.ToInstant(date, site.Report.RoundDoneBy);
        var end = site.Clock.ToInstant(visits.NextAfter(date), site.Report.RoundDoneBy);
        var all = Enumerable.Range(-1, DaysLookedAt)
            .SelectMany(n => PlainStart.On(site, controller, program, date.AddDays(n)))
            .Where(s => s.At >= begin)
            .OrderBy(s => s.At)
            .ToList();
        var after = all.Where(s => s.At >= end).ToList();
        var first = after.FirstOrDefault();
        return new(
            [.. all.Where(s => s.At < end)],
            first,
            [.. after.Where(s => s.Date == first?.Date)],
            after.FirstOrDefault(s => s.Date > first?.Date));
    }

    /// <summary>Every start before which the ground must not be too dry: those after the first, and the first after the horizon.</summary>
    public IEnumerable<PlainStart> Later => FirstAfter is null ? Starts.Skip(1) : Starts.Skip(1).Append(FirstAfter);

    /// <summary>The last start that any question about the horizon reaches.</summary>
    public PlainStart Furthest => LaterDate ?? FirstAfter ?? Starts[^1];
}
