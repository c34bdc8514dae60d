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

    /// <summary>By program, then by week.</summary>
    private readonly int[][] _shades;
    private readonly DateOnly _monday;
    private readonly int _weeks;

    /// <param name="programs">At least one, all of the same days.</param>
    public SeasonPlot(IReadOnlyList<ProgramSeason> programs)
    {
        _programs = programs;
        _shades = [.. programs.Select(p => Weeks(p).Select(w => ShadeOf(w.Percent)).ToArray())];
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
            var weeks = _shades[row];
            for (var first = 0; first < weeks.Length; first++)
            {
                var after = first;
                while (after < weeks.Length && weeks[after] == shade)
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

    public static IReadOnlyList<SeasonWeek> Weeks(ProgramSeason program)
    {
        var weeks = new List<SeasonWeek>();
        var monday = CalendarWeek.MondayOf(program.From);
        for (var day = 0; day < program.Percents.Count; monday = monday.AddDays(7))
        {
            var (sum, days) = (0.0, 0);
            for (var next = monday.AddDays(7); day < program.Percents.Count && program.From.AddDays(day) < next; day++, days++)
            {
                sum += program.Percents[day];
            }

            weeks.Add(new SeasonWeek(monday, sum / days));
        }

        return weeks;
    }

    private static int ShadeOf(double percent) => percent <= 0 ? -1 : SeasonChartWords.Ends.TakeWhile(end => percent > end).Count();

    private double X(int week) => Left + ((Right - Left) * week / _weeks);
}
