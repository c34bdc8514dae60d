using System.Globalization;
using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Service.Printing;

/// <summary>What was estimated on a day of weather, what was set aside, what is doubtful and what the sources said, all of it.</summary>
internal static class SensorText
{
    /// <summary>Empty where there is nothing to say.</summary>
    public static string Of(WeatherDay day, SiteClock clock)
    {
        var text = new StringBuilder();
        Part(text, "Estimated:", day.Estimated);
        Part(text, "Set aside:", day.SetAside.Select(s =>
        {
            var count = s.Values == 1 ? "" : FormattableString.Invariant($", {s.Values} values");
            var check = s.Check.Length == 0 ? "" : $" [{s.Check}]";
            return string.Create(CultureInfo.InvariantCulture, $"{clock.ToLocal(s.Begin):HH:mm} station {s.Station}: {s.What}{count}: {s.Why}{check}");
        }));
        Part(text, "Doubtful, used:", day.Doubts.Select(d => $"station {d.Station}: {d.Words} [{d.Check}]"));
        Part(text, "Said by the source:", day.Marks);
        return text.ToString();
    }

    private static void Part(StringBuilder text, string title, IEnumerable<string> lines)
    {
        var shown = lines.ToList();
        if (shown.Count > 0)
        {
            text.Append('\n').Append(title).Append('\n');
            shown.ForEach(line => text.Append("  ").Append(line).Append('\n'));
        }
    }
}
