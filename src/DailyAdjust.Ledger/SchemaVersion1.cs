namespace DailyAdjust.Ledger;

/// <summary>
/// The first tables. Dates are 'yyyy-MM-dd', instants are UTC in ISO 8601, hashes are SHA-256 in lower-case
/// hexadecimals: all of it readable with the sqlite3 shell, and ordered as text.
/// </summary>
internal static class SchemaVersion1
{
    public const string Sql = Inputs + InputsStay + Derived + Records + RecordsStay;

    private const string Inputs = """
        CREATE TABLE input (
            seq INTEGER PRIMARY KEY,                       -- the one order of arrival, without gaps
            kind TEXT NOT NULL CHECK (kind IN ('file', 'log', 'site')),
            at TEXT NOT NULL
        ) STRICT;

        CREATE TABLE file (
            seq INTEGER PRIMARY KEY REFERENCES input (seq),
            sha TEXT NOT NULL,                             -- of the whole file
            name TEXT NOT NULL,
            source TEXT NOT NULL,                          -- weather station, or what else the file is
            length INTEGER NOT NULL CHECK (length >= 0),
            base_seq INTEGER REFERENCES file (seq),        -- the file that it begins with
            base_length INTEGER NOT NULL CHECK (base_length BETWEEN 0 AND length),
            UNIQUE (sha, source)
        ) STRICT;
        CREATE INDEX file_name ON file (name);
        CREATE INDEX file_source ON file (source);

        CREATE TABLE file_chunk (
            id INTEGER PRIMARY KEY,
            seq INTEGER NOT NULL REFERENCES file (seq),
            offset INTEGER NOT NULL,                       -- within the whole file
            length INTEGER NOT NULL,                       -- before compression
            body BLOB NOT NULL,                            -- Brotli
            UNIQUE (seq, offset)
        ) STRICT;

        CREATE TABLE logbook (
            seq INTEGER PRIMARY KEY REFERENCES input (seq),
            time TEXT NOT NULL,                            -- on the site's clock; a bare date has no time of day
            kind TEXT NOT NULL,
            place TEXT NOT NULL,
            ordinal INTEGER NOT NULL,
            body TEXT NOT NULL,                            -- the whole entry, JSON
            from_file INTEGER REFERENCES file (seq),
            from_sheet TEXT                                -- the returned sheet, '2026-06-08/1'
        ) STRICT;
        CREATE INDEX logbook_identity ON logbook (time, kind, place, ordinal);

        CREATE TABLE site_version (
            seq INTEGER PRIMARY KEY REFERENCES input (seq),
            from_day TEXT NOT NULL,
            corrects INTEGER NOT NULL CHECK (corrects IN (0, 1)),
            sha TEXT NOT NULL,
            site BLOB NOT NULL,                            -- site.yaml as it was read
            stations BLOB NOT NULL                         -- stations.csv as it was read
        ) STRICT;

        """;

    private const string InputsStay = """
        CREATE TRIGGER input_update BEFORE UPDATE ON input BEGIN SELECT RAISE(ABORT, 'inputs are never changed'); END;
        CREATE TRIGGER input_delete BEFORE DELETE ON input BEGIN SELECT RAISE(ABORT, 'inputs are never deleted'); END;
        CREATE TRIGGER file_update BEFORE UPDATE ON file BEGIN SELECT RAISE(ABORT, 'inputs are never changed'); END;
        CREATE TRIGGER file_delete BEFORE DELETE ON file BEGIN SELECT RAISE(ABORT, 'inputs are never deleted'); END;
        CREATE TRIGGER file_chunk_update BEFORE UPDATE ON file_chunk BEGIN SELECT RAISE(ABORT, 'inputs are never changed'); END;
        CREATE TRIGGER file_chunk_delete BEFORE DELETE ON file_chunk BEGIN SELECT RAISE(ABORT, 'inputs are never deleted'); END;
        CREATE TRIGGER logbook_update BEFORE UPDATE ON logbook BEGIN SELECT RAISE(ABORT, 'inputs are never changed'); END;
        CREATE TRIGGER logbook_delete BEFORE DELETE ON logbook BEGIN SELECT RAISE(ABORT, 'inputs are never deleted'); END;
        CREATE TRIGGER site_version_update BEFORE UPDATE ON site_version BEGIN SELECT RAISE(ABORT, 'inputs are never changed'); END;
        CREATE TRIGGER site_version_delete BEFORE DELETE ON site_version BEGIN SELECT RAISE(ABORT, 'inputs are never deleted'); END;

        """;

