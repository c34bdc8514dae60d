using DailyAdjust.Core.Logbook;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Json;
using DailyAdjust.Ledger.Records;
using Xunit;
using static DailyAdjust.Tests.Ledger.Samples;

namespace DailyAdjust.Tests.Ledger;

public sealed class MorningsTests : IDisposable
{
    private static readonly DateTimeOffset _five = new(2026, 6, 8, 5, 0, 0, TimeSpan.FromHours(2));

    private readonly LedgerFolder _home = new();
    private readonly SiteLedger _ledger;

    public MorningsTests() => _ledger = _home.Write();

    [Fact]
    public void A_morning_goes_from_due_to_computed_to_written()
    {
        _ledger.Logbook.Add([FullEntry], LedgerFolder.Noon);
        var due = Begin();
        Assert.Equal(new MorningRecord(Day, 1, _five, 1, "1", "2026a", MorningStep.Due, null), due);
        Assert.Empty(_ledger.Sheets.Issued());
        Assert.Equal([due], _ledger.Mornings.Unfinished());

        var computed = _ledger.Mornings.RecordComputed(Day, 1, Lines, ReportFiles);
        Assert.Equal(MorningStep.Computed, computed.Step);
        Assert.Equal(due, computed with { Step = MorningStep.Due, Sha = null });
        Assert.Equal([computed], _ledger.Mornings.Unfinished());

        _ledger.Mornings.RecordWritten(Day, 1);
        Assert.Empty(_ledger.Mornings.Unfinished());
        Assert.Equal(computed with { Step = MorningStep.Written }, _ledger.Mornings.Last());
    }

    [Fact]
    public void What_was_issued_can_be_had_back()
    {
        Issue();
        var sheet = Assert.Single(_ledger.Sheets.Issued());
        Assert.Equal((Day, 1, _five), (sheet.Date, sheet.Issue, sheet.AsOf));
        Assert.Equal(TimeSpan.Zero, sheet.AsOf.Offset);
        Assert.Equal(Lines, sheet.Lines);
        var files = _ledger.Sheets.ReportFiles(Day, 1);
        Assert.Equal(["advice.csv", "empty.csv", "report.txt"], files.Select(f => f.Key), StringComparer.Ordinal);
        Assert.All(files, f => Assert.Equal(ReportFiles[f.Key], f.Value));
        Assert.Empty(_ledger.Sheets.ReportFiles(Day, 2));
    }

    [Fact]
    public void The_stations_set_aside_come_back_with_the_sheet_and_none_is_not_unknown()
    {
        IReadOnlyList<IssuedLine> lines =
        [
            Lines[0] with { SetAside = [new IssuedAside("7", 141.5, 100.0 / 3), new IssuedAside("12a", 1000, 0.0001)] },
            Lines[1] with { SetAside = [] },
            Lines[2],
        ];
        Assert.NotEqual(Hash(Lines, ReportFiles), Hash(lines, ReportFiles), StringComparer.Ordinal);

        var back = _ledger.Sheets.Issued().Single(s => s.Issue == 2).Lines;
        Assert.Equal(lines[0].SetAside, back[0].SetAside);
        Assert.NotNull(back[1].SetAside);
        Assert.Empty(back[1].SetAside!);
        Assert.Null(back[2].SetAside);
        Assert.Equal(Lines, back.Select(l => l with { SetAside = null }));
        Assert.All(_ledger.Sheets.Issued().Single(s => s.Issue == 1).Lines, l => Assert.Null(l.SetAside));
    }

    [Fact]
    public void A_line_stands_as_text_that_is_read_for_ever()
    {
        IReadOnlyList<IssuedLine> lines =
        [
            new(new("C1", "P2"), AdviceKind.Set, 85, Asks: true) { SetAside = [new IssuedAside("7", 141.5, 100)] },
            new(new("C1", "P3"), AdviceKind.Skip, null, Asks: true, PauseDays: 2),
        ];
        const string text = """[{"controller":"C1","program":"P2","advice":"set","asks":true,"percent":85,"setAside":[{"station":"7","percent":141.5,"medianPercent":100}]},{"controller":"C1","program":"P3","advice":"skip","asks":true,"pauseDays":2}]""";
        Assert.Equal(text, IssuedLineJson.Write(lines));
        Assert.Equivalent(lines, IssuedLineJson.Read(text), strict: true);
    }

    [Fact]
    public void The_next_issue_of_a_date_gets_the_next_number_and_the_first_stays()
    {
        Issue();
        _ledger.Logbook.Add([FullEntry], LedgerFolder.Noon);
        var second = Begin();
        Assert.Equal((2, 1), (second.Issue, second.Watermark));
        _ledger.Mornings.RecordComputed(Day, 2, [Lines[0] with { Percent = 60 }], ReportFiles);
        Assert.Equal([75d, 60d], _ledger.Sheets.Issued().Select(s => s.Lines[0].Percent!.Value));
        Assert.Equal(0, _ledger.Mornings.Get(Day, 1)!.Watermark);
    }

