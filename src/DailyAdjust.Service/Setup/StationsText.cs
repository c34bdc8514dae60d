using System.Globalization;
using System.Text;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Setup;

/// <summary>Writes the stations.csv of a new site: minutes as answered, the rest to be filled in.</summary>
internal static class StationsText
{
    public static string Of(SiteAnswers answers)
    {
        var us = answers.Units == UnitSystem.Us;
        var programs = answers.Controllers.SelectMany(c => c.Programs).Select(p => p.Id).Distinct(StringComparer.Ordinal).OrderBy(id => id.Length).ThenBy(id => id, StringComparer.Ordinal).ToList();
        var text = new StringBuilder("controller,station,name,area,");
        foreach (var program in programs)
        {
            text.Append(CultureInfo.InvariantCulture, $"minutes {program},");
        }

        text.Append(us
            ? "precipitation rate (in/h),rate known,flow (gpm),area watered (ft²),exposure,gauge,note\n"
            : "precipitation rate (mm/h),rate known,flow (L/min),area watered (m²),exposure,gauge,note\n");
        foreach (var controller in answers.Controllers)
        {
            foreach (var station in controller.Programs.SelectMany(p => p.Stations).GroupBy(s => s.Station).OrderBy(s => s.Key))
            {
                Row(text, controller, station.Key, station.First().Area, programs, us);
            }
        }

        return text.ToString();
    }

    private static void Row(StringBuilder text, ControllerAnswers controller, int station, string area, List<string> programs, bool us)
    {
        var preset = TurfPreset.Of(area);
        text.Append(CultureInfo.InvariantCulture, $"{controller.Id},{station},,{area},");
        foreach (var program in programs)
        {
            var minutes = controller.Programs.FirstOrDefault(p => string.Equals(p.Id, program, StringComparison.Ordinal))
                ?.Stations.LastOrDefault(s => s.Station == station)?.Minutes;
            text.Append(CultureInfo.InvariantCulture, $"{minutes},");
        }

        var rate = us ? preset.RateInPerH : preset.RateMmPerH;
        text.Append(CultureInfo.InvariantCulture, $"{rate},assumed,,,1.0,,\n");
    }
}
