using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using Xunit;

namespace DailyAdjust.ServiceTests.Mail;

/// <summary>`serve` as a process against a real SMTP server that fails, and as a process that is killed.</summary>
public sealed class MailedServiceTests : IDisposable
{
    private readonly MailHome _home = new();

    public MailedServiceTests() => Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent by kill.");

    public void Dispose() => _home.Dispose();

    [Fact]
    public void A_server_that_is_down_gets_the_sheet_when_it_is_back()
    {
        using var server = new MailServer(_home.ServerFolder);
        server.Stop();
        _home.Settings(server.Port);
        using var service = _home.Serve();
        MailServer.WaitFor("a failed try", () => _home.Outbox is [{ Tries: > 0, Said.Length: > 0 }]);
        Assert.Contains("the line to 127.0.0.1", Assert.Single(_home.Outbox).Said, StringComparison.Ordinal);
        server.Start();
        MailServer.WaitFor("the sheet to be sent", () => _home.StateOf(1) == MessageState.Sent);
        Assert.Equal(0, service.Stop());
        Assert.Single(server.Messages);
        Assert.Contains("waiting for another try", _home.Log, StringComparison.Ordinal);
    }

    [Fact]
    public void Mail_that_was_held_back_by_its_folder_says_when_it_works_again()
    {
        using var server = new MailServer(_home.ServerFolder);
        _home.Settings(server.Port);
        var inTheWay = Directory.CreateDirectory(Path.Combine(_home.Site.Path, "outbox.lock"));
        using var service = _home.Serve();
        MailServer.WaitFor("the failure", () => _home.Log.Contains("its mail is held back", StringComparison.Ordinal));
        inTheWay.Delete();
        MailServer.WaitFor("the sheet to be sent", () => _home.StateOf(1) == MessageState.Sent);
        MailServer.WaitFor("the good news", () => _home.Log.Contains("its mail works again", StringComparison.Ordinal));
        Assert.Equal(0, service.Stop());
    }

    [Theory]
    [InlineData("drop-connect")]
    [InlineData("drop-rcpt")]
    [InlineData("450")]
    public void What_breaks_before_the_text_is_tried_again_and_arrives_once(string mode)
    {
        using var server = new MailServer(_home.ServerFolder);
        server.Behave(mode, mode, mode, "ok");
        _home.Settings(server.Port);
        using var service = _home.Serve();
        MailServer.WaitFor("the sheet to be sent", () => _home.StateOf(1) == MessageState.Sent);
        Assert.Equal(0, service.Stop());
        var promised = Assert.Single(_home.Outbox);
        Assert.Equal((4, 0), (promised.Tries, promised.Doubts));
        Assert.Equal(promised.MessageId, Assert.Single(server.Messages).MessageId);
    }

    [Fact]
    public void A_text_of_which_the_end_never_left_is_tried_as_often_as_it_takes_and_arrives_once()
    {
        // Far more than a line holds on its way, so that its end cannot have left when the server hangs up; a print of the page goes along where one lies beside it.
        using var server = new MailServer(_home.ServerFolder);
        server.Stop();
        _home.Settings(server.Port);
        Assert.Equal(0, _home.Run("morning").ExitCode);
        File.WriteAllBytes(Path.Combine(Assert.Single(Directory.GetDirectories(_home.Site.Reports)), "report.pdf"), new byte[16_000_000]);
        server.Start();
        server.Behave("drop-data", "drop-data", "drop-data", "ok");
        using var service = _home.Serve();
        MailServer.WaitFor("the sheet to be sent", () => _home.StateOf(1) == MessageState.Sent);
        Assert.Equal(0, service.Stop());
        Assert.Equal((5, 0), (_home.Outbox[0].Tries, _home.Outbox[0].Doubts));
        Assert.Equal(["round.csv", "report.html", "report.pdf"], Assert.Single(server.Messages).Attachments.Select(a => a.ContentDisposition!.FileName));
    }

