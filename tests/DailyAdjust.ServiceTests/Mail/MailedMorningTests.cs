using System.Text.Json.Nodes;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Service.Mail;
using DailyAdjust.Service.Sites;
using MimeKit;
using Xunit;

namespace DailyAdjust.ServiceTests.Mail;

/// <summary>`morning` by hand with mail set up, as a process, against a real SMTP server.</summary>
public sealed class MailedMorningTests : IDisposable
{
    private const string Password = "hunter two äöü 4711";

    private readonly MailHome _home = new();

    public void Dispose() => _home.Dispose();

    [Trait("Promise", "11")]
    [Fact]
    public void Over_STARTTLS_and_a_login_the_sheet_arrives_whole_and_the_password_stands_nowhere()
    {
        using var server = new MailServer(_home.ServerFolder, "127.0.0.1", user: "sheets", password: Password);
        Secured(server);
        var morning = _home.Run("morning");
        Assert.True(morning.ExitCode == 0, morning.ToString());
        Assert.Contains("to super@example.com: sent: ", morning.Output, StringComparison.Ordinal);
        Assert.Contains("login right", server.Events);

        var message = Assert.Single(server.Messages);
        var promised = Assert.Single(_home.Outbox);
        Assert.Equal((MessageState.Sent, 1, 0), (promised.State, promised.Tries, promised.Doubts));
        Assert.Equal(promised.MessageId, message.MessageId);
        Assert.EndsWith("@golf.example.net", message.MessageId, StringComparison.Ordinal);
        Assert.Equal(("sheets@golf.example.net", "super@example.com"), (message.Headers["X-From"], message.Headers["X-To"]));
        Assert.Equal(MailHome.Super, Assert.Single(message.To.Mailboxes).Address);
        Assert.StartsWith("Tamarack Flats Municipal, ", message.Subject, StringComparison.Ordinal);
        Assert.EndsWith(": no sound advice, leave every dial as it is set", message.Subject, StringComparison.Ordinal);

        var folder = Directory.GetDirectories(_home.Site.Reports).Single();
        Assert.Equal(File.ReadAllText(Path.Combine(folder, "report.txt")), Lf(message.TextBody));
        Assert.Equal(File.ReadAllText(Path.Combine(folder, "report.html")), Lf(message.HtmlBody));
        Assert.IsType<MultipartAlternative>(Assert.IsType<Multipart>(message.Body, exactMatch: false)[0]);
        Assert.Equal(["round.csv", "report.html"], message.Attachments.Cast<MimePart>().Select(a => a.FileName));
        Assert.All(message.Attachments.Cast<MimePart>(), a => Assert.Equal(File.ReadAllBytes(Path.Combine(folder, a.FileName!)), Bytes(a)));
        AssertNoPassword(morning);
    }

    [Fact]
    public void Files_beside_the_sheet_that_cannot_be_read_hold_no_mail()
    {
        using var server = new MailServer(_home.ServerFolder);
        _home.Settings(server.Port, ("Security", "none"));
        server.Behave("450");
        Assert.Equal(0, _home.Run("morning").ExitCode);
        server.Behave("ok");
        var folder = Directory.GetDirectories(_home.Site.Reports).Single();
        File.WriteAllText(Path.Combine(folder, "report.pdf"), "%PDF-1.4");
        using (new FileStream(Path.Combine(folder, "report.pdf"), FileMode.Open, FileAccess.ReadWrite, FileShare.None))
        {
            var sent = _home.Run("mail", "--now");
            Assert.True(sent.ExitCode == 0, sent.ToString());
        }

        Assert.Equal(["round.csv", "report.html"], Assert.Single(server.Messages).Attachments.Cast<MimePart>().Select(a => a.FileName));
        Assert.Matches("the mail goes without \\{File\\}.*\"File\":\"report.pdf\"", _home.Log);
    }

    [Fact]
    public void Mail_that_another_process_sends_just_now_is_not_called_sent()
    {
        using var server = new MailServer(_home.ServerFolder);
        _home.Settings(server.Port, ("Security", "none"));
        server.Behave("450");
        Assert.Equal(0, _home.Run("morning").ExitCode);
        server.Behave("ok");
        using (SendingLock.Take(_home.Site))
        {
            var now = _home.Run("mail", "--now");
            Assert.Equal(1, now.ExitCode);
            Assert.Contains("the running service is sending its mail just now, so nothing was tried here", now.Error, StringComparison.Ordinal);
        }

        Assert.Equal(0, _home.Run("mail", "--now").ExitCode);
    }

