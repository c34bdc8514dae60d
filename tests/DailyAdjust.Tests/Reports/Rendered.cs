using System.Text;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports;

namespace DailyAdjust.Tests.Reports;

/// <summary>Reports of the invented mornings, as texts.</summary>
internal static class Rendered
{
    public static string File(string name, MorningSheet? sheet = null) =>
        Encoding.UTF8.GetString(MorningReport.Render(sheet ?? InventedMorning.Build(), InventedMorning.Issue)[name].Span);

    public static IReadOnlyList<string> Lines(string name, MorningSheet? sheet = null) => File(name, sheet).TrimEnd('\n').Split('\n');

    /// <summary>US units, metric, no advice, and a forecast.</summary>
    public static IReadOnlyList<MorningSheet> EveryMorning =>
        [InventedMorning.Build(), InventedMorning.Build(UnitSystem.Metric), InventedMorning.WithoutAdvice(), ForecastPartTests.With(ForecastPartTests.Forecast()), InventedExceptions.Build()];
}
