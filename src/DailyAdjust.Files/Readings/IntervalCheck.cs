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

    private int _rows;
    private int _steps;
    private int _shorter;
    private int _longer;
    private DateTimeOffset _before;
    private (int Line, TimeSpan Step) _shortStep;
    private (int Line, TimeSpan Step) _longStep;

    /// <summary>Enough rows have been seen.</summary>
    public bool IsDone => _rows >= Rows;

    public void Add(int line, DateTimeOffset begin)
    {
        var step = (begin - _before).Duration();
        _before = begin;
        _rows++;

        // The same time again is a correction, but one row a day cannot have the same date over and over.
        if (_rows == 1 || (step == TimeSpan.Zero && !source.IsDaily))
        {
            return;
        }

        _steps++;
        if (step < 0.75 * source.Interval)
        {
            _shorter++;
            _shortStep = _shorter == 1 ? (line, step) : _shortStep;
        }
        else if (step >= 1.5 * source.Interval)
        {
            _longer++;
            _longStep = _longer == 1 ? (line, step) : _longStep;
        }
    }

    /// <summary>Rows too close: what is wrong and what to do; null = they fit.</summary>
    public (int Line, string What, string Hint)? TooClose() =>
        _shorter >= FewestShort && 2 * _shorter > _steps
            ? (_shortStep.Line, $"rows are {Text(_shortStep.Step)} apart, but the site says that each is an interval of {Text(source.Interval)}", "Correct interval in the column map, or the clock or date pattern if the times are read wrongly; nothing of this file was used")
            : null;

    /// <summary>Rows too far apart: their days will stay incomplete.</summary>
    public (int Line, string What, string Hint)? TooFar() =>
        _longer >= FewestLong && 2 * _longer > _steps
            ? (_longStep.Line, $"rows are {Text(_longStep.Step)} apart, but the site says that each is an interval of {Text(source.Interval)}", "Days will be incomplete; correct interval in the column map if it is wrong")
            : null;

    private static string Text(TimeSpan step) =>
        step == TimeSpan.FromDays(1) ? "1 d"
        : step == TimeSpan.FromHours(1) ? "1 h"
        : step.TotalMinutes.ToString("0.##", CultureInfo.InvariantCulture) + " min";
}
