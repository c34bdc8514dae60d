using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Logbook;

/// <summary>The example logbook loads as it stands and means what it says.</summary>
public sealed class ExampleLogbookTests
{
    private static readonly Site Site = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", ExampleSiteFiles.StationsCsv).Site!;

    private static readonly LogbookReading Reading = LogbookReader.Read("logbook.csv", ExampleSiteFiles.LogbookCsv, Site);

    [Fact]
    public void Every_row_counts()
    {
        Assert.Empty(Reading.Problems);
        Assert.Equal((12, 12, 0), (Reading.Entries.Count, Reading.RowsRead, Reading.RowsRefused));
        Assert.True(LogbookReader.Recognises(ExampleSiteFiles.LogbookCsv));
        Assert.False(LogbookReader.Recognises(File.ReadAllText(Path.Combine(ExampleSiteFiles.Folder, "yard-hourly.csv"))));
    }

    [Fact]
    public void Values_stand_in_their_units()
    {
        Assert.Equal(
            [
                "setting C1/P2 90 Percent", "setting C1/P1 90 Percent", "off C2/P1  None", "setting C2/P1 100 Percent", "setting C2/P2 110 Percent",
                "off C2/P1  None", "ran C1/P2 0 Percent", "ran C1/P2 50 Percent", "run C1/2 6 Minutes", "hose C1/3 2.54 Mm", "probe C1/1 14 Percent",
                "setting C2/P1 100 Percent",
            ],
            Reading.Entries.Select(e => FormattableString.Invariant($"{e.Kind.ToString().ToLowerInvariant()} {e.Where} {e.Value:0.###} {e.Unit}")),
            StringComparer.Ordinal);
        Assert.Equal(new LogTime(new(2026, 6, 5), new(10, 30)), Reading.Entries[0].Time);
        Assert.Equal(PlaceKind.Program, Reading.Entries[0].Where.Kind);
        Assert.Equal(PlaceKind.Station, Reading.Entries[8].Where.Kind);
        Assert.Equal("leak at fairway 5", Reading.Entries[2].Note);
    }
}
