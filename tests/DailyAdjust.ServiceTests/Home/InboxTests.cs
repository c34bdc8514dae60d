using System.Diagnostics;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace DailyAdjust.ServiceTests.Home;

public sealed class InboxTests : IDisposable
{
    private readonly TestHome home = new();
    private readonly FakeTimeProvider time = new(DateTimeOffset.UtcNow);
    private readonly SiteFolder site;
    private readonly Inbox inbox;

    public InboxTests()
    {
        site = home.EmptySite();
        inbox = new Inbox(site, time);
    }

    public void Dispose() => home.Dispose();

    [Fact]
    public void A_file_is_taken_when_two_looks_saw_the_same_size()
    {
        Drop("yard-1.csv", "a,b\n");
        Assert.Empty(inbox.Look().Ready);
        Assert.Equal("yard-1.csv", Assert.Single(inbox.Look().Ready).Name);
    }

    [Fact]
    public void A_file_that_still_grows_waits()
    {
        var path = Drop("yard-1.csv", "a,b\n");
        Assert.Equal(1, inbox.Look().Waiting);
        File.AppendAllText(path, "1,2\n");
        Assert.Empty(inbox.Look().Ready);
        Assert.Single(inbox.Look().Ready);
    }

    [Fact]
    public void A_file_that_nobody_wrote_to_for_a_minute_is_taken_at_the_first_look()
    {
        var path = Drop("yard-1.csv", "a,b\n");
        File.SetLastWriteTimeUtc(path, time.GetUtcNow().UtcDateTime - Inbox.SettleTime - TimeSpan.FromSeconds(1));
        Assert.Single(inbox.Look().Ready);
    }

    [Fact]
    public void Files_come_in_ordinal_order_of_their_names()
    {
        foreach (var name in (string[])["b.csv", "a.csv", "C.csv", "á.csv"])
        {
            Drop(name, "x");
        }

        inbox.Look();
        Assert.Equal("C.csv a.csv b.csv á.csv", string.Join(' ', inbox.Look().Ready.Select(f => f.Name)));
    }

    [Fact]
    public void A_folder_is_left_alone_and_named_once()
    {
        Directory.CreateDirectory(Path.Combine(site.Inbox, "old data"));
        var sentence = Assert.Single(inbox.Look().Ignored);
        Assert.Contains("old data is a folder", sentence, StringComparison.Ordinal);
        Assert.Empty(inbox.Look().Ignored);
    }

    [Fact]
    public void The_inboxs_own_folders_and_hidden_files_are_not_mentioned()
    {
        Directory.CreateDirectory(site.Taken);
        Directory.CreateDirectory(site.Refused);
        Drop(".yard-1.csv.part", "x");
        var look = inbox.Look();
        Assert.Empty(look.Ignored);
        Assert.Empty(look.Ready);
        Assert.Equal(0, look.Waiting);
    }

    [Fact]
    public void A_missing_inbox_is_an_alarm_and_not_no_news()
    {
        Directory.Delete(site.Inbox);
        Assert.Throws<DirectoryNotFoundException>(() => inbox.Look());
    }

    [Fact]
    public void Two_files_of_the_same_name_are_both_kept()
    {
        Assert.Equal("yard-1.csv", TakeOne("yard-1.csv", "first"));
        Assert.Equal("yard-1.2.csv", TakeOne("yard-1.csv", "second"));
        Assert.Equal("yard-1.3.csv", TakeOne("yard-1.csv", "third"));
        Assert.Equal("first", File.ReadAllText(Path.Combine(site.Taken, "yard-1.csv")));
        Assert.Equal("second", File.ReadAllText(Path.Combine(site.Taken, "yard-1.2.csv")));
    }

    [Fact]
    public void A_refused_file_has_every_problem_beside_it()
    {
        Drop("yard-1.csv", "x");
        inbox.Look();
        inbox.MoveToRefused(inbox.Look().Ready[0], ["yard-1.csv:1:1: no header.", "yard-1.csv:2:3: not a number."]);
        var why = File.ReadAllText(Path.Combine(site.Refused, "yard-1.csv.why.txt"));
        Assert.Contains("yard-1.csv:1:1: no header.", why, StringComparison.Ordinal);
        Assert.Contains("yard-1.csv:2:3: not a number.", why, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(site.Refused, "yard-1.csv")));
        Assert.False(File.Exists(Path.Combine(site.Inbox, "yard-1.csv")));
    }

    [Fact]
    public void Taken_files_are_kept_from_the_day_they_were_taken()
    {
        TakeOne("yard-1.csv", "x");
        inbox.Tidy(TimeSpan.FromDays(60));
        Assert.True(File.Exists(Path.Combine(site.Taken, "yard-1.csv")));
        time.Advance(TimeSpan.FromDays(61));
        inbox.Tidy(TimeSpan.FromDays(60));
        Assert.False(File.Exists(Path.Combine(site.Taken, "yard-1.csv")));
    }

    [Fact]
    public void A_link_is_told_apart_before_a_byte_is_read()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights on Windows.");
        var secret = Path.Combine(home.Path, "secret.txt");
        File.WriteAllText(secret, "password");
        File.CreateSymbolicLink(Path.Combine(site.Inbox, "yard-1.csv"), secret);
        var file = Assert.Single(inbox.Look().Ready);
        var content = RegularFile.Read(file.Path, largest: 1_000_000);
        Assert.Equal(FileTrouble.Link, content.Trouble);
        Assert.Null(content.Bytes);
        inbox.MoveToRefused(file, [content.Why]);
        Assert.Equal("password", File.ReadAllText(secret));
        Assert.NotNull(new FileInfo(Path.Combine(site.Refused, "yard-1.csv")).LinkTarget);
    }

    [Fact]
    public void A_pipe_neither_blocks_nor_is_read()
    {
        Assert.SkipUnless(Posix(), "Pipes with a name are a Unix thing.");
        var pipe = Path.Combine(site.Inbox, "yard-1.csv");
        using (var maker = Process.Start("mkfifo", pipe))
        {
            maker.WaitForExit();
        }

        Assert.Equal(FileTrouble.NotRegular, RegularFile.Read(pipe, 1_000_000).Trouble);
    }

    [Fact]
    public void A_file_beyond_the_limit_is_not_read_into_memory()
    {
        var path = Path.Combine(site.Inbox, "yard-1.csv");
        using (var stream = File.Create(path))
        {
            stream.SetLength(300_000_000);
        }

        var content = RegularFile.Read(path, largest: 200_000_000);
        Assert.Equal(FileTrouble.TooLarge, content.Trouble);
        Assert.Contains("300 MB", content.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_went_away_is_no_error()
    {
        Assert.Equal(FileTrouble.Vanished, RegularFile.Read(Path.Combine(site.Inbox, "gone.csv"), 1_000_000).Trouble);
    }

    [Fact]
    public void A_written_file_leaves_no_temporary_one_behind()
    {
        var path = Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 9)), "report.txt");
        AtomicFile.Write(path, "first");
        AtomicFile.Write(path, "second");
        Assert.Equal("second", File.ReadAllText(path));
        Assert.Single(Directory.GetFiles(Path.GetDirectoryName(path)!));
    }

    private static bool Posix() => OperatingSystem.IsLinux() || OperatingSystem.IsMacOS();

    private string Drop(string name, string text)
    {
        var path = Path.Combine(site.Inbox, name);
        File.WriteAllText(path, text);
        return path;
    }

    private string TakeOne(string name, string text)
    {
        Drop(name, text);
        inbox.Look();
        return inbox.MoveToTaken(Assert.Single(inbox.Look().Ready));
    }
}
