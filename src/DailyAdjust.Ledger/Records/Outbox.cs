using DailyAdjust.Ledger.Json;
using Microsoft.Data.Sqlite;

namespace DailyAdjust.Ledger.Records;

/// <summary>What became of a message.</summary>
public enum MessageState
{
    /// <summary>Promised; it is to be tried when its time has come.</summary>
    Waiting,

    /// <summary>Its text is being given to the server now, or was when the process ended.</summary>
    HandedOver,

    /// <summary>The server took it.</summary>
    Sent,

    /// <summary>A newer sheet to the same recipient was promised before this one was taken.</summary>
    Replaced,

    /// <summary>The server will not have it.</summary>
    Refused,

    /// <summary>It may have been taken once or twice, and nobody can say.</summary>
    Uncertain,

    /// <summary>Never taken until it was too old.</summary>
    GivenUp,
}

/// <summary>One sheet to one recipient.</summary>
/// <param name="MessageId">The same at every try; without angle brackets.</param>
/// <param name="Date">The sheet's date.</param>
/// <param name="Issue">The sheet's issue.</param>
/// <param name="Recipient">The address.</param>
/// <param name="Subject">One line.</param>
/// <param name="PromisedAt">When the sheet was written, UTC.</param>
public sealed record OutboxMessage(string MessageId, DateOnly Date, int Issue, string Recipient, string Subject, DateTimeOffset PromisedAt)
{
    public MessageState State { get; init; } = MessageState.Waiting;

    /// <summary>How often a server was asked.</summary>
    public int Tries { get; init; }

    /// <summary>Hand-overs of which nobody knows whether the server kept them: 0 to <see cref="Outbox.MostDoubts"/>.</summary>
    public int Doubts { get; init; }

    /// <summary>When it is to be tried next, UTC.</summary>
    public DateTimeOffset NextTry { get; init; }

    /// <summary>What the last try came to; empty = there was none.</summary>
    public string Said { get; init; } = "";

    /// <summary>Nothing more will be done with it.</summary>
    public bool IsEnded => State is not (MessageState.Waiting or MessageState.HandedOver);
}

/// <summary>
/// Mail that is promised. A message stands here from the moment its sheet is written, so that no crash, hung server or restart can lose it
/// unnoticed; what became of it is kept for ever.
/// </summary>
public sealed class Outbox
{
    /// <summary>How often a text may have reached the server: the first time and one repetition.</summary>
    public const int MostDoubts = 2;

    private const string Columns = "message_id, day, issue, recipient, subject, promised_at, state, tries, doubts, next_try, said";

    private readonly LedgerDb _db;

    internal Outbox(LedgerDb db) => _db = db;

    // A ledger that no newer program has written to yet may be read all the same.
    private bool IsThere => _db.HasTable("outbox");

    /// <summary>
    /// Promises a message, to be tried at once; in the same step an older sheet that still waits for the same recipient gives way to it. Changes nothing when it
    /// was promised before.
    /// </summary>
    public void Promise(OutboxMessage message) => _db.InOneStep(() =>
    {
        var added = _db.Execute(
            """
            INSERT INTO outbox (message_id, day, issue, recipient, subject, promised_at, state, next_try)
            VALUES ($id, $day, $issue, $recipient, $subject, $at, 'waiting', $at) ON CONFLICT DO NOTHING
            """,
            ("$id", message.MessageId),
            ("$day", Formats.OfDay(message.Date)),
            ("$issue", message.Issue),
            ("$recipient", message.Recipient),
            ("$subject", message.Subject),
            ("$at", Formats.OfInstant(message.PromisedAt)));
        return added == 0 ? 0 : GiveWay();
    });

    /// <summary>A try begins: the next one, if it comes to nothing, is at <paramref name="nextTry"/>.</summary>
    public void RecordTry(string messageId, DateTimeOffset nextTry) => Change(
        messageId, "tries = tries + 1, next_try = $next WHERE state = 'waiting'", ("$next", Formats.OfInstant(nextTry)));

