using DailyAdjust.Ledger.Records;
using Microsoft.Data.Sqlite;
using Xunit;

namespace DailyAdjust.ServiceTests.Mail;

/// <summary>A ledger of the time before there was mail, under today's program.</summary>
[Trait("Promise", "7")]
public sealed class OlderLedgerTests : IDisposable
{
    private readonly MailHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void It_is_read_as_it_is_and_the_next_sheet_is_mailed_from_it()
    {
        using var server = new MailServer(_home.ServerFolder);
        Assert.Equal(0, _home.Run("morning").ExitCode);
        using (var connection = new SqliteConnection($"Data Source={_home.Site.LedgerFile};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "DROP TABLE outbox; DROP TABLE notice; DROP TABLE day_litres; PRAGMA user_version = 1;";
            command.ExecuteNonQuery();
        }

        _home.Settings(server.Port);
        var advice = _home.Run("advice");
        Assert.True(advice.ExitCode == 0, advice.ToString());
        Assert.Contains("as-set", advice.Output, StringComparison.Ordinal);
        Assert.Contains("no sheet was mailed", _home.Run("mail").Output, StringComparison.Ordinal);
        using (var service = _home.Serve())
        {
            MailServer.WaitFor("the first look", () => _home.Log.Contains("work begins at", StringComparison.Ordinal));
            Assert.Equal(0, service.Stop());
        }

        Assert.DoesNotContain("held back", _home.Log, StringComparison.Ordinal);
        Assert.Equal(0, _home.Run("morning").ExitCode);
        Assert.Equal(MessageState.Sent, _home.StateOf(2));
        Assert.Single(server.Messages);
    }
}
