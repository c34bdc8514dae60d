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
    public async Task The_manager_hears_ready_beats_and_stopping()
    {
        Assert.SkipWhen(!OperatingSystem.IsLinux(), "systemd is Linux's");
        ExampleSite.PutInto(_home);
        var path = Path.Combine(_home.Path, "notify");
        using var socket = new Socket(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified);
        socket.Bind(new UnixDomainSocketEndPoint(path));

        // The manager tells the process its own number (systemd.exec(5), SYSTEMD_EXEC_PID): the shell becomes the program.
        var info = new ProcessStartInfo("/bin/sh", ["-c", "export SYSTEMD_EXEC_PID=$$; exec \"$0\" \"$@\"", RunningProgram.Path, "serve", "--home", _home.Path, "--set", "PollSeconds=1", "--set", "Pdf=never"])
        {
            UseShellExecute = false,
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        info.Environment["NOTIFY_SOCKET"] = path;
        info.Environment["WATCHDOG_USEC"] = "8000000";
        using var service = Process.Start(info)!;
        service.BeginErrorReadLine();
        service.BeginOutputReadLine();
        var heard = new List<string>();
        await HearAsync(socket, heard, () => Beats(heard) >= 2 && heard.Contains("READY=1", StringComparer.Ordinal));
        Tool.Run("/bin/kill", "-TERM", service.Id.ToString(System.Globalization.CultureInfo.InvariantCulture));
        await HearAsync(socket, heard, () => heard.Contains("STOPPING=1", StringComparer.Ordinal));
        Assert.True(service.WaitForExit(Patience));
        Assert.Equal(0, service.ExitCode);
        Tried.Held(9, "beats for the watchdog", Beats(heard));
    }

    private static int Beats(List<string> heard) => heard.Count(h => string.Equals(h, "WATCHDOG=1", StringComparison.Ordinal));

    private static async Task HearAsync(Socket socket, List<string> heard, Func<bool> enough)
    {
        var buffer = new byte[1024];
        using var stop = new CancellationTokenSource(Patience);
        while (!enough())
        {
            var count = await socket.ReceiveAsync(buffer, SocketFlags.None, stop.Token);
            heard.AddRange(Encoding.UTF8.GetString(buffer, 0, count).Split('\n', StringSplitOptions.RemoveEmptyEntries));
        }
    }
}