    [Fact]
    public async Task However_the_line_ends_after_the_answer_the_answer_counts()
    {
        await SmtpDelivery.LeaveAsync(_ => throw new InvalidOperationException("nobody expected this"));
        await SmtpDelivery.LeaveAsync(async stop => await Task.FromException(new ObjectDisposedException("line")));
    }

    [Fact]
    public void A_server_that_does_not_trust_the_login_is_told_and_what_it_repeats_is_not()
    {
        const string wrong = "plain-4711";
        using var server = new MailServer(_home.ServerFolder, "127.0.0.1", user: "sheets", password: "another");
        Secured(server, wrong);
        var morning = _home.Run("morning");
        Assert.True(morning.ExitCode == 0, morning.ToString());
        Assert.Contains("login wrong", server.Events);
        Assert.Contains("waiting for another try: 127.0.0.1:", morning.Error, StringComparison.Ordinal);
        Assert.Contains("does not accept the login of sheets", morning.Error, StringComparison.Ordinal);
        Assert.Contains("dailyadjust mail --now", morning.Error, StringComparison.Ordinal);
        AssertNoPassword(morning, wrong);

        // The sheet that comes next says so.
        AssertNoPassword(_home.Run("morning"), wrong);
        Assert.Contains("to super@example.com has not gone out yet, 1 try so far: 127.0.0.1:", _home.Report, StringComparison.Ordinal);
        Assert.Contains("does not accept the login of sheets", _home.Report, StringComparison.Ordinal);
        Assert.Empty(server.Messages);
        Assert.Contains("(password)", _home.Log, StringComparison.Ordinal);
    }

    [Fact]
    public void A_certificate_that_nobody_trusts_gets_no_sheet_and_no_password()
    {
        using var server = new MailServer(_home.ServerFolder, "127.0.0.1", user: "sheets", password: Password);
        Secured(server);
        _home.Settings(server.Port, ("Security", "starttls"), ("User", "sheets"), ("PasswordFile", "mail-password"));
        var morning = _home.Run("morning");
        Assert.Equal(0, morning.ExitCode);
        Assert.Contains("is not trusted: its certificate is signed by nobody whom this machine trusts", morning.Error, StringComparison.Ordinal);
        Assert.DoesNotContain(server.Events, e => e.StartsWith("login", StringComparison.Ordinal));
        Assert.Empty(server.Messages);
        Assert.Equal(MessageState.Waiting, _home.StateOf(1));
        Assert.Contains("is not trusted", _home.Log, StringComparison.Ordinal);

        // Put right, it goes out.
        Secured(server);
        var now = _home.Run("mail", "--now");
        Assert.True(now.ExitCode == 0, now.ToString());
        Assert.Single(server.Messages);
    }

    [Fact]
    public void A_certificate_for_another_name_is_refused_though_it_is_trusted()
    {
        using var server = new MailServer(_home.ServerFolder, "mail.example.net", tls: true);
        _home.Settings(server.Port, ("Security", "tls"), ("TrustedCertificateFile", server.CertificateFile));
        Assert.Contains("its certificate is for another name", _home.Run("morning").Error, StringComparison.Ordinal);
        Assert.Empty(server.Messages);
    }

