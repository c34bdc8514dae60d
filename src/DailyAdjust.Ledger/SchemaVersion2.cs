namespace DailyAdjust.Ledger;

/// <summary>Version 2: the outbox.</summary>
internal static class SchemaVersion2
{
    public const string Sql = """
        CREATE TABLE outbox (
            message_id TEXT NOT NULL PRIMARY KEY,
            day TEXT NOT NULL,
            issue INTEGER NOT NULL,
            recipient TEXT NOT NULL,
            subject TEXT NOT NULL,
            promised_at TEXT NOT NULL,
            state TEXT NOT NULL CHECK (state IN ('waiting', 'handed-over', 'sent', 'replaced', 'refused', 'uncertain', 'given-up')),
            tries INTEGER NOT NULL DEFAULT 0 CHECK (tries >= 0),
            doubts INTEGER NOT NULL DEFAULT 0 CHECK (doubts BETWEEN 0 AND 2),  -- hand-overs that the server may have kept
            next_try TEXT NOT NULL,
            said TEXT NOT NULL DEFAULT '',                 -- what the last try came to
            UNIQUE (day, issue, recipient),
            FOREIGN KEY (day, issue) REFERENCES morning (day, issue)
        ) STRICT;
        CREATE INDEX outbox_open ON outbox (state) WHERE state IN ('waiting', 'handed-over');

        CREATE TRIGGER outbox_delete BEFORE DELETE ON outbox BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;
        CREATE TRIGGER outbox_ended BEFORE UPDATE ON outbox WHEN OLD.state NOT IN ('waiting', 'handed-over')
        BEGIN SELECT RAISE(ABORT, 'what became of a message is never changed'); END;
        CREATE TRIGGER outbox_fixed BEFORE UPDATE ON outbox
        WHEN NEW.message_id IS NOT OLD.message_id OR NEW.day IS NOT OLD.day OR NEW.issue IS NOT OLD.issue OR NEW.recipient IS NOT OLD.recipient
            OR NEW.subject IS NOT OLD.subject OR NEW.promised_at IS NOT OLD.promised_at OR NEW.tries < OLD.tries OR NEW.doubts < OLD.doubts
        BEGIN SELECT RAISE(ABORT, 'what was promised is never changed'); END;
        """;
}
