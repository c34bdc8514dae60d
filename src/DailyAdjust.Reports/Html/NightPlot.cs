using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Html;

/// <summary>A span of a night's chart.</summary>
/// <param name="X">Left end, in the units of the view box.</param>
/// <param name="Width">At least 1, so that a short run is seen.</param>
/// <param name="Label">What stands in it; empty where it has no room.</param>
internal readonly record struct NightBar(double X, double Width, string Label = "");

/// <summary>One controller's night.</summary>
/// <param name="Overlaps">Where two of its programs run at once.</param>
internal sealed record NightRow(string Controller, IReadOnlyList<NightBar> Runs, IReadOnlyList<NightBar> Overlaps);

/// <summary>Where the marks of a night's timeline stand: a row for each controller with a run, in walking order, in a view box 360 wide.</summary>
internal sealed class NightPlot
{
    public const double Left = 44;
    public const double Right = 354;
    public const double Top = 20;
    public const double RowHeight = 24;
    public const double BarHeight = 16;

    /// <summary>Width of a character of a bar's label, about.</summary>
    private const double Character = 7;

    private readonly DateTimeOffset _from;
    private readonly DateTimeOffset _to;

    /// <param name="runs">Of one night, at least one.</param>
    /// <param name="fit">Its overlaps with the pump's capacity.</param>
    /// <param name="site">Its controllers, clock and watering window.</param>
    public NightPlot(IReadOnlyList<ProgramRun> runs, NightFit fit, Site site)
    {
        var clock = site.Clock;
        _from = Whole(runs.Min(r => r.Begins), up: false);
        _to = Whole(runs.Max(r => r.Finishes), up: true);
        Rows = [.. site.Controllers.OrderBy(c => c.Route)
            .Select(c => Row(c.Id, [.. runs.Where(r => string.Equals(r.Program.Controller, c.Id, StringComparison.Ordinal)).OrderBy(r => r.Begins)]))
            .Where(r => r.Runs.Count > 0)];
        Pump = [.. fit.Pump.Where(p => p.To > _from && p.From < _to).Select(p => Bar(p.From, p.To))];
        var (step, length) = (Hours(_to - _from), (_to - _from).TotalHours);
        Labels = [.. Enumerable.Range(0, (int)(length / step) + 1).Select(i => _from.AddHours(i * step)).Select(at => (X(at), SiteWords.Clock(TimeOnly.FromDateTime(clock.ToLocal(at).DateTime))))];
        var dates = Enumerable.Range(0, clock.DateOf(_to).DayNumber - clock.DateOf(_from).DayNumber + 1).Select(clock.DateOf(_from).AddDays);
        Edges = site.Window is not { } window ? []
            : [.. dates.SelectMany(date => new[] { clock.ToInstant(date, window.Opens), clock.ToInstant(date, window.Closes) }).Where(at => at > _from && at < _to).Select(X)];
    }

    public IReadOnlyList<NightRow> Rows { get; }

    /// <summary>Controllers on which two programs run at once.</summary>
    public IReadOnlyList<string> Crossing => [.. Rows.Where(r => r.Overlaps.Count > 0).Select(r => r.Controller)];

    /// <summary>When the controllers together ask more than the pump gives.</summary>
    public IReadOnlyList<NightBar> Pump { get; }

    public IReadOnlyList<(double X, string Clock)> Labels { get; }

    /// <summary>Where the watering window opens and closes.</summary>
    public IReadOnlyList<double> Edges { get; }

    public double Bottom => Top + (RowHeight * (Rows.Count + (Pump.Count > 0 ? 1 : 0)));

    public static double Y(int row) => Top + (RowHeight * row) + ((RowHeight - BarHeight) / 2);

    /// <summary>The data of a path around and across a bar.</summary>
    public static string Hatch(NightBar bar, double y)
    {
        // A long bar is as plain with fewer lines, and a large night has many.
        const double Closest = 5, MostLines = 8;
        var step = Math.Max(Closest, (bar.Width + BarHeight) / MostLines);
        var path = new System.Text.StringBuilder($"M{Svg.N(bar.X)} {Svg.N(y)}h{Svg.N(bar.Width)}v{Svg.N(BarHeight)}h{Svg.N(-bar.Width)}z");
        for (var foot = bar.X - BarHeight + step; foot < bar.X + bar.Width; foot += step)
        {
            // From its foot each line climbs to the right at 45 degrees, cut off at both ends of the bar.
            double from = Math.Max(bar.X, foot), to = Math.Min(bar.X + bar.Width, foot + BarHeight);
            path.Append(System.Globalization.CultureInfo.InvariantCulture, $"M{Svg.N(from)} {Svg.N(y + BarHeight - (from - foot))}L{Svg.N(to)} {Svg.N(y + BarHeight - (to - foot))}");
        }

        return path.ToString();
    }

    private NightRow Row(string controller, IReadOnlyList<ProgramRun> runs)
    {
        var overlaps = new List<NightBar>();
        for (var i = 0; i < runs.Count; i++)
        {
            overlaps.AddRange(runs.Skip(i + 1).Where(r => r.Begins < runs[i].Finishes)
                .Select(r => Bar(r.Begins, r.Finishes < runs[i].Finishes ? r.Finishes : runs[i].Finishes)));
        }

        return new NightRow(controller, [.. runs.Select(r => Bar(r.Begins, r.Finishes, r.Program.Program))], overlaps);
    }

    private NightBar Bar(DateTimeOffset from, DateTimeOffset to, string label = "")
    {
        var width = Math.Max(1, X(to) - X(from));
        return new NightBar(X(from), width, width >= (label.Length * Character) + 2 ? label : "");
    }

    private double X(DateTimeOffset at) =>
        Left + ((Right - Left) * Math.Clamp((at - _from) / (_to - _from), 0, 1));

    /// <summary>The full hour before or after, UTC; zones that are off by half an hour show half hours.</summary>
    private static DateTimeOffset Whole(DateTimeOffset at, bool up)
    {
        var hours = (double)at.UtcTicks / TimeSpan.TicksPerHour;
        return new DateTimeOffset((long)(up ? Math.Ceiling(hours) : Math.Floor(hours)) * TimeSpan.TicksPerHour, TimeSpan.Zero);
    }

    /// <summary>Between two labels: no more than seven have room.</summary>
    private static int Hours(TimeSpan length) => Math.Max(1, (int)Math.Ceiling(length.TotalHours / 7));
}
