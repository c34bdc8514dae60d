using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Readings;

/// <summary>
/// Holds the interval that the site gives against the distance of a file's first rows: a mean over ten minutes taken for
/// an hour's would count the sun six times.
/// </summary>
internal sealed class IntervalCheck(WeatherSource source)
{
    private const int Rows = 200;
    private const int FewestShort = 3;
    private const int FewestLong = 10;

    private int rows;
    private int steps;
    private int shorter;
    private int longer;
    private DateTimeOffset before;
    private (int Line, TimeSpan Step) shortStep;
    private (int Line, TimeSpan Step) longStep;

    /// <summary>Enough rows have been seen.</summary>
    public bool IsDone => rows >= Rows;

    public void Add(int line, DateTimeOffset begin)
    {
        var step = (begin - before).Duration();
        before = begin;
        rows++;

        // The same time again is a correction, but one row a day cannot have the same date over and over.
        if (rows == 1 || (step == TimeSpan.Zero && !source.IsDaily))
        {
            return;
        }

        steps++;
        if (step < 0.75 * source.Interval)
        {
            shorter++;
            shortStep = shorter == 1 ? (line, step) : shortStep;
        }
        else if (step >= 1.5 * source.Interval)
        {
            longer++;
            longStep = longer == 1 ? (line, step) : longStep;
        }
    }

    /// <summary>Rows too close: what is wrong and what to do; null = they fit.</summary>
    public (int Line, string What, string Hint)? TooClose() =>
        shorter >= FewestShort && 2 * shorter > steps
            ? (shortStep.Line, $"rows are {Text(shortStep.Step)} apart, but the site says that each is an interval of {Text(source.Interval)}", "Correct interval in the column map, or the clock or date pattern if the times are read wrongly; nothing of this file was used")
            : null;

    /// <summary>Rows too far apart: their days will stay incomplete.</summary>
    public (int Line, string What, string Hint)? TooFar() =>
        longer >= FewestLong && 2 * longer > steps
            ? (longStep.Line, $"rows are {Text(longStep.Step)} apart, but the site says that each is an interval of {Text(source.Interval)}", "Days will be incomplete; correct interval in the column map if it is wrong")
            : null;

    private static string Text(TimeSpan step) =>
        step == TimeSpan.FromDays(1) ? "1 d"
        : step == TimeSpan.FromHours(1) ? "1 h"
        : step.TotalMinutes.ToString("0.##", CultureInfo.InvariantCulture) + " min";
}
