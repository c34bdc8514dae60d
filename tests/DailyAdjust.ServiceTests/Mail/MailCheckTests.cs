using System.Text.Json.Nodes;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Service;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Mail;
using Xunit;

namespace DailyAdjust.ServiceTests.Mail;

/// <summary>The settings of mail, and the parts of mail that are pure.</summary>
public sealed class MailCheckTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void The_sample_holds_and_every_key_stands_in_it_and_in_the_page()
    {
        var sample = File.ReadAllText(Path.Combine(Repository.Root, "deploy", "appsettings.mail.sample.json"));
        var page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "mail.md"));
        File.WriteAllText(_home.Home.SettingsFile, sample);
        var mail = ServiceSettings.Read(_home.Home, []).Mail!;
        var defaults = new MailOptions();
        foreach (var property in typeof(MailOptions).GetProperties().Concat(typeof(RecipientOptions).GetProperties()))
        {
            Assert.Contains($"\"{property.Name}\"", sample, StringComparison.Ordinal);
            Assert.Contains($"`{property.Name}`", page, StringComparison.Ordinal);
        }

        Assert.Equal(
            (defaults.Security, defaults.AllowUnencrypted, defaults.TimeLimitSeconds, defaults.RetrySeconds, defaults.GiveUpAfterHours),
            (mail.Security, mail.AllowUnencrypted, mail.TimeLimitSeconds, mail.RetrySeconds, mail.GiveUpAfterHours));
        Assert.Equal(2, mail.Recipients.Count);
        Assert.Contains(MailPassword.Variable, page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Security", "\"ssl\"", "none of \"starttls\"")]
    [InlineData("Security", "\"none\"", "AllowUnencrypted")]
    [InlineData("Server", "\"\"", "Server is missing")]
    [InlineData("Port", "70000", "Port 70000")]
    [InlineData("From", "\"sheets\"", "From \"sheets\" is no address")]
    [InlineData("From", "\"sheets@example.net\\r\\nBcc: x@example.net\"", "is no address")]
    [InlineData("PasswordFile", "\"secret\"", "User is missing")]
    [InlineData("Recipients", "[]", "Recipients is empty")]
    [InlineData("Recipients", "[{\"To\": \"a@example.net, b@example.net\"}]", "not one address")]
    [InlineData("Recipients", "[{\"To\": \"a@example.net\"}, {\"To\": \"A@example.net\", \"Sites\": [\"x\"]}]", "stands twice")]
    [InlineData("Recipients", "[{\"To\": \"a@example.net\", \"Onlyifchange\": true}]", "Onlyifchange")]
    [InlineData("TimeLimitSeconds", "0", "TimeLimitSeconds 0")]
    [InlineData("RetrySeconds", "3601", "RetrySeconds 3601")]
    [InlineData("GiveUpAfterHours", "100", "GiveUpAfterHours 100")]
    [InlineData("Password", "\"hunter2\"", "does not belong into settings")]
    public void A_wrong_key_is_an_error_with_what_to_do(string key, string json, string said)
    {
        Settings((key, JsonNode.Parse(json)));
        var wrong = Assert.Throws<WrongInputException>(() => ServiceSettings.Read(_home.Home, []));
        Assert.Contains(said, wrong.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("hunter2", wrong.Message + wrong.Hint, StringComparison.Ordinal);
        Assert.NotEmpty(wrong.Hint);
    }

    [Theory]
    [InlineData("127.0.0.1", "", true)]
    [InlineData("::1", "", true)]
    [InlineData("localhost", "sheets", true)]
    [InlineData("mail.example.net", "", false)]
    [InlineData("127.0.0.1.example.net", "", false)]
    public void Without_encryption_only_this_machine_is_taken(string server, string user, bool holds)
    {
        var mail = new MailOptions { Server = server, User = user, Security = "none", From = "s@example.net", Recipients = [new RecipientOptions { To = "a@example.net" }] };
        Assert.Equal(holds, MailCheck.Problems(mail).Count == 0);
    }

    [Fact]
    public void Said_explicitly_a_server_elsewhere_may_go_without_but_never_with_a_password()
    {
        var mail = new MailOptions { Server = "relay.example.net", Security = "none", AllowUnencrypted = true, From = "s@example.net", Recipients = [new RecipientOptions { To = "a@example.net" }] };
        Assert.Empty(MailCheck.Problems(mail));
        mail.User = "sheets";
        Assert.Contains("the password", Assert.Single(MailCheck.Problems(mail)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_variable_that_holds_the_password_is_no_setting()
    {
        Settings();
        var start = new ProgramStart("mail", "--home", _home.Path) { Variables = new Dictionary<string, string>(StringComparer.Ordinal) { [MailPassword.Variable] = "hunter2" } };
        Directory.CreateDirectory(_home.EmptySite().Path);
        File.WriteAllText(_home.Home.Site("course").SiteFile, "site: {}");
        var result = RunningProgram.Run(start);
        Assert.True(result.ExitCode == 0, result.ToString());
    }

    [Theory]
    [InlineData("one\n", "one")]
    [InlineData("one two\r\n", "one two")]
    [InlineData("one\ntwo\n", null)]
    [InlineData("\n", null)]
    public void A_password_file_holds_the_password_alone(string content, string? password)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows takes the variable only.");
        var file = Path.Combine(_home.Path, "secret");
        File.WriteAllText(file, content);
        using (var chmod = System.Diagnostics.Process.Start("chmod", ["600", file]))
        {
            chmod.WaitForExit();
        }

        var mail = new MailOptions { User = "sheets", PasswordFile = "secret" };
        if (password is null)
        {
            Assert.Throws<WrongInputException>(() => MailPassword.Of(mail, _home.Home, _ => null));
        }
        else
        {
            Assert.Equal(password, MailPassword.Of(mail, _home.Home, _ => null));
            Assert.Equal("from the variable", MailPassword.Of(mail, _home.Home, _ => "from the variable"));
        }
    }

    [Fact]
    public void Pauses_double_up_to_an_hour()
    {
        var mail = new MailOptions();
        Assert.Equal([60, 120, 240, 480, 960, 1920, 3600, 3600], Enumerable.Range(1, 8).Select(n => MailPauses.After(n, mail).TotalSeconds));
        Assert.Equal(TimeSpan.FromHours(1), MailPauses.After(5000, mail));
    }

    [Fact]
    public void A_clock_that_was_set_back_makes_nobody_wait_for_years()
    {
        var now = new DateTimeOffset(2026, 6, 16, 10, 0, 0, TimeSpan.Zero);
        var message = new OutboxMessage("id", new DateOnly(2026, 6, 16), 1, "a@example.net", "s", now);
        Assert.True(MailPauses.IsDue(message with { NextTry = now }, now));
        Assert.False(MailPauses.IsDue(message with { NextTry = now.AddMinutes(59) }, now));
        Assert.True(MailPauses.IsDue(message with { NextTry = now.AddYears(1) }, now));
        Assert.False(MailPauses.IsTooOld(message, now.AddHours(24), new MailOptions()));
        Assert.True(MailPauses.IsTooOld(message, now.AddHours(24.1), new MailOptions()));
    }

    private void Settings(params (string Key, JsonNode? Value)[] more)
    {
        var mail = JsonNode.Parse("""{ "Server": "smtp.example.net", "From": "sheets@example.net", "Recipients": [ { "To": "super@example.net" } ] }""")!.AsObject();
        foreach (var (key, value) in more)
        {
            mail[key] = value;
        }

        File.WriteAllText(_home.Home.SettingsFile, new JsonObject { ["DailyAdjust"] = new JsonObject { ["Mail"] = mail } }.ToJsonString());
    }
}