    [Fact]
    public void A_line_that_breaks_in_a_short_text_leads_to_one_message()
    {
        // A short text may have left whole before the line was seen to break: then it is one repetition at most.
        using var server = new MailServer(_home.ServerFolder);
        server.Behave("drop-data", "ok");
        _home.Settings(server.Port);
        using var service = _home.Serve();
        MailServer.WaitFor("the sheet to be sent", () => _home.StateOf(1) == MessageState.Sent);
        Assert.Equal(0, service.Stop());
        Assert.Equal(2, _home.Outbox[0].Tries);
        Assert.Equal(_home.Outbox[0].MessageId, Assert.Single(server.Messages).MessageId);
    }

    [Theory]
    [InlineData("drop-after", 2)]
    [InlineData("lost", 1)]
    public void A_line_that_breaks_before_the_answer_leads_to_one_repetition_under_the_same_id(string mode, int copies)
    {
        using var server = new MailServer(_home.ServerFolder);
        server.Behave(mode, "ok");
        _home.Settings(server.Port);
        using var service = _home.Serve();
        MailServer.WaitFor("the sheet to be sent", () => _home.StateOf(1) == MessageState.Sent);
        Assert.Equal(0, service.Stop());
        Assert.Equal((2, 1), (_home.Outbox[0].Tries, _home.Outbox[0].Doubts));
        Assert.Equal(Enumerable.Repeat(_home.Outbox[0].MessageId, copies), server.Messages.Select(m => m.MessageId!));
    }

    [Fact]
    public void Broken_before_the_answer_twice_nobody_can_say_and_that_is_told()
    {
        using var server = new MailServer(_home.ServerFolder);
        server.Behave("drop-after", "drop-after", "ok");
        _home.Settings(server.Port);
        using (var service = _home.Serve())
        {
            MailServer.WaitFor("the end", () => _home.StateOf(1) == MessageState.Uncertain);
            Assert.Equal(0, service.Stop());
        }

        // Never a third time.
        Assert.Equal(0, _home.Run("mail", "--now").ExitCode);
        Assert.Equal(2, server.Messages.Count);
        Assert.Single(server.Messages.Select(m => m.MessageId).Distinct());
        Assert.Contains("perhaps arrived", _home.Run("mail").Output, StringComparison.Ordinal);
        Assert.Equal(0, _home.Run("morning").ExitCode);
        Assert.Contains("has perhaps not arrived: the line broke after the whole text and before the server's answer", _home.Report, StringComparison.Ordinal);
    }

    [Fact]
    [Trait("Promise", "1")]
    public void Killed_between_promise_and_text_it_sends_after_its_next_start()
    {
        using var server = new MailServer(_home.ServerFolder);
        server.Behave("hold-rcpt", "ok");
        _home.Settings(server.Port);
        using (var service = _home.Serve())
        {
            server.WaitForEvent("holding before the text");
            service.KillHard();
        }

        Assert.Equal(MessageState.Waiting, _home.StateOf(1));
        using (var again = _home.Serve())
        {
            MailServer.WaitFor("the sheet to be sent", () => _home.StateOf(1) == MessageState.Sent);
            Assert.Equal(0, again.Stop());
        }

        Assert.Equal(_home.Outbox[0].MessageId, Assert.Single(server.Messages).MessageId);
        Assert.Equal(0, _home.Outbox[0].Doubts);
    }

    [Fact]
    [Trait("Promise", "1")]
    public void Killed_between_text_and_mark_it_repeats_once_under_the_same_id()
    {
        using var server = new MailServer(_home.ServerFolder);
        server.Behave("hold-after", "ok");
        _home.Settings(server.Port);
        using (var service = _home.Serve())
        {
            server.WaitForEvent("taken");
            service.KillHard();
        }

        Assert.Equal(MessageState.HandedOver, _home.StateOf(1));
        using (var again = _home.Serve())
        {
            MailServer.WaitFor("the sheet to be sent", () => _home.StateOf(1) == MessageState.Sent);
            Assert.Equal(0, again.Stop());
        }

        Assert.Equal(2, server.Messages.Count);
        Assert.Equal(_home.Outbox[0].MessageId, Assert.Single(server.Messages.Select(m => m.MessageId).Distinct()));
    }

