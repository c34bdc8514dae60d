using System.Globalization;
using System.Text;
using DailyAdjust.Service.Home;
using DailyAdjust.ServiceTests.Promises.Records;
using Microsoft.Data.Sqlite;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Together;

/// <summary>Somebody who reads for long beside a program that writes: SQLite's log grows by what is written meanwhile, and shrinks when the reader has gone.</summary>
[Trait("Promise", "6")]
public sealed class LongReaderTests : IDisposable
{
    /// <summary>`journal_size_limit` of the ledger.</summary>
    private const long Limit = 16 << 20;

    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public LongReaderTests() => _site = ExampleSite.TakenIn(_home);

    private long LogSize => new FileInfo(_site.LedgerFile + "-wal") is { Exists: true } log ? log.Length : 0;

    public void Dispose() => _home.Dispose();

    [Fact]
    public void The_log_grows_by_what_is_written_and_no_more_and_is_short_again_after_the_reader()
    {
        var ledger = new FileInfo(_site.LedgerFile).Length;
        var files = Tried.Times(6, 60);
        using (var reader = new SqliteConnection($"Data Source={_site.LedgerFile};Pooling=False;Mode=ReadOnly"))
        {
            reader.Open();
            Execute(reader, "BEGIN; SELECT count(*) FROM input;");
            for (var i = 0; i < files; i++)
            {
                Take(i);
            }

            // The reader sees what it saw; everything written since stands in the log, each page perhaps a few times.
            Assert.InRange(LogSize, 1, files * 4_000_000L);
        }

        Take(files);
        Assert.InRange(LogSize, 0, Limit);
        Assert.True(new FileInfo(_site.LedgerFile).Length > ledger, "nothing was written");
        Assert.Equal((files + 1).ToString(CultureInfo.InvariantCulture), RawLedger.Scalar(_site.LedgerFile, "SELECT count(*) FROM file WHERE name LIKE 'yard-long-%'"));
        Tried.Held(6, "files taken beside a long reader", files);
    }

    [Fact]
    public void A_backup_leaves_no_long_log()
    {
        for (var i = 0; i < 3; i++)
        {
            Take(i);
            Assert.Equal(0, RunningProgram.Run("backup", "--home", _home.Path).ExitCode);
            Assert.InRange(LogSize, 0, Limit);
            Thread.Sleep(1000);
        }
    }

    /// <summary>Takes 4,000 hours of another summer each.</summary>
    private void Take(int number)
    {
        var text = new StringBuilder("Time,Temp (°F),RH (%),Wind (mph),Solar (W/m²),Rain (in)\n");
        var time = new DateTime(1950 + number, 5, 1, 0, 0, 0, DateTimeKind.Unspecified);
        for (var i = 0; i < 4000; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{time.AddHours(i):yyyy-MM-dd HH:mm},{50 + (i * 7 % 23)}.{i % 10},{40 + (i % 41)},{i % 9},{i % 700},0.00\n");
        }

        var path = Path.Combine(_home.Path, string.Create(CultureInfo.InvariantCulture, $"yard-long-{number}.csv"));
        File.WriteAllText(path, text.ToString());
        var result = RunningProgram.Run("ingest", path, "--home", _home.Path);
        Assert.True(result.ExitCode == 0, result.ToString());
    }

    private static void Execute(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // A constant of this test.
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteScalar();
    }
}
