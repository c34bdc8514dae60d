using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Html;

/// <summary>Where the marks of an area's chart stand, in the units of a 360 × 196 view box.</summary>
internal sealed class AreaPlot
{
    public const double Left = 44;
    public const double Right = 354;
    public const double Top = 6;
    public const double Width = Right - Left;
    public const double Height = 106;
    public const double BarTop = 122;
    public const double BarBase = 174;

    /// <summary>Bars of a dry, unwatered fortnight still need a scale, mm.</summary>
    private const double LeastBarScaleMm = 2.5;

    private readonly AreaMoisture _area;
    private readonly double _deepestMm;

    public AreaPlot(AreaMoisture area)
    {
        _area = area;
        _deepestMm = area.Days.Select(d => d.DepletionMm).Append(area.AllowableMm).Max() * 1.12;
        LargestBarMm = area.Days.Select(d => Math.Max(d.RainMm ?? 0, d.IrrigationMm)).Append(LeastBarScaleMm).Max();
    }

    public static AreaPlot Empty { get; } = new(new AreaMoisture("", 1, 1, []));

    public double LargestBarMm { get; }

    public double BarWidth => Math.Min(8, Width / Math.Max(_area.Days.Count, 1) * 0.4);

    /// <summary>The depletion line's points, oldest first.</summary>
    public string Line => string.Join(" ", _area.Days.Select((d, i) => Svg.N(X(i)) + "," + Svg.N(Y(d.DepletionMm))));

    public double X(int day) => Left + (Width * (day + 0.5) / Math.Max(_area.Days.Count, 1));

    public double Y(double depletionMm) => Top + (Height * depletionMm / _deepestMm);

    public double BarHeight(double mm) => (BarBase - BarTop) * mm / LargestBarMm;

    /// <summary>Every third day, counted back from the newest, so that today always has its date.</summary>
    public bool HasDateLabel(int day) => (_area.Days.Count - 1 - day) % 3 == 0;

    /// <summary>The day of the month; the month stands with the first label and where it changes.</summary>
    public Phrase DateLabel(int day)
    {
        var date = _area.Days[day].Date;
        return day < 3 || _area.Days[day - 3].Date.Month != date.Month ? SiteWords.DayShortMonth(date) : Phrase.Verbatim(SiteWords.Count(date.Day));
    }
}
