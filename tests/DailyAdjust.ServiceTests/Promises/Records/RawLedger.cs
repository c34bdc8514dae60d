using System.Globalization;
using Microsoft.Data.Sqlite;

namespace DailyAdjust.ServiceTests.Promises.Records;

/// <summary>A ledger file looked at with SQLite alone, past the program.</summary>
internal static class RawLedger
{
    /// <summary>Tables whose rows are never removed.</summary>
    private static readonly string[] _kept = ["input", "file", "file_chunk", "logbook", "site_version", "morning", "advice", "report_file"];

    public static string Scalar(string path, string sql)
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // Fixed texts of the tests.
        command.CommandText = sql;
#pragma warning restore CA2100
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture) ?? "";
    }

    public static bool IsWhole(string path) => Scalar(path, "PRAGMA integrity_check") is "ok";

    /// <summary>How many rows each kept table has.</summary>
    public static IReadOnlyList<string> Counts(string path) => [.. _kept.Select(table => $"{table} {Scalar(path, $"SELECT count(*) FROM {table}")}")];

    /// <summary>Every row of the kept tables, hashed by what SQLite prints of it.</summary>
    public static IReadOnlyList<string> Rows(string path) =>
        [.. _kept.Select(table => $"{table} {Scalar(path, $"SELECT group_concat(row, x'0a') FROM (SELECT {Row(path, table)} AS row FROM {table} ORDER BY row)")}")];

    /// <summary>Makes it a ledger of the first tables.</summary>
    public static void MakeOld(string path) => Scalar(path, "DROP TABLE IF EXISTS day_litres; DROP TABLE IF EXISTS notice; DROP TABLE IF EXISTS outbox; PRAGMA user_version = 1;");

    /// <summary>Writes nonsense over the pages of a table.</summary>
    public static void Damage(string path, string table)
    {
        Scalar(path, "PRAGMA wal_checkpoint(TRUNCATE)");
        var page = int.Parse(Scalar(path, $"SELECT rootpage FROM sqlite_schema WHERE name = '{table}'"), CultureInfo.InvariantCulture);
        var bytes = File.ReadAllBytes(path);
        bytes.AsSpan((page - 1) * 4096, 4096).Fill(0xA5);
        File.WriteAllBytes(path, bytes);
    }

    private static string Row(string path, string table) =>
        Scalar(path, $"SELECT group_concat('quote(' || name || ')', ' || '','' || ') FROM pragma_table_info('{table}')");
}
