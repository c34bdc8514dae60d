using DailyAdjust.Core.Plan;
using DailyAdjust.Files.Audits;
using DailyAdjust.Fuzz.Checks;
using DailyAdjust.Service.Sites;
using DailyAdjust.Tests.Files;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>Catch cups.</summary>
internal sealed class CupsTarget() : Target("cups", 8, [Samples.Bytes(GoodTexts.Cups)])
{
    public override void Try(byte[] bytes, Random random)
    {
        var text = DescriptionFiles.Decode(bytes);
        var reading = CatchCupsReader.Read("cups.csv", text, Samples.Site);
        Places.Check(reading.Problems, "cups.csv", text);
        Hold.Same(reading, CatchCupsReader.Read("cups.csv", text, Samples.Site));
        Hold.That(reading.Runs.Count == 0 == reading.Problems.Any(p => p.Severity == Files.Severity.Error), "cups are used in spite of an error, or not used without one");
        foreach (var (_, audit) in StationAudit.Of(reading.Runs).Select(a => (a.Station, a.Audit)))
        {
            Hold.Within(audit.RateMmPerHour, double.Epsilon, 500, "measured rate");
        }
    }
}
