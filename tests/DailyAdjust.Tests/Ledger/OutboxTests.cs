using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using Microsoft.Data.Sqlite;
using Xunit;
using static DailyAdjust.Tests.Ledger.Samples;

namespace DailyAdjust.Tests.Ledger;

public sealed class OutboxTests : IDisposable
{
    private const string Super = "super@example.com";
    private const string Crew = "crew@example.com";

    private readonly LedgerFolder _home = new();
    private readonly SiteLedger _ledger;

    public OutboxTests() => _ledger = _home.Write();

    [Fact]
    public void A_promise_is_kept_with_the_step_that_marks_the_sheet_written_or_not_at_all()
    {
        Computed(Day);
        Assert.Throws<InvalidOperationException>(() => _ledger.InOneStep(() =>
        {
            _ledger.Mornings.RecordWritten(Day, 1);
            _ledger.Outbox.Promise(Message(Day, 1, Super));
            throw new InvalidOperationException("the disk says no");
        }));
        Assert.Equal(MorningStep.Computed, _ledger.Mornings.Get(Day, 1)!.Step);
        Assert.Empty(_ledger.Outbox.Open());

        _ledger.InOneStep(() =>
        {
            _ledger.Mornings.RecordWritten(Day, 1);
            _ledger.Outbox.Promise(Message(Day, 1, Super));
        });
        Assert.Equal(Message(Day, 1, Super) with { NextTry = LedgerFolder.Noon }, Assert.Single(_ledger.Outbox.Open()));
    }

    [Fact]
    public void A_second_promise_of_the_same_changes_nothing_and_one_of_no_sheet_is_refused()
    {
        Computed(Day);
        _ledger.Outbox.Promise(Message(Day, 1, Super));
        _ledger.Outbox.RecordEnded("2026-06-08.1.super@example.com", MessageState.Sent, "250 taken");
        _ledger.Outbox.Promise(Message(Day, 1, Super));
        Assert.Equal(MessageState.Sent, Assert.Single(_ledger.Outbox.Between(Day, Day)).State);
        Assert.Throws<SqliteException>(() => _ledger.Outbox.Promise(Message(Day, 7, Super)));
    }

    [Fact]
    public void A_try_that_came_to_nothing_waits_for_its_time_and_says_why()
    {
        var id = Promised();
        _ledger.Outbox.RecordTry(id, LedgerFolder.Noon.AddMinutes(1));
        _ledger.Outbox.RecordNotTaken(id, "the line failed");
        var waiting = Assert.Single(_ledger.Outbox.Open());
        Assert.Equal((MessageState.Waiting, 1, 0, LedgerFolder.Noon.AddMinutes(1), "the line failed"), (waiting.State, waiting.Tries, waiting.Doubts, waiting.NextTry, waiting.Said));
        Assert.False(waiting.IsEnded);
    }

    [Fact]
    public void A_text_that_may_have_arrived_is_repeated_once()
    {
        var id = Promised();
        for (var count = 1; count <= Outbox.MostDoubts; count++)
        {
            _ledger.Outbox.RecordTry(id, LedgerFolder.Noon);
            _ledger.Outbox.RecordHandedOver(id);
            Assert.Equal(MessageState.HandedOver, _ledger.Outbox.Get(id)!.State);
            _ledger.Outbox.RecordDoubt(id, "no answer");
            Assert.Equal((count < Outbox.MostDoubts ? MessageState.Waiting : MessageState.Uncertain, count), (_ledger.Outbox.Get(id)!.State, _ledger.Outbox.Get(id)!.Doubts));
        }

        Assert.Empty(_ledger.Outbox.Open());
        Assert.Throws<InvalidOperationException>(() => _ledger.Outbox.RecordHandedOver(id));
    }

    [Fact]
    public void The_server_that_surely_has_not_kept_a_text_costs_no_repetition()
    {
        var id = Promised();
        for (var count = 0; count < 5; count++)
        {
            _ledger.Outbox.RecordTry(id, LedgerFolder.Noon);
            _ledger.Outbox.RecordHandedOver(id);
            _ledger.Outbox.RecordNotTaken(id, "450 later");
        }

        Assert.Equal((MessageState.Waiting, 5, 0), (_ledger.Outbox.Get(id)!.State, _ledger.Outbox.Get(id)!.Tries, _ledger.Outbox.Get(id)!.Doubts));
    }

