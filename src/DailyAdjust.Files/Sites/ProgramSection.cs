using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>One program of a controller: when it starts, on which days, and when somebody comes.</summary>
internal static class ProgramSection
{
    public static WateringProgram Read(Section section)
    {
        var program = new WateringProgram
        {
            Id = section.NeedId("P1"),
            Name = section.Text("name", ""),
            Starts = section.Need("starts", "[\"21:30\"]") is { } starts ? section.Times(starts, "starts") : [],
            Days = section.Need("days", "every day") is { } days ? DayPatterns.WaterDays(days, section.NameOf("days"), section) : WaterDays.Every,
            Visit = section.Find("visit") is { } visit ? DayPatterns.VisitDays(visit, section.NameOf("visit"), section) : VisitDays.Daily,
        };
        section.Done();
        return program;
    }
}
