using DailyAdjust.Core.Logbook;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Json;
using Xunit;
using static DailyAdjust.Tests.Ledger.Samples;

namespace DailyAdjust.Tests.Ledger;

public sealed class LogbookEntriesTests : IDisposable
{
    private readonly LedgerFolder _home = new();
    private readonly SiteLedger _ledger;

    public LogbookEntriesTests() => _ledger = _home.Write();

    [Fact]
    public void The_same_rows_twice_add_nothing()
    {
        LogEntry[] rows = [Setting(80), FullEntry, Entry("2026-06-08", LogKind.Rain, new Place(PlaceKind.Gauge, "yard", ""), 4)];
        var first = _ledger.Logbook.Add(rows, LedgerFolder.Noon);
        var again = _ledger.Logbook.Add(rows, LedgerFolder.Noon);
        Assert.Equal((3, 0, 0), (first.Added.Count, first.Superseded, first.Known));
        Assert.Equal((0, 0, 3), (again.Added.Count, again.Superseded, again.Known));
        Assert.Equal(3, _ledger.Watermark);
    }

    [Fact]
    public void A_corrected_row_takes_the_place_of_the_earlier_one()
    {
        _ledger.Logbook.Add([Setting(80), FullEntry], LedgerFolder.Noon);
        var corrected = _ledger.Logbook.Add([Setting(70)], LedgerFolder.Noon);
        Assert.Equal((1, 1, 0), (corrected.Added.Count, corrected.Superseded, corrected.Known));
        Assert.Equal([70, FullEntry.Value], Values());

        // Back to the first number is a correction too.
        _ledger.Logbook.Add([Setting(80)], LedgerFolder.Noon);
        Assert.Equal([80, FullEntry.Value], Values());
    }

    [Fact]
    public void Rows_that_differ_in_time_kind_place_or_ordinal_stand_side_by_side()
    {
        _ledger.Logbook.Add(
            [
                Setting(80),
                Setting(81) with { Ordinal = 1 },
                Setting(82) with { Where = Program("C1", "P2") },
                Setting(83) with { Time = new LogTime(Day, null) },
                Setting(84) with { Kind = LogKind.Ran },
            ],
            LedgerFolder.Noon);
        Assert.Equal([80, 81, 82, 83, 84], Values());
    }

    [Fact]
    public void A_void_removes_what_it_names()
    {
        _ledger.Logbook.Add([Setting(80), Setting(81) with { Where = Program("C1", "P2") }, Setting(82) with { Kind = LogKind.Ran }], LedgerFolder.Noon);
        _ledger.Logbook.Add([Void("setting", Program("C1", "P1"))], LedgerFolder.Noon);
        Assert.Equal([81, 82], Values());
    }

    [Fact]
    public void A_void_without_a_place_removes_every_place()
    {
        _ledger.Logbook.Add([Setting(80), Setting(81) with { Where = Program("C1", "P2") }, Setting(82) with { Kind = LogKind.Ran }], LedgerFolder.Noon);
        _ledger.Logbook.Add([Void("setting", Site)], LedgerFolder.Noon);
        Assert.Equal([82], Values());
    }

    [Fact]
    public void What_was_voided_stays_so_when_its_file_comes_again_and_holds_again_when_corrected()
    {
        LogEntry[] file = [Setting(80), Void("setting", Program("C1", "P1"))];
        _ledger.Logbook.Add(file, LedgerFolder.Noon);
        _ledger.Logbook.Add(file, LedgerFolder.Noon);
        Assert.Empty(Values());
        _ledger.Logbook.Add([Setting(75)], LedgerFolder.Noon);
        Assert.Equal([75], Values());
    }

    [Fact]
    public void A_void_can_be_voided()
    {
        _ledger.Logbook.Add([Setting(80), Void("setting", Site)], LedgerFolder.Noon);
        Assert.Empty(Values());
        _ledger.Logbook.Add([Void("void", Site) with { Ordinal = 1 }], LedgerFolder.Noon);
        Assert.Equal([80], Values());
    }