    [Fact]
    public void Of_sheets_that_wait_for_one_recipient_only_the_newest_stays()
    {
        Computed(Day);
        Computed(Day.AddDays(1));
        var old = Message(Day, 1, Super);
        _ledger.Outbox.Promise(old);
        _ledger.Outbox.Promise(Message(Day, 1, Crew));
        _ledger.Outbox.RecordTry(old.MessageId, LedgerFolder.Noon);
        _ledger.Outbox.RecordHandedOver(old.MessageId);
        _ledger.Outbox.Promise(Message(Day.AddDays(1), 1, Super));

        // What is with the server just now is left to its answer; if that is none, it gives way.
        Assert.Equal(MessageState.HandedOver, _ledger.Outbox.Get(old.MessageId)!.State);
        _ledger.Outbox.RecordNotTaken(old.MessageId, "the line failed");
        Assert.Equal(MessageState.Replaced, _ledger.Outbox.Get(old.MessageId)!.State);
        Assert.Equal([Crew, Super], _ledger.Outbox.Open().Select(m => m.Recipient).Order(StringComparer.Ordinal));
        Assert.Equal(Day, _ledger.Outbox.NewestBefore(Day.AddDays(1)));
        Assert.Null(_ledger.Outbox.NewestBefore(Day));
    }

    [Theory]
    [InlineData("DELETE FROM outbox")]
    [InlineData("UPDATE outbox SET recipient = 'other@example.com'")]
    [InlineData("UPDATE outbox SET subject = 'other'")]
    [InlineData("UPDATE outbox SET tries = 0")]
    [InlineData("UPDATE outbox SET state = 'lost'")]
    public void What_was_promised_is_neither_changed_nor_removed(string sql)
    {
        var id = Promised();
        _ledger.Outbox.RecordTry(id, LedgerFolder.Noon);
        Assert.Throws<SqliteException>(() => _ledger.Db.Execute(sql));
    }

    [Fact]
    public void What_became_of_a_message_stays()
    {
        var id = Promised();
        _ledger.Outbox.RecordEnded(id, MessageState.Refused, "550 nobody");
        Assert.Throws<SqliteException>(() => _ledger.Db.Execute("UPDATE outbox SET state = 'waiting'"));
        Assert.Throws<InvalidOperationException>(() => _ledger.Outbox.RecordNotTaken(id, ""));
        Assert.Throws<InvalidOperationException>(() => _ledger.Outbox.RecordDoubt(id, ""));
        Assert.Equal("550 nobody", _ledger.Outbox.Get(id)!.Said);
    }

    [Fact]
    public void A_ledger_without_an_outbox_is_read_as_it_is_and_gets_one_when_it_is_written_to()
    {
        using var older = new LedgerFolder();
        using (var connection = new SqliteConnection($"Data Source={older.Ledger};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
#pragma warning disable CA2100 // A constant of the ledger.
            command.CommandText = SchemaVersion1.Sql + FormattableString.Invariant($"; PRAGMA application_id = {Schema.ApplicationId}; PRAGMA user_version = 1; INSERT INTO input (kind, at) VALUES ('log', '2026-06-08T12:00:00Z');");
#pragma warning restore CA2100
            command.ExecuteNonQuery();
        }

        using (var reader = older.Read())
        {
            Assert.Equal(1, reader.Watermark);
            Assert.Empty(reader.Outbox.Open());
            Assert.Null(reader.Outbox.Get("any"));
            reader.Backup(Path.Combine(older.Folder, "copy.db"));
        }

        using var writer = older.Write();
        Assert.Equal(Schema.Version, writer.Db.Number("PRAGMA user_version"));
        Assert.Equal(1, writer.Watermark);
        writer.Mornings.Begin(Day, LedgerFolder.Noon, "1", "2026a");
        writer.Outbox.Promise(Message(Day, 1, Super));
        Assert.Single(writer.Outbox.Open());
    }

    public void Dispose()
    {
        _ledger.Dispose();
        _home.Dispose();
    }

    private static OutboxMessage Message(DateOnly day, int issue, string to) =>
        new(FormattableString.Invariant($"{day:yyyy-MM-dd}.{issue}.{to}"), day, issue, to, "Mill Creek: no dial to turn", LedgerFolder.Noon);

    private string Promised()
    {
        Computed(Day);
        _ledger.Outbox.Promise(Message(Day, 1, Super));
        return Message(Day, 1, Super).MessageId;
    }

    private void Computed(DateOnly day)
    {
        _ledger.Mornings.Begin(day, LedgerFolder.Noon, "1", "2026a");
        _ledger.Mornings.RecordComputed(day, 1, Lines, ReportFiles);
    }
}