    /// <summary>The server has agreed to take the text, and gets it now.</summary>
    public void RecordHandedOver(string messageId) => Change(messageId, "state = 'handed-over' WHERE state = 'waiting'");

    /// <summary>The server surely has not kept it; it waits for its next try.</summary>
    public void RecordNotTaken(string messageId, string said) => _db.InOneStep(() =>
    {
        Change(messageId, "state = 'waiting', said = $said WHERE state IN ('waiting', 'handed-over')", ("$said", said));
        return GiveWay();
    });

    /// <summary>The server may have kept it: it waits for its one repetition, or, after that, nobody can say.</summary>
    public void RecordDoubt(string messageId, string said) => _db.InOneStep(() =>
    {
        Change(
            messageId,
            "doubts = doubts + 1, state = CASE WHEN doubts + 1 < $most THEN 'waiting' ELSE 'uncertain' END, said = $said WHERE state = 'handed-over'",
            ("$most", MostDoubts),
            ("$said", said));
        return GiveWay();
    });

    /// <summary>What became of it.</summary>
    /// <param name="messageId">Which.</param>
    /// <param name="state">One that ends it.</param>
    /// <param name="said">In words.</param>
    public void RecordEnded(string messageId, MessageState state, string said) => Change(
        messageId, "state = $state, said = $said WHERE state IN ('waiting', 'handed-over')", ("$state", Words.Of(state)), ("$said", said));

    /// <summary>Null = never promised.</summary>
    public OutboxMessage? Get(string messageId) => IsThere
        ? _db.First($"SELECT {Columns} FROM outbox WHERE message_id = $id", ToMessage, ("$id", messageId))
        : null;

    /// <summary>What has not ended, by its next try.</summary>
    public IReadOnlyList<OutboxMessage> Open() => Query("WHERE state IN ('waiting', 'handed-over') ORDER BY next_try, message_id");

    /// <summary>By date, issue and recipient, both ends included.</summary>
    public IReadOnlyList<OutboxMessage> Between(DateOnly first, DateOnly last) => Query(
        "WHERE day BETWEEN $first AND $last ORDER BY day, issue, recipient", ("$first", Formats.OfDay(first)), ("$last", Formats.OfDay(last)));

    /// <summary>The newest date before another with a message; null = there is none.</summary>
    public DateOnly? NewestBefore(DateOnly date) => Query("WHERE day < $day ORDER BY day DESC LIMIT 1", ("$day", Formats.OfDay(date))) is [var newest] ? newest.Date : null;

    private static OutboxMessage ToMessage(SqliteDataReader r) => new(
        r.GetString(0), Formats.ToDay(r.GetString(1)), r.GetInt32(2), r.GetString(3), r.GetString(4), Formats.ToInstant(r.GetString(5)))
    {
        State = Words.To<MessageState>(r.GetString(6)),
        Tries = r.GetInt32(7),
        Doubts = r.GetInt32(8),
        NextTry = Formats.ToInstant(r.GetString(9)),
        Said = r.GetString(10),
    };

    private List<OutboxMessage> Query(string which, params (string, object?)[] values) =>
        IsThere ? _db.Query($"SELECT {Columns} FROM outbox {which}", ToMessage, values) : [];

    /// <summary>Of the sheets that wait for one recipient only the newest is worth sending.</summary>
    private int GiveWay() => _db.Execute(
        """
        UPDATE outbox SET state = 'replaced' WHERE state = 'waiting' AND EXISTS (
            SELECT 1 FROM outbox AS newer WHERE newer.recipient = outbox.recipient
            AND (newer.day > outbox.day OR (newer.day = outbox.day AND newer.issue > outbox.issue)))
        """);

    private void Change(string messageId, string change, params (string, object?)[] values) => _db.InOneStep(() =>
        _db.Execute($"UPDATE outbox SET {change} AND message_id = $id", [.. values, ("$id", messageId)]) == 1
            ? 0
            : throw new InvalidOperationException($"Message {messageId} is not one of which that can be said."));
}
