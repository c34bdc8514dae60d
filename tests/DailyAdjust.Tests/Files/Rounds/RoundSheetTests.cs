using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Rounds;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Rounds;

/// <summary>A round sheet that comes back filled in becomes what people put on the dials.</summary>
public sealed class RoundSheetTests
{
    private static readonly string Header = string.Join(',', RoundColumns.All) + "\n";

    private static readonly Site Site = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", ExampleSiteFiles.StationsCsv).Site!;

    [Theory]
    // sheet, controller, place, program, name, advice, old, new, done, found, note
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,yes,,", "13:00 C1/P1 60")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,X,,", "13:00 C1/P1 60")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,sí,,", "13:00 C1/P1 60")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,SÍ,,", "13:00 C1/P1 60")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,Si\u0301,,", "13:00 C1/P1 60")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,Si,,", "13:00 C1/P1 60")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,s,,", "13:00 C1/P1 60")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,No,,", "13:00 C1/P1 not turned")]
    [InlineData("2026-06-10/1,C1,,P1,,skip,90,0,yes,,", "13:00 C1/P1 0")]
    [InlineData("2026-06-10/1,C1,,P1,,skip,90,off,yes,,", "13:00 C1/P1 0")]
    [InlineData("2026-06-10/1,C1,,P1,,resume,0,65,yes,,", "13:00 C1/P1 65")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,55,,", "13:00 C1/P1 55")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,55 %,,", "13:00 C1/P1 55")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,off,,", "13:00 C1/P1 0")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,no,,", "13:00 C1/P1 not turned")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90 or 120,60,no,,", "13:00 C1/P1 not turned")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,no,70,", "05:00 C1/P1 70; 13:00 C1/P1 70")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,yes,70,", "05:00 C1/P1 70; 13:00 C1/P1 60")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,,off,", "05:00 C1/P1 0")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,,,", "")]
    public void An_answer_becomes_what_is_on_the_dial(string row, string expected)
    {
        var reading = RoundSheetReader.Read("round.csv", Header + row, Site);
        Assert.Empty(reading.Problems);
        Assert.Equal((1, 0), (reading.RowsRead, reading.RowsRefused));
        Assert.Equal(expected, string.Join("; ", reading.Entries.Select(e => FormattableString.Invariant($"{e.Time.Clock:HH:mm} {e.Where} {(e.Value is { } percent ? percent : e.Text)}"))));
        Assert.All(reading.Entries, e =>
        {
            Assert.Equal((LogKind.Setting, new DateOnly(2026, 6, 10)), (e.Kind, e.Time.Date));
            Assert.Equal((new DateOnly(2026, 6, 10), 1, LogUnit.Percent), (e.Sheet, e.Issue, e.Value is null ? LogUnit.Percent : e.Unit));
        });
    }

    [Fact]
    public void An_earlier_rounds_row_answers_for_its_own_date()
    {
        var reading = RoundSheetReader.Read("round.csv", Header + "2026-06-10/1,C1,,P1,,set,90,60,yes,,\n2026-06-08,C1,,P1,,set,100,90,yes,,", Site);
        Assert.Equal([new DateOnly(2026, 6, 10), new DateOnly(2026, 6, 8)], reading.Entries.Select(e => e.Time.Date));
        Assert.Null(reading.Entries[1].Issue);
    }

    [Fact]
    public void A_corrected_sheet_takes_the_earlier_answers_place()
    {
        var first = RoundSheetReader.Read("round.csv", Header + "2026-06-10/1,C1,,P1,,skip,90,0,yes,,", Site).Entries;
        var second = RoundSheetReader.Read("round.csv", Header + "2026-06-10/1,C1,,P1,,skip,90,0,85,,", Site).Entries;
        Assert.Equal(Assert.Single(first).Identity, Assert.Single(second).Identity);
    }

    [Theory]
    [InlineData("2026-06-10/1,C2,,P2,,set,100,60,55,,", 9, "\"55\" is not on the dial of C2", "it shows 10 to 150 % in steps of 10")]
    [InlineData("2026-06-10/1,C2,,P2,,set,100,60,160,,", 9, "\"160\" is not on the dial of C2", "it shows 10 to 150 % in steps of 10")]
    [InlineData("2026-06-10/1,C2,,P2,,set,100,60,yes,7,", 10, "\"7\" is not on the dial of C2", "10 to 150 %")]
    [InlineData("2026-06-10/1,C2,,P2,,set,100,60,maybe,,", 9, "\"maybe\" is not an answer", "write yes, no, or the number")]
    [InlineData("2026-06-10/1,C2,,P2,,set,100,60,80 m³/m³,,", 9, "\"80 m³/m³\" is not an answer", "write yes, no, or the number")]
    [InlineData("2026-06-10/1,C2,,P2,,set,100,60,\"62,5\",,", 9, "\"62,5\" is not an answer", "write a decimal point: 62.5")]
    [InlineData("2026-06-10/1,C2,,P2,,set,100,60,-60,,", 9, "\"-60\" is not an answer", "yes, no")]
    [InlineData("2026-06-10/1,C2,,P9,,set,100,60,yes,,", 4, "there is no program \"C2/P9\"", "did you mean")]
    [InlineData("2026-06-10/1,C1,,3,,set,100,60,yes,,", 4, "there is no program \"C1/3\"", "did you mean")]
    [InlineData("6/10/2026,C2,,P2,,set,100,60,yes,,", 1, "is not a sheet's date", "2026-06-10/1")]
    [InlineData("2026-06-10/1,C2,,P2,,set,100,,yes,,", 8, "new is empty", "put back")]
    public void A_bad_row_is_refused_with_its_reason_and_the_others_count(string row, int cell, string what, string hint)
    {
        var reading = RoundSheetReader.Read("round.csv", Header + "2026-06-10/1,C1,,P1,,set,90,60,yes,,\n" + row, Site);
        var problem = Assert.Single(reading.Problems);
        Assert.Equal(("round.csv", 3, cell), (problem.File, problem.Line, problem.Column));
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
        Assert.Contains(hint, problem.Hint, StringComparison.Ordinal);
        Assert.Equal((1, 1), (reading.RowsRead, reading.RowsRefused));
        Assert.Equal(60, Assert.Single(reading.Entries).Value);
    }

    [Fact]
    public void A_row_answered_yes_and_no_is_not_answered()
    {
        var reading = RoundSheetReader.Read("round.csv", Header + "2026-06-10/1,C1,,P1,,set,90,60,yes,,\n2026-06-10/1,C2,,P2,,set,100,60,yes,,\n2026-06-10/1,C1,,P1,,set,90,60,no,,", Site);
        var problem = Assert.Single(reading.Problems);
        Assert.Equal(("round.csv:4:4: C1/P1 is answered here and in line 2, and not the same: none of its rows is used. keep the row that is right."), problem.ToString());
        Assert.Equal((1, 2), (reading.RowsRead, reading.RowsRefused));
        Assert.Equal("C2/P2", Assert.Single(reading.Entries).Where.ToString());
    }

    [Fact]
    public void A_row_that_is_there_twice_counts_once()
    {
        var reading = RoundSheetReader.Read("round.csv", Header + "2026-06-10/1,C1,,P1,,set,90,60,yes,,\n2026-06-10/1,C1,,P1,,set,90,60,60,,again", Site);
        Assert.Empty(reading.Problems);
        Assert.Equal((2, 0), (reading.RowsRead, reading.RowsRefused));
        Assert.Equal(60, Assert.Single(reading.Entries).Value);
    }

    [Fact]
    public void Only_a_sheet_that_was_issued_is_answered_and_only_an_answered_row_asks_for_one()
    {
        var date = new DateOnly(2026, 6, 10);
        var issued = new IssuedSheet(date, 1, Site.Clock.ToInstant(date, Site.Report.At[0]), []);
        var sheets = new AnswerableSheets(() => [issued], () => throw new InvalidOperationException("It is not long past."));
        var reading = RoundSheetReader.Read("round.csv", Header + "2026-06-10/1,C1,,P1,,set,90,60,yes,,\n2026-06-10/2,C1,,P1,,set,90,60,yes,,\n2025-06-10,C1,,P1,,set,90,60,,,\n2025-06-10,C1,,P1,,set,90,60,yes,,", Site, sheets);
        Assert.Equal(["the sheet of 2026-06-10 has no issue 2, so its round says nothing", "no sheet of 2025-06-10 was issued, so its round says nothing"], reading.Problems.Select(p => p.What));
        Assert.Equal((2, 2), (reading.RowsRead, reading.RowsRefused));
        Assert.Equal(1, Assert.Single(reading.Entries).Issue);
    }

    [Theory]
    [InlineData("2026-06-10/1", "set,90,50,yes,,", "sheet 2026-06-10/1 said 60 % and new is 50 % here")]
    [InlineData("2026-06-10/1", "set,90,50,no,,", "sheet 2026-06-10/1 said 60 % and new is 50 % here")]
    [InlineData("2026-06-10/1", "set,90,0,yes,,", "sheet 2026-06-10/1 said 60 % and new is off here")]
    [InlineData("2026-06-10/2", "set,90,60,yes,,", "sheet 2026-06-10/2 said off and new is 60 % here")]
    [InlineData("2026-06-10", "set,90,50,yes,,", "sheet 2026-06-10 said 60 % or off and new is 50 % here")]
    public void A_number_that_the_sheet_did_not_say_is_refused_and_the_others_count(string sheet, string row, string why)
    {
        var reading = RoundSheetReader.Read("round.csv", $"{Header}{sheet},C1,,P1,,{row}\n2026-06-10/1,C2,,P2,,set,100,90,yes,,", Site, Issued());
        var problem = Assert.Single(reading.Problems);
        Assert.Equal((2, 8, why), (problem.Line, problem.Column, problem.What));
        Assert.Equal("put back what the sheet was sent with; a number that was set otherwise belongs into done, one that the dial showed into found", problem.Hint);
        Assert.Equal((1, 1, "C2/P2"), (reading.RowsRead, reading.RowsRefused, Assert.Single(reading.Entries).Where.ToString()));
    }

    [Theory]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,yes,,")]
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60.00 %,yes,,")]
    [InlineData("2026-06-10/1,C1,,P1,,set,33,60,yes,,")] // what it takes to be there decides nothing
    [InlineData("2026-06-10/1,C1,,P1,,set,90,60,55,70,")]
    [InlineData("2026-06-10/2,C1,,P1,,skip,90,off,yes,,")]
    [InlineData("2026-06-10,C1,,P1,,skip,90,0,yes,,")]
    [InlineData("2026-06-10,C1,,P1,,set,90,60,yes,,")]
    [InlineData("2026-06-10/1,C1,,P2,,as-set,40,40,yes,,")] // the sheet had no number
    public void A_number_that_the_sheet_said_is_read(string row) =>
        Assert.Empty(RoundSheetReader.Read("round.csv", Header + row, Site, Issued()).Problems);

    [Fact]
    public void A_round_sheet_is_told_from_a_logbook()
    {
        Assert.True(RoundSheetReader.Recognises(Header));
        Assert.True(RoundSheetReader.Recognises("\uFEFF\"sheet\";\"controller\";\"program\";\"done\"\r\n"));
        Assert.False(RoundSheetReader.Recognises(string.Join(',', LogbookColumns.All)));
        Assert.False(LogbookReader.Recognises(Header));
    }

    /// <summary>The first issue says C1/P1 60 %, C2/P2 90 % and nothing certain of C1/P2, the second that C1/P1 is to be switched off.</summary>
    private static AnswerableSheets Issued()
    {
        var date = new DateOnly(2026, 6, 10);
        IssuedSheet Of(int issue, params IssuedLine[] lines) => new(date, issue, Site.Clock.ToInstant(date, Site.Report.At[0]), lines);
        IssuedSheet[] all =
        [
            Of(1, new(new("C1", "P1"), AdviceKind.Set, 60, Asks: true), new(new("C2", "P2"), AdviceKind.Set, 90, Asks: true), new(new("C1", "P2"), AdviceKind.AsSet, null, Asks: false)),
            Of(2, new IssuedLine(new("C1", "P1"), AdviceKind.Skip, null, Asks: true)),
        ];
        return new(() => all, () => throw new InvalidOperationException("It is not long past."));
    }
}
