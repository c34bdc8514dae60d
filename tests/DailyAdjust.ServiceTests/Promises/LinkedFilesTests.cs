using System.Net.Sockets;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>What is no plain file in the inbox: links are refused as links, and what would never end or never begin is left alone and told; none of it holds up a file beside it, or the sheet.</summary>
[Trait("Promise", "4")]
public sealed class LinkedFilesTests : IDisposable
{
    private const string Secret = "the greenkeeper's password";

    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public LinkedFilesTests()
    {
        Tool.Need("gcc", "mkfifo", "mknod", "ln");
        _site = ExampleSite.PutInto(_home);
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Links_pipes_devices_and_folders_give_nothing_and_hold_up_nothing()
    {
        var secret = Path.Combine(_home.Path, "secret.txt");
        File.WriteAllText(secret, Secret);
        var hard = Path.Combine(_home.Path, "logger.csv");
        File.WriteAllText(hard, File.ReadAllText(ExampleSite.Weather));
        File.CreateSymbolicLink(In("yard-link.csv"), secret);
        File.CreateSymbolicLink(In("yard-dangling.csv"), Path.Combine(_home.Path, "nowhere"));
        File.CreateSymbolicLink(In("yard-loop.csv"), In("yard-loop.csv"));
        Directory.CreateSymbolicLink(In("yard-folder-link.csv"), _home.Path);
        Directory.CreateDirectory(In("yard-folder.csv"));
        Assert.Equal(0, Tool.Run("mkfifo", In("yard-pipe.csv")).ExitCode);
        Assert.SkipWhen(Tool.Run("mknod", In("yard-device.csv"), "c", "1", "5").ExitCode != 0, "The right to make a device");
        Assert.Equal(0, Tool.Run("ln", hard, In("yard-hard.csv")).ExitCode);
        using var socket = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        socket.Bind(new UnixDomainSocketEndPoint(In("yard-socket.csv")));

        using var clock = new MovedClock(new DateTimeOffset(2026, 6, 10, 9, 30, 0, TimeSpan.Zero));
        using var service = new Served(_home, clock.Variables);
        Served.WaitFor("the hard link, which is a file", () => File.Exists(Path.Combine(_site.Taken, "yard-hard.csv")));
        service.LetItLook(_site);
        clock.Set(new DateTimeOffset(2026, 6, 10, 9, 51, 0, TimeSpan.Zero));
        Served.WaitFor("the sheet", () => Served.IsOut(_site, new(2026, 6, 10)));
        service.Stop();

        Assert.NotNull(new FileInfo(Path.Combine(_site.Refused, "yard-link.csv")).LinkTarget);
        Assert.Contains("links are not followed", File.ReadAllText(Path.Combine(_site.Refused, "yard-link.csv.why.txt")), StringComparison.Ordinal);
        var sheet = Served.Sheet(_site, new(2026, 6, 10));
        foreach (var link in (string[])["yard-dangling.csv", "yard-loop.csv", "yard-folder-link.csv"])
        {
            // As a link beside the refused files, or named on the sheet where it cannot be moved.
            Assert.True(new FileInfo(Path.Combine(_site.Refused, link)).LinkTarget is not null || sheet.Contains(link + " is left in the inbox: It is a link", StringComparison.Ordinal), link);
        }

        foreach (var left in (string[])["yard-pipe.csv", "yard-socket.csv"])
        {
            Assert.True(Path.Exists(In(left)), left);
            Assert.Contains(left + " is left in the inbox", sheet, StringComparison.Ordinal);
        }

        // A device that can be wound back looks like an empty file.
        Assert.Contains("it is empty", File.ReadAllText(Path.Combine(_site.Refused, "yard-device.csv.why.txt")), StringComparison.Ordinal);
        Assert.True(Directory.Exists(In("yard-folder.csv")));
        Assert.Contains("yard-folder.csv is a folder", service.Log(), StringComparison.Ordinal);
        Assert.Equal(File.ReadAllText(ExampleSite.Weather), File.ReadAllText(hard));
        Assert.Contains("Weather through 05:00", sheet, StringComparison.Ordinal);

        // Not through the links themselves.
        foreach (var folder in (string[])[_site.Inbox, _site.Refused])
        {
            File.Delete(Path.Combine(folder, "yard-folder-link.csv"));
        }

        // Not in the ledger, not in a report, not in a log; where it stood it still stands.
        Assert.Equal(Secret, File.ReadAllText(secret));
        Assert.All(
            Directory.GetFiles(_home.Path, "*", SearchOption.AllDirectories).Where(f => !string.Equals(f, secret, StringComparison.Ordinal) && new FileInfo(f) is { LinkTarget: null, Length: > 0 }),
            file => Assert.DoesNotContain(Secret, File.ReadAllText(file), StringComparison.Ordinal));
        Tried.Held(4, "links, pipes, devices, sockets, folders", 9);
    }

    private string In(string name) => Path.Combine(_site.Inbox, name);
}
