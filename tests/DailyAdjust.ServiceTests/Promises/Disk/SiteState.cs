using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using DailyAdjust.Service.Home;
using Microsoft.Data.Sqlite;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>A site's state as text, to be compared with another's: all of the ledger but instants of arrival, every report file, every file that was put away.</summary>
internal static class SiteState
{
    /// <summary>Instants, and what depends on how often a server was asked.</summary>
    private static readonly HashSet<string> Left = new(StringComparer.Ordinal)
    {
        "input.at", "outbox.promised_at", "outbox.state", "outbox.tries", "outbox.doubts", "outbox.next_try", "outbox.said",
    };

    public static string Of(SiteFolder site)
    {
        var text = new StringBuilder();
        using (var db = Open(site.LedgerFile))
        {
            foreach (var table in Column(db, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name"))
            {
                var columns = Column(db, $"SELECT name FROM pragma_table_info('{table}') ORDER BY cid").Where(c => !Left.Contains($"{table}.{c}")).ToList();
                var rows = Rows(db, $"SELECT {string.Join(", ", columns.Select(c => $"\"{c}\""))} FROM \"{table}\"").Order(StringComparer.Ordinal);
                text.AppendJoin('\n', rows.Select(row => $"{table}: {row}")).Append('\n');
            }
        }

        foreach (var folder in new[] { site.Inbox, site.Reports })
        {
            foreach (var file in Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
            {
                text.Append(Path.GetRelativePath(site.Path, file)).Append(' ').Append(Sha(File.ReadAllBytes(file))).Append('\n');
            }
        }

        return text.ToString();
    }

    /// <summary>The ledger as a process left it, looked at in a copy: opening it here would put it in order before the program can.</summary>
    public static void AssertWhole(SiteFolder site) => InCopy(site, file =>
    {
        using var db = Open(file);
        Assert.Equal(["ok"], Column(db, "PRAGMA integrity_check"));
        Assert.Empty(Column(db, "PRAGMA foreign_key_check"));
        return 0;
    });

    /// <summary>Reads a copy of the ledger: beside the program, and through a path by which SQLite would not find it.</summary>
    /// <param name="site">The site.</param>
    /// <param name="read">Takes the copy's path.</param>
    public static T InCopy<T>(SiteFolder site, Func<string, T> read)
    {
        var copy = Directory.CreateTempSubdirectory("dailyadjust-look-");
        try
        {
            foreach (var part in new[] { "ledger.db", "ledger.db-wal", "ledger.db-journal" }.Where(part => File.Exists(Path.Combine(site.Path, part))))
            {
                File.Copy(Path.Combine(site.Path, part), Path.Combine(copy.FullName, part));
            }

            return read(Path.Combine(copy.FullName, "ledger.db"));
        }
        finally
        {
            copy.Delete(recursive: true);
        }
    }

    /// <summary>Every file that was put into the inbox lies there still, or was put away, and once.</summary>
    public static void AssertEachOnce(SiteFolder site, IReadOnlyDictionary<string, byte[]> files)
    {
        var found = new[] { site.Inbox, site.Taken, site.Refused }.Where(Directory.Exists).SelectMany(Directory.GetFiles).Select(f => Sha(File.ReadAllBytes(f))).ToList();
        foreach (var (name, bytes) in files)
        {
            Assert.True(found.Count(sha => string.Equals(sha, Sha(bytes), StringComparison.Ordinal)) == 1, $"{name} lies there {found.Count(sha => string.Equals(sha, Sha(bytes), StringComparison.Ordinal))} times");
        }
    }

    /// <summary>Nothing that was only on its way to its name is left; the week's books are written, and tidied up after, with the next sheet.</summary>
    public static void AssertNoLeftovers(TestHome home) => Assert.DoesNotContain(
        Directory.GetFiles(home.Path, ".*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(home.Path, f)), f => !f.Contains("/summaries/", StringComparison.Ordinal));

    public static long Number(string ledger, string sql)
    {
        using var db = Open(ledger);
        return long.Parse(Column(db, sql)[0], CultureInfo.InvariantCulture);
    }

    private static SqliteConnection Open(string file)
    {
        var db = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false, DefaultTimeout = 5 }.ToString());
        db.Open();
        return db;
    }

    private static List<string> Column(SqliteConnection db, string sql) => [.. Rows(db, sql)];

    private static List<string> Rows(SqliteConnection db, string sql)
    {
        using var command = db.CreateCommand();
#pragma warning disable CA2100 // Fixed texts of the tests, and names of tables.
        command.CommandText = sql;
#pragma warning restore CA2100
        using var reader = command.ExecuteReader();
        var rows = new List<string>();
        while (reader.Read())
        {
            rows.Add(string.Join(" | ", Enumerable.Range(0, reader.FieldCount).Select(i => reader.GetValue(i) is byte[] bytes ? Sha(bytes) : Convert.ToString(reader.GetValue(i), CultureInfo.InvariantCulture))));
        }

        return rows;
    }

    private static string Sha(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
