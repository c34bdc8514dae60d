using DailyAdjust.Ledger.Derived;
using DailyAdjust.Ledger.Inputs;
using DailyAdjust.Ledger.Records;
using Microsoft.Data.Sqlite;

namespace DailyAdjust.Ledger;

/// <summary>What a ledger is opened for.</summary>
public enum LedgerMode
{
    /// <summary>Reads beside a writer; changes nothing and needs no lock.</summary>
    Read,

    /// <summary>Reads and writes; one at a time, whatever the process.</summary>
    Write,
}

/// <summary>
/// One site's memory in one SQLite file: inputs that are never overwritten, what was derived from them and may be
/// deleted, and the sheets that were issued. Knows no clock: instants are given. For one thread at a time.
/// Every call throws <see cref="LedgerException"/> when the disk or another process stands in its way.
/// </summary>
public sealed class SiteLedger : IDisposable
{
    private readonly LedgerDb _db;
    private readonly LedgerLock? _lock;

    private SiteLedger(LedgerDb db, LedgerLock? held, string path)
    {
        _db = db;
        _lock = held;
        Path = path;
        var order = new InputOrder(db);
        Files = new WeatherFiles(db, order);
        Logbook = new LogbookEntries(db, order);
        SiteVersions = new SiteTexts(db, order);
        Readings = new ReadingDays(db);
        Weather = new WeatherDays(db);
        States = new SoilStates(db);
        Litres = new DayLitres(db);
        Mornings = new Mornings(db);
        Sheets = new Sheets(db);
        Outbox = new Outbox(db);
        Notices = new Notices(db);
    }

    /// <summary>How long another process is waited for unless the caller says otherwise.</summary>
    public static TimeSpan DefaultWait { get; } = TimeSpan.FromSeconds(10);

    public string Path { get; }

    /// <summary>The files as they came.</summary>
    public WeatherFiles Files { get; }

    /// <summary>What people did and saw.</summary>
    public LogbookEntries Logbook { get; }

    /// <summary>Every version of the site description.</summary>
    public SiteTexts SiteVersions { get; }

    /// <summary>Derived: blocks of readings.</summary>
    public ReadingDays Readings { get; }

    /// <summary>Derived: weather days.</summary>
    public WeatherDays Weather { get; }

    /// <summary>Derived: depletion at the start of a day.</summary>
    public SoilStates States { get; }

    /// <summary>Derived: the water of finished days.</summary>
    public DayLitres Litres { get; }

    /// <summary>Which mornings were done.</summary>
    public Mornings Mornings { get; }

    /// <summary>What was issued.</summary>
    public Sheets Sheets { get; }

    /// <summary>Mail that is promised, and what became of it.</summary>
    public Outbox Outbox { get; }

    /// <summary>What the next sheet has to say.</summary>
    public Notices Notices { get; }

    /// <summary>The highest input number; 0 = nothing has arrived.</summary>
    public long Watermark => _db.Number("SELECT coalesce(max(seq), 0) FROM input");

    /// <summary>The highest input number of what had arrived by an instant; 0 = nothing had.</summary>
    public long WatermarkAt(DateTimeOffset instant) => _db.Number(
        "SELECT coalesce((SELECT seq FROM input WHERE rtrim(at, 'Z') <= $at ORDER BY seq DESC LIMIT 1), 0)",
        ("$at", Formats.OfInstant(instant).TrimEnd('Z')));

    internal LedgerDb Db => _db;

