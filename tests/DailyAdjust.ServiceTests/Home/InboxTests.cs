using System.Diagnostics;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace DailyAdjust.ServiceTests.Home;

[Trait("Promise", "4")]
public sealed class InboxTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly FakeTimeProvider _time = new(DateTimeOffset.UtcNow);
    private readonly SiteFolder _site;
    private readonly Inbox _inbox;

    public InboxTests()
    {
        _site = _home.EmptySite();
        _inbox = new Inbox(_site, _time);
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public void A_file_is_taken_when_two_looks_saw_the_same_size()
    {
        Drop("yard-1.csv", "a,b\n");
        Assert.Empty(_inbox.Look().Ready);
        Assert.Equal("yard-1.csv", Assert.Single(_inbox.Look().Ready).Name);
    }

    [Fact]
    public void A_file_that_still_grows_waits()
    {
        var path = Drop("yard-1.csv", "a,b\n");
        Assert.Equal(1, _inbox.Look().Waiting);
        File.AppendAllText(path, "1,2\n");
        Assert.Empty(_inbox.Look().Ready);
        Assert.Single(_inbox.Look().Ready);
    }

    [Fact]
    public void A_file_that_nobody_wrote_to_for_a_minute_is_taken_at_the_first_look()
    {
        var path = Drop("yard-1.csv", "a,b\n");
        File.SetLastWriteTimeUtc(path, _time.GetUtcNow().UtcDateTime - StillFiles.SettleTime - TimeSpan.FromSeconds(1));
        Assert.Single(_inbox.Look().Ready);
    }

    [Fact]
    public void Files_come_in_ordinal_order_of_their_names()
    {
        foreach (var name in (string[])["b.csv", "a.csv", "C.csv", "á.csv"])
        {
            Drop(name, "x");
        }

        _inbox.Look();
        Assert.Equal("C.csv a.csv b.csv á.csv", string.Join(' ', _inbox.Look().Ready.Select(f => f.Name)));
    }

    [Fact]
    public void A_folder_is_left_alone_and_named_once()
    {
        Directory.CreateDirectory(Path.Combine(_site.Inbox, "old data"));
        var sentence = Assert.Single(_inbox.Look().Ignored);
        Assert.Contains("old data is a folder", sentence, StringComparison.Ordinal);
        Assert.Empty(_inbox.Look().Ignored);
    }

    [Fact]
    public void The_inboxs_own_folders_and_hidden_files_are_not_mentioned()
    {
        Directory.CreateDirectory(_site.Taken);
        Directory.CreateDirectory(_site.Refused);
        Drop(".yard-1.csv.part", "x");
        var look = _inbox.Look();
        Assert.Empty(look.Ignored);
        Assert.Empty(look.Ready);
        Assert.Equal(0, look.Waiting);
    }

    [Fact]
    public void A_missing_inbox_is_an_alarm_and_not_no_news()
    {
        Directory.Delete(_site.Inbox);
        Assert.Equal("is not there", _inbox.Look().Trouble);
        Directory.CreateDirectory(_site.Inbox);
        Assert.Null(_inbox.Look().Trouble);
    }

    [Fact]
    public void Two_files_of_the_same_name_are_both_kept()
    {
        Assert.Equal("yard-1.csv", TakeOne("yard-1.csv", "first"));
        Assert.Equal("yard-1.2.csv", TakeOne("yard-1.csv", "second"));
        Assert.Equal("yard-1.3.csv", TakeOne("yard-1.csv", "third"));
        Assert.Equal("first", File.ReadAllText(Path.Combine(_site.Taken, "yard-1.csv")));
        Assert.Equal("second", File.ReadAllText(Path.Combine(_site.Taken, "yard-1.2.csv")));
    }

    [Fact]
    public void A_refused_file_has_every_problem_beside_it()
    {
        Drop("yard-1.csv", "x");
        _inbox.Look();
        _inbox.MoveToRefused(_inbox.Look().Ready[0], ["yard-1.csv:1:1: no header.", "yard-1.csv:2:3: not a number."]);
        var why = File.ReadAllText(Path.Combine(_site.Refused, "yard-1.csv.why.txt"));
        Assert.Contains("yard-1.csv:1:1: no header.", why, StringComparison.Ordinal);
        Assert.Contains("yard-1.csv:2:3: not a number.", why, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_site.Refused, "yard-1.csv")));
        Assert.False(File.Exists(Path.Combine(_site.Inbox, "yard-1.csv")));
    }

    [Fact]
    public void Taken_files_are_kept_from_the_day_they_were_taken()
    {
        TakeOne("yard-1.csv", "x");
        _inbox.Tidy(TimeSpan.FromDays(60));
        Assert.True(File.Exists(Path.Combine(_site.Taken, "yard-1.csv")));
        _time.Advance(TimeSpan.FromDays(61));
        _inbox.Tidy(TimeSpan.FromDays(60));
        Assert.False(File.Exists(Path.Combine(_site.Taken, "yard-1.csv")));
    }

    [Fact]
    public void A_link_is_told_apart_before_a_byte_is_read()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights on Windows.");
        var secret = Path.Combine(_home.Path, "secret.txt");
        File.WriteAllText(secret, "password");
        File.CreateSymbolicLink(Path.Combine(_site.Inbox, "yard-1.csv"), secret);
        var file = Assert.Single(_inbox.Look().Ready);
        var content = RegularFile.Read(file.Path, largest: 1_000_000);
        Assert.Equal(FileTrouble.Link, content.Trouble);
        Assert.Null(content.Bytes);
        _inbox.MoveToRefused(file, [content.Why]);
        Assert.Equal("password", File.ReadAllText(secret));
        Assert.NotNull(new FileInfo(Path.Combine(_site.Refused, "yard-1.csv")).LinkTarget);
    }

    [Fact]
    public void A_pipe_neither_blocks_nor_is_read()
    {
        Assert.SkipUnless(Posix(), "Pipes with a name are a Unix thing.");
        var pipe = Path.Combine(_site.Inbox, "yard-1.csv");
        using (var maker = Process.Start("mkfifo", pipe))
        {
            maker.WaitForExit();
        }

        Assert.Equal(FileTrouble.NotRegular, RegularFile.Read(pipe, 1_000_000).Trouble);
    }

    [Fact]
    public void A_file_beyond_the_limit_is_not_read_into_memory()
    {
        var path = Path.Combine(_site.Inbox, "yard-1.csv");
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
        Assert.Equal(FileTrouble.Vanished, RegularFile.Read(Path.Combine(_site.Inbox, "gone.csv"), 1_000_000).Trouble);
    }

    [Fact]
    public void A_written_file_leaves_no_temporary_one_behind()
    {
        var path = Path.Combine(_site.ReportFolder(new DateOnly(2026, 6, 9)), "report-full.txt");
        AtomicFile.Write(path, "first");
        AtomicFile.Write(path, "second");
        Assert.Equal("second", File.ReadAllText(path));
        Assert.Single(Directory.GetFiles(Path.GetDirectoryName(path)!));
    }

    private static bool Posix() => OperatingSystem.IsLinux() || OperatingSystem.IsMacOS();

    private string Drop(string name, string text)
    {
        var path = Path.Combine(_site.Inbox, name);
        File.WriteAllText(path, text);
        return path;
    }

    private string TakeOne(string name, string text)
    {
        Drop(name, text);
        _inbox.Look();
        return _inbox.MoveToTaken(Assert.Single(_inbox.Look().Ready), [])!;
    }
}