    [Fact]
    public void What_held_at_an_earlier_input_number_can_be_asked_for()
    {
        _ledger.Logbook.Add([Setting(80)], LedgerFolder.Noon);
        _ledger.Files.Store("a.csv", "yard", Bytes("x"), LedgerFolder.Noon);
        _ledger.Logbook.Add([Setting(70)], LedgerFolder.Noon);
        _ledger.Logbook.Add([Void("setting", Site)], LedgerFolder.Noon);
        Assert.Empty(Values(0));
        Assert.Equal([80], Values(1));
        Assert.Equal([80], Values(2));
        Assert.Equal([70], Values(3));
        Assert.Empty(Values(4));
    }

    [Fact]
    public void Where_an_entry_came_from_is_kept()
    {
        var file = _ledger.Files.Store("round.csv", "round", Bytes("x"), LedgerFolder.Noon).Seq;
        _ledger.Logbook.Add([Setting(80)], LedgerFolder.Noon, file, "2026-06-08/1");
        Assert.Equal((file, "2026-06-08/1"), _ledger.Db.First("SELECT from_file, from_sheet FROM logbook", r => (r.GetInt64(0), r.GetString(1))));
    }

    [Fact]
    public void Every_member_comes_back()
    {
        _ledger.Logbook.Add([FullEntry], LedgerFolder.Noon);
        var back = Assert.Single(_ledger.Logbook.Effective());
        Assert.Equal(FullEntry.Except, back.Except);
        Assert.Equal(FullEntry with { Except = [] }, back with { Except = [] });
    }

    /// <summary>The text is a promise to older ledgers: a change here needs a new version of the tables.</summary>
    [Fact]
    public void An_entrys_text_is_what_it_always_was()
    {
        Assert.Equal(
            """{"time":{"date":"2026-06-08","clock":"05:30:00"},"kind":"round","where":{"kind":"site"},"ordinal":2,"value":0.30000000000000004,"unit":"litres-per-min","text":"closed","sheet":"2026-06-07","issue":2,"except":[{"kind":"program","name":"C1","item":"P2"},{"kind":"controller","name":"C3"}],"until":{"date":"2026-06-30"},"by":"Zoë","note":"said \"done\", was\nhalf done — см. ниже"}""",
            LogEntryJson.Write(FullEntry with { Instrument = "", RodLengthM = null }));
        Assert.EndsWith(""","instrument":"meter 2","rodM":0.0762}""", LogEntryJson.Write(FullEntry), StringComparison.Ordinal);
        Assert.Equal(
            """{"time":{"date":"2026-06-08"},"kind":"off","where":{"kind":"program","name":"C1","item":"P1"},"ordinal":0}""",
            LogEntryJson.Write(Entry("2026-06-08", LogKind.Off, Program("C1", "P1"))));
    }

    [Fact]
    public void A_member_or_word_that_this_program_does_not_know_is_an_error()
    {
        const string Good = """{"time":{"date":"2026-06-08"},"kind":"off","where":{"kind":"site"},"ordinal":0}""";
        Assert.Equal(LogKind.Off, LogEntryJson.Read(Good).Kind);
        Assert.Throws<System.Text.Json.JsonException>(() => LogEntryJson.Read(Good.Replace("\"ordinal\"", "\"number\":1,\"ordinal\"", StringComparison.Ordinal)));
        Assert.Throws<System.Text.Json.JsonException>(() => LogEntryJson.Read(Good.Replace("off", "offf", StringComparison.Ordinal)));
        Assert.Throws<System.Text.Json.JsonException>(() => LogEntryJson.Read(Good.Replace("\"kind\":\"off\",", "", StringComparison.Ordinal)));
    }

    public void Dispose()
    {
        _ledger.Dispose();
        _home.Dispose();
    }

    private static LogEntry Setting(double percent) => Entry("2026-06-08 06:15", LogKind.Setting, Program("C1", "P1"), percent);

    private static LogEntry Void(string kind, Place where) => Entry("2026-06-08 06:15", LogKind.Void, where, text: kind);

    private List<double?> Values(long upTo = long.MaxValue) => [.. _ledger.Logbook.Effective(upTo).Select(e => e.Value)];
}
