using System.Globalization;
using System.Text;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Water;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Html;

/// <summary>One week of a program: the mean of its days, percent.</summary>
internal readonly record struct SeasonWeek(DateOnly Monday, double Percent);

/// <summary>
/// Where the marks of the season's strips stand: a row for each program, darker in weeks in which more runs. All weeks of one shade are one path of
/// broad strokes, so that a large course stays a small page.
/// </summary>
internal sealed class SeasonPlot
{
    public const double Left = 52;
    public const double Right = 354;
    public const double Top = 18;
    public const double RowHeight = 16;
    public const double CellHeight = 12;

    private readonly IReadOnlyList<ProgramSeason> _programs;
    private readonly DateOnly _monday;
    private readonly int _weeks;

    /// <param name="programs">At least one, all of the same days.</param>
    public SeasonPlot(IReadOnlyList<ProgramSeason> programs)
    {
        _programs = programs;
        _monday = CalendarWeek.MondayOf(programs[0].From);
        _weeks = ((programs[0].From.DayNumber + programs[0].Percents.Count - 1 - _monday.DayNumber) / 7) + 1;
    }

    public double Bottom => Top + (RowHeight * _programs.Count);

    public static double Y(int row) => Top + (RowHeight * row) + ((RowHeight - CellHeight) / 2);

    /// <summary>The first of each month, where it has room.</summary>
    public IEnumerable<(double X, DateOnly Month)> Months()
    {
        for (var week = 0; week < _weeks; week++)
        {
            var sunday = _monday.AddDays((7 * week) + 6);
            if (sunday.Day <= 7)
            {
                yield return (X(week), sunday);
            }
        }
    }

    /// <summary>The weeks of a shade as the data of one path along the middle of the rows; empty = there are none.</summary>
    /// <param name="shade">0 to 4; -1 = off.</param>
    public string Path(int shade)
    {
        var path = new StringBuilder();
        for (var row = 0; row < _programs.Count; row++)
        {
            var y = Svg.N(Y(row) + (CellHeight / 2));
            var weeks = Weeks(_programs[row]).ToList();
            for (var first = 0; first < weeks.Count; first++)
            {
                var after = first;
                while (after < weeks.Count && ShadeOf(weeks[after].Percent) == shade)
                {
                    after++;
                }

                if (after > first)
                {
                    path.Append(CultureInfo.InvariantCulture, $"M{Svg.N(X(first))} {y}H{Svg.N(X(after))}");
                    first = after - 1;
                }
            }
        }

        return path.ToString();
    }

    public static IEnumerable<SeasonWeek> Weeks(ProgramSeason program) => program.Percents
        .Select((percent, day) => (Monday: CalendarWeek.MondayOf(program.From.AddDays(day)), Percent: percent))
        .GroupBy(d => d.Monday)
        .Select(g => new SeasonWeek(g.Key, g.Average(d => d.Percent)));

    private static int ShadeOf(double percent) => percent <= 0 ? -1 : SeasonChartWords.Ends.TakeWhile(end => percent > end).Count();

    private double X(int week) => Left + ((Right - Left) * week / _weeks);
}
