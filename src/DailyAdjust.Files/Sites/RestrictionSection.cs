using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>restrictions: local rules, each with what it does not allow.</summary>
internal static class RestrictionSection
{
    public static IReadOnlyList<Restriction> ReadAll(Section root, IReadOnlyList<string> areas) =>
        [.. root.Maps("restrictions").Select(s => Read(s, areas))];

    private static Restriction Read(Section section, IReadOnlyList<string> areas)
    {
        var restriction = new Restriction
        {
            Name = section.NeedText("name", "Stage 2"),
            From = section.Date("from"),
            Until = section.Date("until"),
            Areas = section.Find("areas") is { } node ? AreaNames.Read(node, section.NameOf("areas"), section.Problems, areas) : [],
            DaysNotAllowed = section.Find("days") is { } days ? DayPatterns.WaterDays(days, section.NameOf("days"), section) : null,
            HoursNotAllowed = WindowSection.Read(section.Map("hours"), "from", "until"),
            MostPercent = section.Quantity("percent", UnitKind.Percent, new(0, Setting.LargestPercent)),
        };
        section.Done();
        if (restriction.Until < restriction.From)
        {
            var at = section.KeyOf("until");
            section.Problems.Error(at.Line, at.Column, $"{section.Name} ends before it begins", "from and until are dates, both included");
        }

        if (!section.Has("days") && !section.Has("hours") && !section.Has("percent"))
        {
            section.Problems.Error(section.At.Line, section.At.Column, $"{section.Name} restricts nothing", "give it days or hours that are not allowed, or the highest percent");
        }

        return restriction;
    }
}