    /// <summary>Where copies of a ledger lie: those made before new tables, and whatever else the caller puts there.</summary>
    public static string BackupsOf(string path) => System.IO.Path.Combine(System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(path))!, "backups");

    /// <summary>Whether there is a ledger; false = nothing has come in yet.</summary>
    /// <exception cref="LedgerException">Lost: there was one.</exception>
    public static bool IsThere(string path)
    {
        LostLedger.Refuse(System.IO.Path.GetFullPath(path));
        return File.Exists(path);
    }

    /// <summary>Opens the ledger; for writing it is created, or, after a copy, brought up to this program's tables, where needed.</summary>
    /// <param name="path">Of ledger.db; its folder exists.</param>
    /// <param name="wait">How long to wait for another writer; null = <see cref="DefaultWait"/>.</param>
    /// <exception cref="LedgerException">Busy, Denied, Full, Io, Corrupt, NewerSchema; Missing when there is no ledger to read, or no folder; Lost.</exception>
    public static SiteLedger Open(string path, LedgerMode mode, TimeSpan? wait = null)
    {
        var patience = wait ?? DefaultWait;
        var full = System.IO.Path.GetFullPath(path);
        LocalDisk.Require(full);
        LostLedger.Refuse(full);
        return mode == LedgerMode.Write ? OpenToWrite(full, patience) : OpenToRead(full, patience);
    }

    /// <summary>Keeps all that <paramref name="work"/> adds, or, when it throws, nothing of it.</summary>
    public void InOneStep(Action work) => _db.InOneStep(() =>
    {
        work();
        return 0;
    });

    /// <summary>Lets everything that <paramref name="read"/> reads stand at the same moment.</summary>
    public T InOneView<T>(Func<T> read) => _db.InOneView(read);

    /// <summary>Forgets the weather days from <paramref name="day"/> on and what the balance gave from it on.</summary>
    public void InvalidateFrom(DateOnly day) => InOneStep(() =>
    {
        Weather.ForgetFrom(day);
        ForgetBalanceFrom(day);
    });

    /// <summary>Forgets the water from <paramref name="day"/> on and the states after it (the state of 00:00 of that day rests on earlier days alone).</summary>
    public void ForgetBalanceFrom(DateOnly day) => InOneStep(() =>
    {
        Litres.ForgetFrom(day);
        States.ForgetAfter(day);
    });

    /// <summary>Forgets everything that can be derived again from the inputs.</summary>
    public void DropDerived() => InOneStep(() =>
    {
        Readings.ForgetAll();
        Weather.ForgetFrom(DateOnly.MinValue);
        ForgetBalanceFrom(DateOnly.MinValue);
    });

    /// <summary>What is wrong with the file, in SQLite's words; empty = nothing.</summary>
    /// <param name="everyFile">Also unpacks every stored file and holds it against its hash.</param>
    public IReadOnlyList<string> IntegrityCheck(bool everyFile = false) => Care.Check(this, everyFile);

    /// <summary>Writes a whole, checked copy to a path where nothing is yet.</summary>
    /// <exception cref="LedgerException">Also Corrupt, when the copy does not hold what it should; it is then removed.</exception>
    /// <exception cref="IOException">Something stands at <paramref name="path"/> already.</exception>
    public void Backup(string path) => Care.Backup(this, System.IO.Path.GetFullPath(path));

    /// <summary>
    /// Empties the log beside the ledger, which grows while somebody reads for long. Without it the next steps do the same, by and by.
    /// </summary>
    public void ShortenLog() => _db.Query("PRAGMA wal_checkpoint(TRUNCATE)", r => r.GetInt64(0));

    public void Dispose()
    {
        _db.Dispose();
        _lock?.Dispose();
    }

    private static SiteLedger OpenToRead(string path, TimeSpan wait)
    {
        if (!File.Exists(path))
        {
            throw new LedgerException(LedgerTrouble.Missing, $"There is no ledger at {path} yet. The first morning or the first file taken in makes it.");
        }

        var db = LedgerDb.OpenToRead(path, wait);
        try
        {
            if (Schema.Check(db, path) < Schema.ReadableFrom)
            {
                throw new LedgerException(LedgerTrouble.Missing, $"The ledger {path} is not set up for this program yet. The next morning or file taken in does it.");
            }

            return new SiteLedger(db, null, path);
        }
        catch
        {
            db.Dispose();
            throw;
        }
    }

    private static SiteLedger OpenToWrite(string path, TimeSpan wait)
    {
        var held = LedgerLock.Take(path, wait);
        try
        {
            return OpenToWrite(path, wait, held);
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    /// <param name="path">Of the ledger.</param>
    /// <param name="wait">How long to wait for another process that holds the file.</param>
    /// <param name="held">Let go of when the ledger is closed; null = a copy that nobody else knows of.</param>
    internal static SiteLedger OpenToWrite(string path, TimeSpan wait, LedgerLock? held)
    {
        LedgerDb? db = null;
        try
        {
            db = LedgerDb.Open(path, SqliteOpenMode.ReadWriteCreate, wait);
            db.StopsWithDisk = held is not null;
            var found = Schema.Check(db, path);

            // FULL: what a step has kept is on the disk before the call returns. The size limit cuts a log that a long
            // reader made grow.
            db.Execute("PRAGMA journal_mode = WAL");
            db.Execute("PRAGMA synchronous = FULL");
            db.Execute("PRAGMA foreign_keys = ON");
            db.Execute("PRAGMA journal_size_limit = 16777216");
            var ledger = new SiteLedger(db, held, path);
            if (found > 0 && found < Schema.Version && held is not null)
            {
                Care.BackupBeforeTables(ledger, Schema.Version);
            }

            Schema.BringUp(db, path);
            return ledger;
        }
        catch
        {
            db?.Dispose();
            throw;
        }
    }
}
