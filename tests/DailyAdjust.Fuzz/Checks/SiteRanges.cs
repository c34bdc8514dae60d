using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Fuzz.Checks;

/// <summary>A site that was read is one that can be: every number of it in its range, and every name that it refers to there.</summary>
internal static class SiteRanges
{
    private static readonly DateOnly[] Days = [.. Enumerable.Range(0, 400).Select(i => new DateOnly(2027, 12, 1).AddDays(i))];

    public static void Check(Site site)
    {
        Hold.Within(site.LatitudeDeg, -90, 90, "latitude");
        Hold.Within(site.LongitudeDeg, -180, 180, "longitude");
        Hold.Within(site.ElevationM, -500, 9000, "elevation");
        Hold.Within(site.PumpCapacityLPerMin, double.Epsilon, 1e7, "pump");
        Hold.Within(site.Report.Satisfy, 0, 1, "satisfy");
        Hold.Within(site.Report.WeatherMaxAge.TotalDays, 0, 366, "weather_max_age");
        Hold.That(site.Report.At.Count > 0, "no time of report");
        Hold.That(site.Areas.Count > 0 && site.Controllers.Count > 0 && site.Stations.Count > 0 && site.Weather.Gauges.Count > 0, "something is missing");
        foreach (var area in site.Areas)
        {
            Hold.Within(area.Soil.AvailableWaterMmPerM, double.Epsilon, 1000, "available_water");
            Hold.Within(area.Soil.IntakeRate?.MmPerHour, double.Epsilon, 1000, "intake_rate");
            Hold.Within(area.Soil.CurveNumber, 1, 100, "curve_number");
            Hold.Within(area.RootDepthM, double.Epsilon, 5, "root_depth");
            Hold.Within(area.AllowableDepletion, 0.000999, 1, "allowable_depletion");
            Hold.Within(area.LeaveEmpty, 0, 1, "leave_empty");
            Hold.Within(area.Efficiency, double.Epsilon, 1, "efficiency");
            Hold.Within(area.RunAt, 0, 1, "run_at");
            Hold.Within(area.Replace, 0, 2, "replace");
            Hold.That(area.Kc.Count == 12, "kc has not twelve months");
            area.Kc.ToList().ForEach(kc => Hold.Within(kc, 0, 2, "kc"));
        }

        site.Weather.Normals?.EtoMmPerDay.ToList().ForEach(eto => Hold.Within(eto, 0, 100, "normal ETo"));
        site.Controllers.ToList().ForEach(Controller);
        site.Stations.ToList().ForEach(station => Station(site, station));
    }

    private static void Controller(Controller controller)
    {
        Hold.Within(controller.PercentMin, 0, controller.PercentMax, "percent min");
        Hold.Within(controller.PercentMax, double.Epsilon, Setting.LargestPercent, "percent max");
        Hold.Within(controller.PercentStep, double.Epsilon, controller.PercentMax - controller.PercentMin, "percent step");
        Hold.Within(controller.MinutesStep, double.Epsilon, 60, "minutes step");
        Hold.Within(controller.LeastRunMinutes, 0, 1440, "min_run");
        Hold.Within(controller.PauseDays, 0, 366, "pause");
        foreach (var program in controller.Programs)
        {
            Hold.That(program.Starts.Distinct().Count() == program.Starts.Count, "a start stands there twice");
            _ = Days.Count(program.Days.Includes) + Days.Count(program.Visit.Includes);
        }
    }

    private static void Station(Site site, Station station)
    {
        Hold.Within(station.Rate.MmPerHour, double.Epsilon, 500, "precipitation rate");
        Hold.Within(station.Exposure, 0.1, 3, "exposure");
        Hold.Within(station.DistributionUniformity, double.Epsilon, 1, "distribution uniformity");
        Hold.Within(station.FlowLPerMin, 0, 1e6, "flow");
        Hold.Within(station.GroundM2, double.Epsilon, 1e7, "area watered");
        Hold.That(site.Areas.Contains(station.Area), "an area that is not there");
        Hold.That(site.Weather.Gauges.Any(g => string.Equals(g.Id, station.Gauge, StringComparison.Ordinal)), "a gauge that is not there");
        var programs = site.ControllerOf(station.Key.Controller)?.Programs;
        Hold.That(programs is not null && station.BaseMinutes.Keys.All(id => programs.Any(p => string.Equals(p.Id, id, StringComparison.Ordinal))), "a program that is not there");
        station.BaseMinutes.Values.ToList().ForEach(minutes => Hold.Within(minutes, 0, 1440, "base minutes"));
    }
}
