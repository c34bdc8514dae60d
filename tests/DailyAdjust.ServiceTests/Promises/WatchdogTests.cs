using System.Diagnostics;
using System.Net.Sockets;
using System.Text;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>Under systemd: ready when it is, and a beat for the watchdog as long as its looks come to an end (sd_notify(3)).</summary>
[Trait("Promise", "9")]
public sealed class WatchdogTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void The_manager_hears_ready_beats_and_stopping()
    {
        Assert.SkipWhen(!OperatingSystem.IsLinux(), "systemd is Linux's");
        ExampleSite.PutInto(_home);
        var path = Path.Combine(_home.Path, "notify");
        using var socket = new Socket(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified) { ReceiveTimeout = (int)Patience.TotalMilliseconds };
        socket.Bind(new UnixDomainSocketEndPoint(path));

        // Who is watched is told by the name of its parent.
        var manager = Path.Combine(_home.Path, "systemd");
        File.CreateSymbolicLink(manager, "/bin/sh");
        var info = new ProcessStartInfo(manager, ["-c", "\"$0\" \"$@\" > /dev/null 2>&1 & echo $!; wait $!", RunningProgram.Path, "serve", "--home", _home.Path, "--set", "PollSeconds=1", "--set", "Pdf=never"])
        {
            UseShellExecute = false,
            RedirectStandardOutput = true,
        };
        info.Environment["NOTIFY_SOCKET"] = path;
        info.Environment["WATCHDOG_USEC"] = "8000000";
        using var shell = Process.Start(info)!;
        try
        {
            var service = shell.StandardOutput.ReadLine()!;
            var heard = new List<string>();
            Hear(socket, heard, () => Beats(heard) >= 2 && heard.Contains("READY=1", StringComparer.Ordinal));
            Tool.Run("/bin/kill", "-TERM", service);
            Hear(socket, heard, () => heard.Contains("STOPPING=1", StringComparer.Ordinal));
            Assert.True(shell.WaitForExit(Patience));
            Assert.Equal(0, shell.ExitCode);
            Tried.Held(9, "beats for the watchdog", Beats(heard));
        }
        finally
        {
            shell.Kill(entireProcessTree: true);
        }
    }

    private static int Beats(List<string> heard) => heard.Count(h => string.Equals(h, "WATCHDOG=1", StringComparison.Ordinal));

    private static void Hear(Socket socket, List<string> heard, Func<bool> enough)
    {
        var buffer = new byte[1024];
        while (!enough())
        {
            var count = socket.Receive(buffer);
            heard.AddRange(Encoding.UTF8.GetString(buffer, 0, count).Split('\n', StringSplitOptions.RemoveEmptyEntries));
        }
    }
}
