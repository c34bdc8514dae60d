using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Rounds;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Rounds;

/// <summary>Rows of a returned round sheet for C2, whose one dial serves P1 and P2; C1 has a dial a program.</summary>
public sealed class DialAgreementTests
{
    private const string Other = "2026-06-10/1,C1,,P1,,set,90,60,yes,,\n";

    private static readonly string Header = string.Join(',', RoundColumns.All) + "\n";

    private static readonly Site Site = SiteReader.Read(
        "site.yaml", ExampleSiteFiles.SiteYaml.Replace("applies: program, min: 10 %", "applies: controller, min: 10 %", StringComparison.Ordinal), "stations.csv", ExampleSiteFiles.StationsCsv).Site!;

    [Theory]
    [InlineData("yes,,", "no,,", 9, "C2/P2 was not turned and C2/P1 has 60 % in line 3")]
    [InlineData("70,,", "80,,", 9, "C2/P2 has 80 % and C2/P1 has 70 % in line 3")]
    [InlineData(",90,", ",100,", 10, "C2/P2 has 100 % and C2/P1 has 90 % in line 3")]
    [InlineData("yes,90,", "yes,100,", 10, "C2/P2 has 100 % and C2/P1 has 90 % in line 3")]
    public void Two_numbers_on_one_dial_are_refused_and_other_boxes_count(string first, string second, int cell, string what)
    {
        var reading = Read(first, second);
        var problem = Assert.Single(reading.Problems);
        Assert.Equal((4, cell), (problem.Line, problem.Column));
        Assert.StartsWith(what + ", but one dial serves all of C2: none of its rows is used", problem.What, StringComparison.Ordinal);
        Assert.Equal((1, 2), (reading.RowsRead, reading.RowsRefused));
        Assert.Equal("C1/P1", Assert.Single(reading.Entries).Where.ToString());
    }

    [Theory]
    [InlineData("yes,,", ",,", 1)]
    [InlineData("yes,,", "60,,", 2)]
    [InlineData("yes,100,", ",,", 2)]
    [InlineData("yes,,", "off,,", 2)] // its starts were taken out
    [InlineData("no,,", "off,,", 2)]
    public void What_one_dial_can_show_is_read(string first, string second, int entries)
    {
        var reading = Read(first, second);
        Assert.Empty(reading.Problems);
        Assert.Equal((3, 0, entries + 1), (reading.RowsRead, reading.RowsRefused, reading.Entries.Count));
    }

    [Fact]
    public void Sheets_of_two_dates_may_differ_and_so_may_programs_with_a_dial_of_their_own()
    {
        var dates = RoundSheetReader.Read("round.csv", Header + "2026-06-10/1,C2,,P1,,set,100,60,yes,,\n2026-06-09/1,C2,,P2,,set,90,100,yes,,", Site);
        var own = RoundSheetReader.Read("round.csv", Header + "2026-06-10/1,C1,,P1,,set,100,60,yes,,\n2026-06-10/1,C1,,P2,,set,90,100,yes,,", Site);
        Assert.Equal((0, 2, 0, 2), (dates.Problems.Count, dates.Entries.Count, own.Problems.Count, own.Entries.Count));
    }

    private static LogbookReading Read(string first, string second) =>
        RoundSheetReader.Read("round.csv", $"{Header}{Other}2026-06-10/1,C2,,P1,,set,100,60,{first}\n2026-06-10/1,C2,,P2,,set,100,60,{second}", Site);
}
