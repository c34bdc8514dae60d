using DailyAdjust.Core.Weather;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Html;

/// <summary>Where the marks of the chart of the last days' weather stand, in the units of a 360 × 132 view box; ETo and rain on one scale.</summary>
internal sealed class WeatherPlot
{
    public const double Left = 44;
    public const double Right = 354;
    public const double Top = 8;
    public const double Base = 110;

    /// <summary>A dry, cool fortnight still needs a scale, mm.</summary>
    private const double LeastScaleMm = 5;

    private readonly IReadOnlyList<WeatherDay> _days;

    /// <param name="days">At least one, ascending.</param>
    public WeatherPlot(IReadOnlyList<WeatherDay> days)
    {
        _days = days;
        LargestMm = days.SelectMany(d => new[] { d.EtoMm ?? 0, WeatherChartWords.RainMm(d) ?? 0 }).Append(LeastScaleMm).Max();
    }

    public double LargestMm { get; }

    public double BarWidth => Math.Min(12, (Right - Left) / _days.Count * 0.55);

    public double X(int day) => Left + ((Right - Left) * (day + 0.5) / _days.Count);

    public double Y(double mm) => Base - ((Base - Top) * mm / LargestMm);

    /// <summary>The ETo line in pieces: a day of which nothing is known breaks it.</summary>
    public IEnumerable<string> Lines()
    {
        var points = new List<string>();
        for (var i = 0; i < _days.Count; i++)
        {
            if (_days[i].EtoMm is { } eto)
            {
                points.Add(Svg.N(X(i)) + "," + Svg.N(Y(eto)));
            }
            else if (points.Count > 0)
            {
                yield return string.Join(' ', points);
                points.Clear();
            }
        }

        if (points.Count > 0)
        {
            yield return string.Join(' ', points);
        }
    }
}
