using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Irrigation;

/// <summary>One start of one program in a site's day, with what every station of it shares.</summary>
internal readonly record struct DayStart(PlannedProgram Program, ProgramStart Start, double DrawnBy, Setting Setting);

/// <summary>
/// What all zones share on one site-local day: the draw curve, the program starts with their settings, whether the
/// system holds water. Built once per day, not per zone.
/// </summary>
internal sealed class DayOfSite
{
    private readonly RanHistory _ran;
    private readonly HandWater _hand;
    private readonly Dictionary<string, List<DayStart>> _starts = new(StringComparer.Ordinal);

    public DayOfSite(Site site, DateOnly date, IReadOnlyList<PlannedProgram> programs, SettingHistory settings, RanHistory ran, HandWater hand, SeasonHistory season)
    {
        Site = site;
        Date = date;
        _ran = ran;
        _hand = hand;
        End = site.Clock.DayEnd(date);
        var sun = Sun.Day(site, date);
        Curve = new DrawCurve(sun.Sunrise, sun.Sunset);
        foreach (var program in programs)
        {
            foreach (var start in ProgramStarts.InDay(site, program.Controller, program.Program, date))
            {
                if (season.IsDrained(program.Key.Controller, start.At))
                {
                    continue;
                }

                var list = _starts.TryGetValue(program.Key.Controller, out var known) ? known : _starts[program.Key.Controller] = [];
                list.Add(new DayStart(program, start, Curve.ShareBy(start.At), settings.At(program.Key, start.At).Setting));
            }
        }
    }

    public Site Site { get; }

    public DateOnly Date { get; }

    public DateTimeOffset End { get; }

    public DrawCurve Curve { get; }

    /// <summary>The day's starts at one controller, by program in the controller's order.</summary>
    public IReadOnlyList<DayStart> StartsAt(string controller) =>
        _starts.TryGetValue(controller, out var list) ? list : [];

    public double ShareBy(DateTimeOffset at) => at >= End ? 1 : Curve.ShareBy(at);

    /// <summary>Adds the rain of a gauge to a zone's events.</summary>
    public void AddRain(List<WaterEvent> events, GaugeDay rain, double soilShare)
    {
        if (soilShare <= 0)
        {
            return;
        }

        foreach (var fall in rain.Falls)
        {
            events.Add(new WaterEvent(fall.At, WaterKind.Rain, ShareBy(fall.At), fall.Mm * soilShare));
        }
    }

    /// <summary>Minutes that a station really ran in a start.</summary>
    public double MinutesRun(DayStart start, ZonePlan zone, double baseMinutes)
    {
        if (start.Setting.IsOff)
        {
            return 0;
        }

        var due = RunMinutes.At(start.Program.Controller, baseMinutes, start.Setting.Percent);
        return due * _ran.Share(start.Program.Key, zone.Station, start.Start.Date, start.Start.At);
    }

    public double AddHand(List<WaterEvent> events, ZonePlan zone) => _hand.AddEvents(events, zone, Date, Curve, End);
}
