using CsCheck;
using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Rounds;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files;

/// <summary>Whatever is damaged in a file: no reader throws, and what is not used has a reason.</summary>
public sealed class DamagedFilesTests
{
    private static readonly Site Site = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", ExampleSiteFiles.StationsCsv).Site!;

    private static readonly string Round = string.Join(',', RoundColumns.All) + "\n2026-06-10/1,C1,,P1,,set,90,60,yes,70,\n2026-06-10/1,C2,,P2,,skip,90,0,no,,\n2026-06-10/1,C1,,P2,,set,100,60,55,,\n";

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
        damage => Accounted(RoundSheetReader.Read("round.csv", Apply(Round, damage), Site)),
        iter: 1000);

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
