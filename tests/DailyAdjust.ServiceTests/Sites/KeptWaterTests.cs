using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Ledger;
using DailyAdjust.Reports;
using DailyAdjust.Service.Sites;
using DailyAdjust.ServiceTests.Promises.Records;
using DailyAdjust.Tests.Courses;
using Xunit;

namespace DailyAdjust.ServiceTests.Sites;

/// <summary>A sheet that begins with what the ledger keeps of earlier days is the one that is reckoned from the site's start.</summary>
[Trait("Promise", "7")]
public sealed class KeptWaterTests : IDisposable
{
    private static readonly DateOnly Date = new(2026, 7, 16);
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Kept_depletions_and_kept_water_change_no_byte_of_a_sheet()
    {
        var folder = _home.EmptySite("course");
        var size = new CourseSize { Seed = 5, Stations = 24, Controllers = 2, Programs = 3, From = new(2025, 9, 20), Through = Date.AddDays(-1) };
        CourseFiles.Put(size, folder.Path);
        Assert.Equal(0, RunningProgram.Run("morning", "--home", _home.Path, "--date", "2026-07-15", "--no-mail").ExitCode);

        using var site = OpenSite.Open(folder, LedgerMode.Write);
        var arrived = site.Ledger.Watermark;
        var asOf = ReportTime.Of(site.Newest, Date).Instant;
        var kept = MorningKnowledge.Of(site, Date, asOf, issue: 1);

        // Whoever asks for less than has arrived gets everything reckoned anew.
        new FileIntake(site, asOf.AddDays(1)).Add([new LogEntry { Time = new LogTime(Date.AddDays(1), null), Kind = LogKind.Note, Where = new(PlaceKind.Site, "", ""), Note = "later" }]);
        var anew = MorningKnowledge.Of(site, Date, asOf, issue: 1, watermark: arrived);

        Assert.Equal((new DateOnly(2026, 5, 1), new DateOnly(2026, 1, 1), 120), (kept.StartState!.Date, kept.WaterBefore[0].Date, kept.WaterBefore.Count));
        Assert.True(kept.WaterBefore.Sum(d => d.EstimatedL) > 0);
        Assert.Null(anew.StartState);
        Assert.Empty(anew.WaterBefore);
        Assert.Equal(Files(anew), Files(kept));
    }

    [Fact]
    public void Where_a_day_of_them_lacks_the_year_is_reckoned()
    {
        var folder = _home.EmptySite("course");
        CourseFiles.Put(new CourseSize { Seed = 6, Stations = 8, Controllers = 1, Programs = 2, From = new(2025, 12, 20), Through = Date.AddDays(-1) }, folder.Path);
        Assert.Equal(0, RunningProgram.Run("morning", "--home", _home.Path, "--date", "2026-07-15", "--no-mail").ExitCode);
        RawLedger.Scalar(folder.LedgerFile, "DELETE FROM day_litres WHERE day = '2026-02-03'");

        using var site = OpenSite.Open(folder, LedgerMode.Read);
        var knows = MorningKnowledge.Of(site, Date, ReportTime.Of(site.Newest, Date).Instant, issue: 1);

        Assert.Empty(knows.WaterBefore);
        Assert.Equal(new DateOnly(2026, 1, 1), knows.StartState!.Date);
    }

    private static string[] Files(MorningInputs inputs) =>
        [.. MorningReport.Render(MorningCalculation.Run(inputs with { Corrections = null, WaterYearBefore = [] }), new SheetIssue { SiteId = "course", Number = 1, Notices = [] })
            .All.Select(f => f.Name + "\n" + System.Text.Encoding.UTF8.GetString(f.Bytes.Span))];
}
