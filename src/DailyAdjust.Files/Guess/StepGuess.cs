using System.Globalization;

namespace DailyAdjust.Files.Guess;

/// <summary>The interval of a file's rows.</summary>
/// <param name="Interval">The commonest step; null = fewer than two rows, or a step that is not read (2 h).</param>
/// <param name="IsSure">Most steps are so long, and there are some.</param>
/// <param name="Why">What was counted.</param>
internal sealed record StepGuess(TimeSpan? Interval, bool IsSure, string Why)
{
    private const int FewSteps = 3;
    private const double MostSteps = 0.6;

    public static StepGuess Of(IReadOnlyList<DateTime?> stamps, bool hasTimeOfDay)
    {
        var steps = new List<TimeSpan>();
        var known = stamps.OfType<DateTime>().ToList();
        for (var i = 1; i < known.Count; i++)
        {
            // A logger's stamps may be some seconds late.
            var step = TimeSpan.FromMinutes(Math.Round((known[i] - known[i - 1]).Duration().TotalMinutes));
            if (step > TimeSpan.Zero)
            {
                steps.Add(step);
            }
        }

        if (steps.Count == 0)
        {
            return hasTimeOfDay
                ? new(null, IsSure: false, "there are fewer than two rows with different times")
                : new(TimeSpan.FromDays(1), IsSure: false, "only one row, with a date alone: taken for a day");
        }

        var commonest = steps.GroupBy(step => step).OrderByDescending(group => group.Count()).ThenBy(group => group.Key).First();
        var why = string.Create(CultureInfo.InvariantCulture, $"{commonest.Count()} of {steps.Count} steps from row to row are {Text(commonest.Key)}");
        return IsRead(commonest.Key)
            ? new(commonest.Key, steps.Count >= FewSteps && commonest.Count() >= MostSteps * steps.Count, why)
            : new(null, IsSure: false, why + "; rows of 1 to 60 minutes that divide the hour, or of a day, can be read");
    }

    /// <summary>"10 min", "1 h", "1 d".</summary>
    public static string Text(TimeSpan step) =>
        step.TotalDays >= 1 && step.Ticks % TimeSpan.TicksPerDay == 0 ? string.Create(CultureInfo.InvariantCulture, $"{step.TotalDays:0} d")
        : step.Ticks % TimeSpan.TicksPerHour == 0 ? string.Create(CultureInfo.InvariantCulture, $"{step.TotalHours:0} h")
        : string.Create(CultureInfo.InvariantCulture, $"{step.TotalMinutes:0} min");

    private static bool IsRead(TimeSpan step) =>
        step == TimeSpan.FromDays(1) || (step <= TimeSpan.FromHours(1) && 60 % (int)step.TotalMinutes == 0);
}