    private const string Derived = """
        CREATE TABLE file_read (
            seq INTEGER PRIMARY KEY REFERENCES file (seq),
            map_sha TEXT NOT NULL,                         -- of the column map that it was last read with
            rows_read INTEGER NOT NULL,
            rows_aside INTEGER NOT NULL,
            rows_refused INTEGER NOT NULL,
            problems TEXT NOT NULL
        ) STRICT;

        CREATE TABLE reading_day (
            source TEXT NOT NULL,
            day TEXT NOT NULL,
            seq INTEGER NOT NULL REFERENCES file (seq),
            map_sha TEXT NOT NULL,
            body BLOB NOT NULL,
            UNIQUE (source, day, seq)
        ) STRICT;
        CREATE INDEX reading_day_seq ON reading_day (seq);

        CREATE TABLE weather_day (day TEXT NOT NULL PRIMARY KEY, inputs TEXT NOT NULL, body TEXT NOT NULL) STRICT;
        CREATE TABLE state (day TEXT NOT NULL PRIMARY KEY, inputs TEXT NOT NULL, body TEXT NOT NULL) STRICT;

        """;

    private const string Records = """
        CREATE TABLE morning (
            day TEXT NOT NULL,
            issue INTEGER NOT NULL CHECK (issue >= 0),     -- 0: slept over, nothing was issued
            as_of TEXT NOT NULL,
            watermark INTEGER NOT NULL,                    -- the highest input number that it could use
            calculation TEXT NOT NULL,
            time_zones TEXT NOT NULL,
            step TEXT NOT NULL CHECK (step IN ('due', 'computed', 'written', 'missed')),
            sha TEXT,                                      -- of the advice and the report files
            UNIQUE (day, issue)
        ) STRICT;

        CREATE TABLE advice (
            day TEXT NOT NULL,
            issue INTEGER NOT NULL,
            lines TEXT NOT NULL,                           -- what the sheet says of each program, JSON
            UNIQUE (day, issue),
            FOREIGN KEY (day, issue) REFERENCES morning (day, issue)
        ) STRICT;

        CREATE TABLE report_file (
            day TEXT NOT NULL,
            issue INTEGER NOT NULL,
            name TEXT NOT NULL,
            length INTEGER NOT NULL,
            body BLOB NOT NULL,                            -- Brotli
            UNIQUE (day, issue, name),
            FOREIGN KEY (day, issue) REFERENCES morning (day, issue)
        ) STRICT;

        """;

    private const string RecordsStay = """
        CREATE TRIGGER morning_delete BEFORE DELETE ON morning BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;
        CREATE TRIGGER morning_ended BEFORE UPDATE ON morning WHEN OLD.step IN ('written', 'missed')
        BEGIN SELECT RAISE(ABORT, 'a written or missed morning is never changed'); END;
        CREATE TRIGGER morning_step BEFORE UPDATE ON morning
        WHEN NOT (OLD.step = 'due' AND NEW.step IN ('computed', 'missed') OR OLD.step = 'computed' AND NEW.step = 'written')
        BEGIN SELECT RAISE(ABORT, 'a morning goes from due to computed to written, or from due to missed'); END;
        CREATE TRIGGER morning_fixed BEFORE UPDATE ON morning
        WHEN NEW.day IS NOT OLD.day OR NEW.issue IS NOT OLD.issue OR NEW.as_of IS NOT OLD.as_of OR NEW.watermark IS NOT OLD.watermark
            OR NEW.calculation IS NOT OLD.calculation OR NEW.time_zones IS NOT OLD.time_zones
            OR (OLD.step = 'computed' AND NEW.sha IS NOT OLD.sha)
        BEGIN SELECT RAISE(ABORT, 'what a morning was computed from is never changed'); END;
        CREATE TRIGGER advice_update BEFORE UPDATE ON advice BEGIN SELECT RAISE(ABORT, 'records are never changed'); END;
        CREATE TRIGGER advice_delete BEFORE DELETE ON advice BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;
        CREATE TRIGGER report_file_update BEFORE UPDATE ON report_file BEGIN SELECT RAISE(ABORT, 'records are never changed'); END;
        CREATE TRIGGER report_file_delete BEFORE DELETE ON report_file BEGIN SELECT RAISE(ABORT, 'records are never deleted'); END;
        """;
}