    [Fact]
    [Trait("Promise", "1")]
    public void Killed_there_twice_it_is_not_sent_a_third_time()
    {
        using var server = new MailServer(_home.ServerFolder);
        server.Behave("hold-after");
        _home.Settings(server.Port);
        for (var count = 1; count <= 2; count++)
        {
            using var service = _home.Serve();
            var wanted = count;
            MailServer.WaitFor("the text to be taken", () => server.Messages.Count == wanted);
            service.KillHard();
        }

        server.Behave("ok");
        using var last = _home.Serve();
        MailServer.WaitFor("the end", () => _home.StateOf(1) == MessageState.Uncertain);
        Assert.Equal(0, last.Stop());
        Assert.Equal(2, server.Messages.Count);
        Assert.Contains("perhaps arrived", _home.Log, StringComparison.Ordinal);
    }

    [Fact]
    public void A_server_that_hangs_holds_no_morning_up()
    {
        using var server = new MailServer(_home.ServerFolder);
        server.Behave("hang");
        _home.Settings(server.Port, ("TimeLimitSeconds", 600));
        using var service = _home.Serve();
        server.WaitForEvent("connected hang");

        // The look at the inbox goes on while the server is waited for, and so does the stop.
        File.Copy(ExampleSite.Weather, Path.Combine(_home.Site.Inbox, "yard-hourly.csv"));
        MailServer.WaitFor("the weather to be taken", () => File.Exists(Path.Combine(_home.Site.Taken, "yard-hourly.csv")));
        Assert.Equal(0, service.Stop());
        Assert.Equal((MessageState.Waiting, 0), (_home.StateOf(1)!.Value, _home.Outbox[0].Doubts));
    }

    [Fact]
    public void A_sheet_that_is_replaced_while_the_server_is_waited_for_is_not_handed_over()
    {
        using var server = new MailServer(_home.ServerFolder);
        server.Behave("hang", "ok");
        _home.Settings(server.Port, ("TimeLimitSeconds", 5));
        using var service = _home.Serve();
        server.WaitForEvent("connected hang");
        using (var ledger = SiteLedger.Open(_home.Site.LedgerFile, LedgerMode.Write))
        {
            var first = Assert.Single(ledger.Outbox.Open());
            var files = ledger.Sheets.ReportFiles(first.Date, 1).ToDictionary(f => f.Key, f => f.Value, StringComparer.Ordinal);
            ledger.Mornings.Begin(first.Date, first.PromisedAt, "1", "test");
            ledger.Mornings.RecordComputed(first.Date, 2, ledger.Sheets.Issued()[0].Lines, files);
            ledger.InOneStep(() =>
            {
                ledger.Mornings.RecordWritten(first.Date, 2);
                ledger.Outbox.Promise(first with { MessageId = "second@golf.example.net", Issue = 2 });
            });
        }

        MailServer.WaitFor("the newer sheet to be sent", () => _home.StateOf(2) == MessageState.Sent);
        Assert.Equal(0, service.Stop());
        Assert.Equal(MessageState.Replaced, _home.StateOf(1));
        Assert.Equal("second@golf.example.net", Assert.Single(server.Messages).MessageId);
        Assert.DoesNotContain("held back", _home.Log, StringComparison.Ordinal);
    }

    [Fact]
    public void A_password_that_cannot_be_had_is_told_at_start_and_the_sheet_is_made()
    {
        using var server = new MailServer(_home.ServerFolder, "127.0.0.1", user: "sheets", password: "x");
        _home.Settings(server.Port, ("Security", "starttls"), ("User", "sheets"), ("TrustedCertificateFile", server.CertificateFile));
        using var service = _home.Serve();
        MailServer.WaitFor("a failed try", () => _home.Outbox is [{ Tries: > 0, Said.Length: > 0 }]);
        Assert.Equal(0, service.Stop());
        Assert.Contains("Mail: the password of sheets is missing.", _home.Log, StringComparison.Ordinal);
        Assert.Contains("DAILYADJUST_MAIL_PASSWORD", Assert.Single(_home.Outbox).Said, StringComparison.Ordinal);
        Assert.Empty(server.Events);
    }
}
