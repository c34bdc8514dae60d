using CsCheck;
using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files;
using DailyAdjust.Files.Audits;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Rounds;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files;

/// <summary>Whatever is damaged in a file: no reader throws, and what is not used has a reason.</summary>
[Trait("Promise", "10")]
public sealed class DamagedFilesTests
{
    private static readonly Site Site = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", ExampleSiteFiles.StationsCsv).Site!;

    // Some mean something to one of the formats, some nothing to any.
    private static readonly string[] Signs = ["", "\"", ",", ";", ":", "\n", "{", "}", "[", "]", "- ", "&a ", "*a", "!x ", "\t", "-", "%", "0", "1e999", "NaN", "é", "\0", "# ", "? ", "\uFFFF", "😀"];

    private static readonly Gen<(int At, int Cut, string Put)> Damage = Gen.Select(
        Gen.Int[0, 1_000_000],
        Gen.Int[0, 40],
        Gen.Int[0, Signs.Length - 1].Select(i => Signs[i]));

    [Fact]
    public void A_site_is_whole_or_not_used() => Damage.Array[1, 4].Sample(
        damage =>
        {
            var reading = SiteReader.Read("site.yaml", Apply(ExampleSiteFiles.SiteYaml, damage), "stations.csv", ExampleSiteFiles.StationsCsv);
            Assert.Equal(reading.Site is null, reading.Problems.Any(p => p.Severity == Severity.Error));
        },
        iter: 600);

    [Fact]
    public void Stations_are_whole_or_not_used() => Damage.Array[1, 4].Sample(
        damage =>
        {
            var reading = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", Apply(ExampleSiteFiles.StationsCsv, damage));
            Assert.Equal(reading.Site is null, reading.Problems.Any(p => p.Severity == Severity.Error));
        },
        iter: 600);

    [Fact]
    public void A_logbook_row_counts_or_has_a_reason() => Damage.Array[1, 4].Sample(
        damage => Accounted(LogbookReader.Read("logbook.csv", Apply(ExampleSiteFiles.LogbookCsv, damage), Site)),
        iter: 1000);

    [Fact]
    public void A_round_row_counts_or_has_a_reason() => Damage.Array[1, 4].Sample(
        damage => Accounted(RoundSheetReader.Read("round.csv", Apply(GoodTexts.Round, damage), Site)),
        iter: 1000);

    [Fact]
    public void Catch_cups_are_whole_or_not_used() => Damage.Array[1, 4].Sample(
        damage =>
        {
            var reading = CatchCupsReader.Read("cups.csv", Apply(GoodTexts.Cups, damage), Site);
            Assert.Equal(reading.Runs.Count == 0, reading.Problems.Count > 0);
            Assert.All(StationAudit.Of(reading.Runs), a => Assert.InRange(a.Audit.RateMmPerHour, double.Epsilon, 500));
        },
        iter: 1000);

    /// <summary>However a spreadsheet mangled it: what still reads takes measured rates, says nothing else anew, and takes them once.</summary>
    [Fact]
    public void Stations_that_still_read_take_what_was_measured() => Damage.Array[0, 4].Sample(
        damage =>
        {
            var text = Apply(ExampleSiteFiles.StationsCsv, damage);
            if (SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", text).Site is not { } site)
            {
                return;
            }

            Assert.Null(MeasuredStations.Fault(ExampleSiteFiles.SiteYaml, text, site));
        },
        iter: 600);

    private static void Accounted(LogbookReading reading)
    {
        if (reading.RowsRefused > 0)
        {
            Assert.Contains(reading.Problems, p => p.Severity == Severity.Error);
        }

        Assert.All(reading.Entries, e => Assert.True(e.Value is null || double.IsFinite(e.Value.Value)));
        Assert.Equal(reading.Entries.Count, reading.Entries.Select(e => e.Identity).Distinct().Count());
    }

    private static string Apply(string text, (int At, int Cut, string Put)[] damage)
    {
        foreach (var (where, cut, put) in damage)
        {
            var at = where % (text.Length + 1);
            text = text.Remove(at, Math.Min(cut, text.Length - at)).Insert(at, put);
        }

        return text;
    }
}
