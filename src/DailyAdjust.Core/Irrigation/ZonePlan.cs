using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>A program together with the box it is in.</summary>
internal sealed record PlannedProgram(ProgramKey Key, Controller Controller, WateringProgram Program);

/// <summary>One station with everything about it that does not change from day to day. Made once per site version.</summary>
internal sealed class ZonePlan
{
    private readonly Site _site;

    private ZonePlan(Site site, Station station, List<(PlannedProgram Program, double BaseMinutes)> programs)
    {
        _site = site;
        Station = station;
        Programs = programs;
        Net = new NetIrrigation(station);
        TotalAvailableMm = station.Area.TotalAvailableWaterMm;
        AllowableMm = station.Area.AllowableDepletionMm;
    }

    public Station Station { get; }

    /// <summary>In the controller's order.</summary>
    public List<(PlannedProgram Program, double BaseMinutes)> Programs { get; }

    public NetIrrigation Net { get; }

    public double TotalAvailableMm { get; }

    public double AllowableMm { get; }

    /// <param name="site">The site.</param>
    /// <param name="programs">All of them.</param>
    public static IReadOnlyList<ZonePlan> Of(Site site, IReadOnlyList<PlannedProgram> programs)
    {
        var ofBox = programs.ToLookup(p => p.Key.Controller, StringComparer.Ordinal);
        return [.. site.Stations.Select(station => new ZonePlan(site, station, [.. ofBox[station.Key.Controller]
            .Where(p => station.BaseMinutes.ContainsKey(p.Key.Program))
            .Select(p => (p, station.BaseMinutes[p.Key.Program]))]))];
    }

    public static IReadOnlyList<PlannedProgram> AllPrograms(Site site) =>
        [.. site.Controllers.SelectMany(c => c.Programs.Select(p => new PlannedProgram(new ProgramKey(c.Id, p.Id), c, p)))];

    /// <summary>Minutes at 100 % in a program; null = it is not in the program.</summary>
    public double? BaseMinutesIn(PlannedProgram program)
    {
        foreach (var (planned, baseMinutes) in Programs)
        {
            if (ReferenceEquals(planned.Program, program.Program))
            {
                return baseMinutes;
            }
        }

        return null;
    }

    /// <summary>What of reference ET its unstressed ground asks on a date: crop coefficient × exposure factor, 0 or more.</summary>
    public double K(DateOnly date) => K(CropCoefficient.On(Station.Area.Kc, date));

    /// <summary>The same where its area's crop coefficient of the date is known.</summary>
    public double K(double kc) => kc * Station.Exposure;

    /// <summary>Depletion on the site's first morning, mm.</summary>
    public double StartDepletionMm() => _site.StartSoil switch
    {
        StartSoil.Allowable => AllowableMm,
        StartSoil.Assumed => AllowableMm / 2,
        _ => 0,
    };

    /// <summary>Depletion at a water content by volume in percent, mm: (field capacity − content) × root depth, not yet kept within 0..TAW; null without a field capacity.</summary>
    public double? DepletionAt(double percent) =>
        Station.Area.Soil.FieldCapacityPercent is { } capacity ? (capacity - percent) / 100 * Station.Area.RootDepthM * 1000 : null;

    /// <summary>Ground of all stations at a place, m²; null where one of them is unknown.</summary>
    public double? GroundOf(Place where)
    {
        var sum = 0.0;
        foreach (var station in _site.Stations)
        {
            if (!where.Covers(station))
            {
                continue;
            }

            if (station.GroundM2 is not { } ground)
            {
                return null;
            }

            sum += ground;
        }

        return sum;
    }
}
