using Microsoft.Data.Sqlite;

namespace DailyAdjust.Ledger;

/// <summary>The connection: statements, steps that are kept whole or not at all, and troubles in plain words.</summary>
internal sealed class LedgerDb : IDisposable
{
    // https://www.sqlite.org/c3ref/c_dbconfig_defensive.html, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE
    private const int NoCheckpointOnClose = 1006;

    private readonly SqliteConnection _connection;
    private readonly string _path;
    private readonly Dictionary<string, SqliteCommand> _prepared = new(StringComparer.Ordinal);
    private bool _inStep;
    private bool _inView;
    private bool _stepBroken;
    private bool _leavesLog;

    private LedgerDb(SqliteConnection connection, string path)
    {
        _connection = connection;
        _path = path;
    }

    /// <summary>No step is begun or kept any more once a disk has failed under this process. A restore's copy goes on.</summary>
    public bool StopsWithDisk { get; set; }

    /// <summary>
    /// For who only reads: the folder is left as it was found. SQLite makes the two files of its log for readers too; only a connection with the right to write takes
    /// them away again, and so this one has it, and may not use it (https://www.sqlite.org/pragma.html#pragma_query_only). A log that lies there already is somebody else's,
    /// and stays.
    /// </summary>
    public static LedgerDb OpenToRead(string path, TimeSpan wait)
    {
        var leavesLog = File.Exists(LogOf(path));
        var db = Open(path, SqliteOpenMode.ReadWrite, wait);
        db._leavesLog = leavesLog;
        db.AllowChanges(false);
        return db;
    }

    /// <exception cref="LedgerException">Denied also where the file may not be written, even to read it: SQLite would make the log with the file's own rights, and they would stay with the log when the file's are put right.</exception>
    public static LedgerDb Open(string path, SqliteOpenMode mode, TimeSpan wait)
    {
        if (File.Exists(path) && !File.Exists(LogOf(path)) && !OnDisk.MayWrite(path))
        {
            throw Troubles.From(new UnauthorizedAccessException("the file may not be written"), path)!;
        }

        // No pool: a closed ledger must really be closed (restore moves files), and one command timeout of a second
        // leaves the waiting to SQLite's own busy handler.
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = mode,
            Pooling = false,
            DefaultTimeout = 1,
        }.ToString());
        var db = new LedgerDb(connection, path);
        try
        {
            db.Translate(() =>
            {
                connection.Open();
                return 0;
            });
            db.Execute(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"PRAGMA busy_timeout = {(int)wait.TotalMilliseconds}"));
            return db;
        }
        catch
        {
            db.Dispose();
            throw;
        }
    }

    /// <summary>All of it or nothing; a step within a step belongs to the outer one.</summary>
    public T InOneStep<T>(Func<T> work)
    {
        if (_inView)
        {
            throw new InvalidOperationException("A view only reads; begin the step outside of it.");
        }

        if (_inStep)
        {
            try
            {
                return work();
            }
            catch
            {
                _stepBroken = true;
                throw;
            }
        }

        RefuseAfterFailure();
        Execute("BEGIN IMMEDIATE");
        _inStep = true;
        _stepBroken = false;
        try
        {
            var result = work();
            if (_stepBroken)
            {
                throw new InvalidOperationException("A part of this step failed, so nothing of it is kept.");
            }

            RefuseAfterFailure();
            Execute("COMMIT");
            return result;
        }
        catch
        {
            RollBack();
            throw;
        }
        finally
        {
            _inStep = false;
        }
    }

    /// <summary>Everything read in it stands at the same moment, whatever a writer adds meanwhile.</summary>
    public T InOneView<T>(Func<T> read)
    {
        if (_inStep || _inView)
        {
            return read();
        }

        Execute("BEGIN");
        _inView = true;
        try
        {
            return read();
        }
        finally
        {
            _inView = false;
            RollBack();
        }
    }

    public int Execute(string sql, params (string Name, object? Value)[] values) => Translate(() =>
    {
        using var command = Command(sql, values);
        return command.ExecuteNonQuery();
    });

    /// <summary>A statement that is run for many rows: prepared once, kept until the connection closes.</summary>
    public int ExecuteMany(string sql, params (string Name, object? Value)[] values) => Translate(() =>
    {
        if (!_prepared.TryGetValue(sql, out var command))
        {
            command = Command(sql, values);
            command.Prepare();
            _prepared.Add(sql, command);
        }

        foreach (var (name, value) in values)
        {
            command.Parameters[name].Value = value ?? DBNull.Value;
        }

        return command.ExecuteNonQuery();
    });

    public List<T> Query<T>(string sql, Func<SqliteDataReader, T> row, params (string Name, object? Value)[] values) => Translate(() =>
    {
        using var command = Command(sql, values);
        using var reader = command.ExecuteReader();
        var rows = new List<T>();
        while (reader.Read())
        {
            rows.Add(row(reader));
        }

        return rows;
    });

    /// <summary>The first row, or the default of <typeparamref name="T"/>.</summary>
    public T? First<T>(string sql, Func<SqliteDataReader, T> row, params (string Name, object? Value)[] values)
    {
        var rows = Query(sql, row, values);
        return rows.Count == 0 ? default : rows[0];
    }

    public long Number(string sql, params (string Name, object? Value)[] values) => First(sql, r => r.GetInt64(0), values);

    /// <summary>Whether statements may change anything; copying into another file counts as a change.</summary>
    public void AllowChanges(bool allow) => Execute(allow ? "PRAGMA query_only = OFF" : "PRAGMA query_only = ON");

    public bool HasTable(string name) => Number("SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = $name", ("$name", name)) > 0;

    public void Dispose()
    {
        foreach (var command in _prepared.Values)
        {
            command.Dispose();
        }

        if ((OnDisk.HasFailed || _leavesLog) && _connection.Handle is { } open)
        {
            // Closing the last connection would move the log's pages into the file and remove the log: both stay as they are.
            SQLitePCL.raw.sqlite3_db_config(open, NoCheckpointOnClose, 1, out _);
        }

        _connection.Dispose();
    }

    /// <summary>A disk that failed under another ledger, or under a file, on another thread.</summary>
    private void RefuseAfterFailure()
    {
        if (StopsWithDisk && OnDisk.HasFailed)
        {
            throw new LedgerException(LedgerTrouble.Io, $"A disk failed before, so nothing more is written to the ledger {_path}.");
        }
    }

    private static string LogOf(string path) => path + "-wal";

    private SqliteCommand Command(string sql, (string Name, object? Value)[] values)
    {
        var command = _connection.CreateCommand();
#pragma warning disable CA2100 // Every statement is a constant of this project; values go in as parameters.
        command.CommandText = sql;
#pragma warning restore CA2100
        foreach (var (name, value) in values)
        {
            command.Parameters.AddWithValue(name, value ?? DBNull.Value);
        }

        return command;
    }

    private void RollBack()
    {
        try
        {
            Execute("ROLLBACK");
        }
        catch (Exception e) when (e is SqliteException or LedgerException)
        {
            // After a full disk or an I/O error SQLite has rolled back by itself; the first error is the one to tell.
        }
    }

    private T Translate<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        catch (SqliteException e) when (Troubles.From(e, _path) is not null)
        {
            if (Troubles.From(e, _path)!.Trouble == LedgerTrouble.Io)
            {
                OnDisk.TakeAsFailed();
            }

            throw Troubles.From(e, _path)!;
        }
    }
}
