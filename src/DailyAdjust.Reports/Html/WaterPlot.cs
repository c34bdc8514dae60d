using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Water;

namespace DailyAdjust.Reports.Html;

/// <summary>Where the marks of the month's water stand, in the units of a 360 × 132 view box: what was used since the month began, day by day.</summary>
internal sealed class WaterPlot
{
    public const double Left = 18;
    public const double Right = 354;

    /// <summary>Above it stands the end of the scale, which has no room beside the drawing.</summary>
    public const double Top = 22;
    public const double Base = 110;

    private readonly WaterUsed _water;
    private readonly int _daysOfMonth;

    /// <param name="water">Of at least one day, of this month or of the same a year before.</param>
    public WaterPlot(WaterUsed water)
    {
        _water = water;
        var any = water.Month.Concat(water.YearBefore).First().Date;
        _daysOfMonth = DateTime.DaysInMonth(any.Year, any.Month);
        LimitL = water.Limits.FirstOrDefault(l => l.Kind == LimitKind.Month)?.Limit;
        var used = new[] { water.Month.Sum(d => d.EstimatedL), water.YearBefore.Sum(d => d.EstimatedL), 1 }.Max();
        AllotmentL = water.AllotmentMonthL;
        LargestL = new[] { LimitL, AllotmentL }.OfType<double>().Where(limit => limit <= MostOverUse * used).Append(used).Max();
    }

    /// <summary>A limit further above what was used would press that flat: it is said, not drawn.</summary>
    private const double MostOverUse = 3;

    public double LargestL { get; }

    /// <summary>What the allotment gives the month, used evenly over its year, L; null = there is none.</summary>
    public double? AllotmentL { get; }

    /// <summary>What the permit allows a month, L; null = nothing does.</summary>
    public double? LimitL { get; }

    public string ThisMonth => Line(_water.Month);

    /// <summary>Empty where it is not known.</summary>
    public string YearBefore => Line(_water.YearBefore);

    /// <summary>At the end of a day of the month, 0 = when it begins.</summary>
    public double X(int day) => Left + ((Right - Left) * day / _daysOfMonth);

    /// <summary>Where the even use of the allotment leaves the drawing: at the month's end, or where it passes the scale.</summary>
    public (double X, double Y) AllotmentEnd => AllotmentL is not { } all || all <= LargestL
        ? (Right, Y(AllotmentL ?? 0))
        : (Left + ((Right - Left) * LargestL / all), Top);

    public bool IsDrawn(double limitL) => limitL <= LargestL;

    public double Y(double litres) => Base - ((Base - Top) * litres / LargestL);

    /// <summary>Days under which a number stands.</summary>
    public IEnumerable<int> Marked() => Enumerable.Range(1, _daysOfMonth).Where(d => d == 1 || d % 5 == 0);

    private string Line(IReadOnlyList<DayWater> days)
    {
        if (days.Count == 0)
        {
            return "";
        }

        var sum = 0.0;
        return string.Join(' ', days.Select(d => Point(d.Date.Day, sum += d.EstimatedL)).Prepend(Point(days[0].Date.Day - 1, 0)));
    }

    private string Point(int day, double litres) => Svg.N(X(day)) + "," + Svg.N(Y(litres));
}