    [Fact]
    public void Steps_cannot_be_skipped_repeated_or_doubled()
    {
        Assert.Throws<InvalidOperationException>(() => _ledger.Mornings.RecordComputed(Day, 1, Lines, ReportFiles));
        Begin();
        Assert.Throws<InvalidOperationException>(Begin);
        Assert.Throws<InvalidOperationException>(() => _ledger.Mornings.RecordWritten(Day, 1));
        _ledger.Mornings.RecordComputed(Day, 1, Lines, ReportFiles);
        Assert.Throws<InvalidOperationException>(() => _ledger.Mornings.RecordComputed(Day, 1, [], new Dictionary<string, byte[]>(StringComparer.Ordinal)));
        _ledger.Mornings.RecordWritten(Day, 1);
        Assert.Throws<InvalidOperationException>(() => _ledger.Mornings.RecordWritten(Day, 1));
        Assert.Equal(Lines, Assert.Single(_ledger.Sheets.Issued()).Lines);
    }

    [Fact]
    public void The_hash_covers_the_lines_the_names_and_the_bytes()
    {
        var first = Hash(Lines, ReportFiles);
        Assert.Equal(first, Hash(Lines, ReportFiles));
        Assert.NotEqual(first, Hash([.. Lines.Take(2)], ReportFiles), StringComparer.Ordinal);
        var renamed = ReportFiles;
        renamed.Remove("report.txt", out var bytes);
        renamed["report2.txt"] = bytes!;
        Assert.NotEqual(first, Hash(Lines, renamed), StringComparer.Ordinal);
        var changed = ReportFiles;
        changed["report.txt"][0]++;
        Assert.NotEqual(first, Hash(Lines, changed), StringComparer.Ordinal);
    }

    [Fact]
    public void A_morning_slept_over_is_recorded_once()
    {
        Miss();
        Miss();
        Assert.Equal(new MorningRecord(Day, 0, _five, 0, "1", "2026a", MorningStep.Missed, null), Assert.Single(_ledger.Mornings.Of(Day)));
        Assert.Empty(_ledger.Sheets.Issued());
        Assert.Empty(_ledger.Mornings.Unfinished());

        // Asked for by hand later, its sheet is issue 1.
        Assert.Equal(1, Begin().Issue);
    }

    [Fact]
    public void A_morning_that_was_begun_can_be_given_up_and_an_issued_one_is_never_missed()
    {
        Begin();
        Miss();
        Assert.Equal([(1, MorningStep.Missed)], _ledger.Mornings.Of(Day).Select(m => (m.Issue, m.Step)));
        Begin();
        _ledger.Mornings.RecordComputed(Day, 2, Lines, ReportFiles);
        Miss();
        Assert.Equal([(1, MorningStep.Missed), (2, MorningStep.Computed)], _ledger.Mornings.Of(Day).Select(m => (m.Issue, m.Step)));
    }

    [Fact]
    public void Mornings_and_sheets_are_found_by_date()
    {
        Assert.Null(_ledger.Mornings.Last());
        for (var i = 0; i < 4; i++)
        {
            _ledger.Mornings.Begin(Day.AddDays(i), _five.AddDays(i), "1", "2026a");
            _ledger.Mornings.RecordComputed(Day.AddDays(i), 1, Lines, ReportFiles);
        }

        Assert.Equal(Day.AddDays(3), _ledger.Mornings.Last()!.Date);
        Assert.Equal([Day.AddDays(1), Day.AddDays(2)], _ledger.Sheets.Issued(Day.AddDays(1), Day.AddDays(2)).Select(s => s.Date));
        Assert.Equal([Day.AddDays(2), Day.AddDays(3)], _ledger.Mornings.Between(Day.AddDays(2), Day.AddDays(9)).Select(m => m.Date));
        Assert.Equal(4, _ledger.Sheets.Issued().Count);
    }

    public void Dispose()
    {
        _ledger.Dispose();
        _home.Dispose();
    }

    private MorningRecord Begin() => _ledger.Mornings.Begin(Day, _five, "1", "2026a");

    private void Miss() => _ledger.Mornings.RecordMissed(Day, _five, "1", "2026a");

    private void Issue()
    {
        Begin();
        _ledger.Mornings.RecordComputed(Day, 1, Lines, ReportFiles);
        _ledger.Mornings.RecordWritten(Day, 1);
    }

    private string Hash(IReadOnlyList<IssuedLine> lines, Dictionary<string, byte[]> files)
    {
        var morning = Begin();
        var sha = _ledger.Mornings.RecordComputed(Day, morning.Issue, lines, files).Sha!;
        _ledger.Mornings.RecordWritten(Day, morning.Issue);
        return sha;
    }
}