    [Fact]
    public void A_line_encrypted_from_the_first_byte_takes_a_test_message()
    {
        using var server = new MailServer(_home.ServerFolder, "127.0.0.1", tls: true);
        _home.Settings(server.Port, ("Security", "tls"), ("TrustedCertificateFile", server.CertificateFile));
        var test = _home.Run("mail", "--test", "anna@example.com");
        Assert.True(test.ExitCode == 0, test.ToString());
        Assert.Contains("Sent to anna@example.com by 127.0.0.1:", test.Output, StringComparison.Ordinal);
        Assert.Contains("The server answered: taken as 1", test.Output, StringComparison.Ordinal);
        Assert.Equal("DailyAdjust: test of mail", Assert.Single(server.Messages).Subject);
        server.Behave("550");
        var refused = _home.Run("mail", "--test", "anna@example.com");
        Assert.Equal(1, refused.ExitCode);
        Assert.Contains("answers 550 5.1.1 nobody of that name here.", refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_server_without_STARTTLS_gets_nothing()
    {
        using var server = new MailServer(_home.ServerFolder);
        _home.Settings(server.Port, ("Security", "starttls"));
        Assert.Contains("does not offer what is needed", _home.Run("morning").Error, StringComparison.Ordinal);
        Assert.Empty(server.Messages);
    }

    [Theory]
    [InlineData("550", "550 5.1.1 nobody of that name here")]
    [InlineData("554", "554 5.6.0 not such a text")]
    public void A_refusal_for_good_is_told_and_not_tried_again(string mode, string said)
    {
        using var server = new MailServer(_home.ServerFolder);
        server.Behave(mode);
        _home.Settings(server.Port);
        var morning = _home.Run("morning");
        Assert.Equal(0, morning.ExitCode);
        Assert.Contains($"to super@example.com: refused: 127.0.0.1:{server.Port} answers {said}", morning.Error, StringComparison.Ordinal);
        Assert.Equal(0, _home.Run("mail", "--now").ExitCode);
        Assert.Single(server.Events, e => e.StartsWith("connected", StringComparison.Ordinal));
        Assert.Contains(said, _home.Run("mail").Output, StringComparison.Ordinal);

        server.Behave("ok");
        Assert.Equal(0, _home.Run("morning").ExitCode);
        Assert.Contains($"to super@example.com has been refused and is not tried again: 127.0.0.1:{server.Port} answers {said}", _home.Report, StringComparison.Ordinal);
        Assert.Contains("issue 2 (replaces issue 1)", Assert.Single(server.Messages).Subject, StringComparison.Ordinal);
    }

    [Fact]
    public void One_recipient_that_is_refused_keeps_the_other_from_nothing()
    {
        using var server = new MailServer(_home.ServerFolder);
        server.Behave("550", "ok");
        _home.Settings(server.Port, ("Recipients", new JsonArray(new JsonObject { ["To"] = "a@example.com" }, new JsonObject { ["To"] = "b@example.com" }, new JsonObject { ["To"] = "c@example.com", ["Sites"] = new JsonArray("elsewhere") })));
        var morning = _home.Run("morning");
        Assert.Equal(0, morning.ExitCode);
        Assert.Equal([MessageState.Refused, MessageState.Sent], _home.Outbox.Select(m => m.State).Order().Reverse());
        Assert.Single(server.Messages);
        Assert.Contains("there is no such site", _home.Run("check").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_password_file_that_others_can_read_is_not_used_and_the_sheet_is_there_all_the_same()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has other rights.");
        using var server = new MailServer(_home.ServerFolder, "127.0.0.1", user: "sheets", password: Password);
        Secured(server);
        var file = Path.Combine(_home.Path, "mail-password");
        Rights(file, "640");
        var check = _home.Run("check");
        Assert.Equal(2, check.ExitCode);
        Assert.Contains($"chmod 600 {file}", check.Output, StringComparison.Ordinal);
        var morning = _home.Run("morning");
        Assert.Equal(0, morning.ExitCode);
        Assert.Contains($"chmod 600 {file}", morning.Error, StringComparison.Ordinal);
        Assert.Empty(server.Events);
        Assert.Contains("no sound advice", _home.Report, StringComparison.OrdinalIgnoreCase);

        // The variable needs no file.
        _home.Variables["DAILYADJUST_MAIL_PASSWORD"] = Password;
        Assert.Equal(0, _home.Run("mail", "--now").ExitCode);
        Assert.Single(server.Messages);
    }

    [Fact]
    public void A_server_that_never_answers_holds_the_command_up_for_its_time_limit_only()
    {
        using var server = new MailServer(_home.ServerFolder);
        server.Behave("hang", "ok");
        _home.Settings(server.Port, ("TimeLimitSeconds", 2));
        var morning = _home.Run("morning");
        Assert.Equal(0, morning.ExitCode);
        Assert.Contains("did not finish within 2 s", morning.Error, StringComparison.Ordinal);
        Assert.Contains("sheet", morning.Output, StringComparison.Ordinal);
        Assert.Equal(0, _home.Run("mail", "--now").ExitCode);
        Assert.Single(server.Messages);
        Assert.Contains("sent (2 tries)", _home.Run("mail").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_that_would_be_a_header_is_only_a_name()
    {
        using var server = new MailServer(_home.ServerFolder);
        MailHome.Edit(_home.Site.SiteFile, "Tamarack Flats Municipal", "Größe \\u2028=?utf-8?q?x?= <script> 高尔夫");
        var yaml = File.ReadAllText(_home.Site.SiteFile);
        var line = yaml.Split('\n').Single(l => l.Contains("高尔夫", StringComparison.Ordinal));
        File.WriteAllText(_home.Site.SiteFile, yaml.Replace(line, "  name: \"Größe\\r\\nBcc: evil@example.org\\r\\n\\r\\n<script> =cmd() 高尔夫\"", StringComparison.Ordinal));
        _home.Settings(server.Port);
        var morning = _home.Run("morning");
        Assert.True(morning.ExitCode == 0, morning.ToString());
        var message = Assert.Single(server.Messages);
        Assert.Null(message.Headers["Bcc"]);
        Assert.Equal(MailHome.Super, message.Headers["X-To"]);
        Assert.StartsWith("Größe Bcc: evil@example.org <script> =cmd() 高尔夫, ", message.Subject, StringComparison.Ordinal);
        Assert.DoesNotContain("<script> =cmd()", message.HtmlBody, StringComparison.Ordinal);
        Assert.Equal(2, message.Attachments.Count());
    }

    [Fact]
    public void A_past_day_a_wish_for_no_mail_and_the_demo_mail_nothing()
    {
        using var server = new MailServer(_home.ServerFolder);
        _home.Settings(server.Port);
        Assert.Equal(0, _home.Run("morning", "--date", "2026-06-10").ExitCode);
        Assert.Equal(0, _home.Run("morning", "--no-mail").ExitCode);
        Assert.Equal(0, _home.Run("demo").ExitCode);
        Assert.Empty(_home.Outbox);
        Assert.Empty(server.Events);
        Assert.Contains("no sheet was mailed", _home.Run("mail").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_that_a_crash_left_is_promised_even_where_the_next_one_is_not_mailed()
    {
        using var server = new MailServer(_home.ServerFolder);
        _home.Settings(server.Port);
        Assert.Equal(0, _home.Run("morning", "--no-mail").ExitCode);
        using (var ledger = SiteLedger.Open(_home.Site.LedgerFile, LedgerMode.Write))
        {
            // As a program leaves it that is killed while it reckons issue 2.
            var first = ledger.Mornings.Last()!;
            ledger.Mornings.Begin(first.Date, first.AsOf, CalculationVersions.Calculation, CalculationVersions.TimeZones);
        }

        Assert.Equal(0, _home.Run("morning", "--no-mail").ExitCode);
        var message = Assert.Single(_home.Outbox);
        Assert.Equal((2, MessageState.Waiting), (message.Issue, message.State));
        Assert.Empty(server.Events);
    }

    [Fact]
    public void Two_properties_that_call_their_site_alike_have_messages_of_their_own()
    {
        using var server = new MailServer(_home.ServerFolder);
        using var other = new MailHome();
        MailHome.Edit(other.Site.SiteFile, "name: Tamarack", "name: West Tamarack");
        foreach (var home in new[] { _home, other })
        {
            home.Settings(server.Port);
            Assert.Equal(0, home.Run("morning").ExitCode);
        }

        Assert.NotEqual(Assert.Single(_home.Outbox).MessageId, Assert.Single(other.Outbox).MessageId);
    }

    private static string Lf(string? text) => text!.Replace("\r\n", "\n", StringComparison.Ordinal);

    private static byte[] Bytes(MimePart part)
    {
        using var bytes = new MemoryStream();
        part.Content!.DecodeTo(bytes);
        return bytes.ToArray();
    }

    private static void Rights(string file, string mode)
    {
        using var chmod = System.Diagnostics.Process.Start("chmod", [mode, file]);
        chmod.WaitForExit();
        Assert.Equal(0, chmod.ExitCode);
    }

    private void Secured(MailServer server, string password = Password)
    {
        var file = Path.Combine(_home.Path, "mail-password");
        File.WriteAllText(file, password + "\n");
        Rights(file, "600");
        _home.Settings(server.Port, ("Security", "starttls"), ("User", "sheets"), ("PasswordFile", "mail-password"), ("TrustedCertificateFile", server.CertificateFile));
    }

    /// <summary>As it is, and as a login sends it.</summary>
    private void AssertNoPassword(ProgramResult result, string password = Password)
    {
        string[] forms = [password, Base64(password), Base64($"\0sheets\0{password}")];
        var files = new[] { _home.Site.Path, _home.Home.LogsFolder }.SelectMany(folder => Directory.GetFiles(folder, "*", SearchOption.AllDirectories)).ToList();
        Assert.Contains(files, f => f.EndsWith(".json", StringComparison.Ordinal));
        Assert.Contains(files, f => f.EndsWith("ledger.db", StringComparison.Ordinal));
        foreach (var form in forms)
        {
            Assert.DoesNotContain(form, result.ToString(), StringComparison.Ordinal);
            Assert.All(files, file => Assert.Equal(-1, File.ReadAllBytes(file).AsSpan().IndexOf(System.Text.Encoding.UTF8.GetBytes(form))));
        }
    }

    private static string Base64(string text) => Convert.ToBase64String(System.Text.Encoding.UTF8.GetBytes(text));
}
