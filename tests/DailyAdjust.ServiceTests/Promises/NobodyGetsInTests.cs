using System.Globalization;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>No port is open, nothing that a file names is followed out of the home, and logs have an end.</summary>
[Trait("Promise", "11")]
public sealed class NobodyGetsInTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void The_service_listens_on_no_port()
    {
        Assert.SkipWhen(!OperatingSystem.IsLinux(), "Sockets are read from /proc");
        ExampleSite.PutInto(_home);
        using var service = RunningProgram.Start(new ProgramStart("serve", "--home", _home.Path, "--set", "PollSeconds=1"));
        try
        {
            service.BeginErrorReadLine();
            service.BeginOutputReadLine();
            var deadline = DateTime.UtcNow + Patience;
            while (!Directory.Exists(_home.Home.Site(ExampleSite.Name).Reports) && DateTime.UtcNow < deadline)
            {
                Thread.Sleep(100);
            }

            Assert.Empty(Listening(service.Id));
        }
        finally
        {
            service.Kill();
            service.WaitForExit();
        }
    }

    [Fact]
    public void A_socket_that_listens_would_be_seen()
    {
        Assert.SkipWhen(!OperatingSystem.IsLinux(), "Sockets are read from /proc");
        using var listener = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        listener.Start();
        Assert.NotEmpty(Listening(Environment.ProcessId));
    }

    [Theory]
    [InlineData("../../outside.csv")]
    [InlineData("/etc/passwd")]
    [InlineData("sub/yard-hourly.csv")]
    public void A_name_in_site_yaml_that_leads_elsewhere_takes_nothing_from_there(string pattern)
    {
        var site = ExampleSite.PutInto(_home);
        File.Copy(ExampleSite.Weather, Path.Combine(_home.Path, "outside.csv"));
        File.WriteAllText(site.SiteFile, File.ReadAllText(site.SiteFile).Replace("yard-*.csv", pattern, StringComparison.Ordinal));
        Assert.Contains(pattern, File.ReadAllText(site.SiteFile), StringComparison.Ordinal);
        RunningProgram.Run("morning", "--home", _home.Path, "--date", "2026-06-10");
        Assert.True(File.Exists(Path.Combine(_home.Path, "outside.csv")));
        Assert.Empty(Directory.Exists(site.Taken) ? Directory.GetFiles(site.Taken) : []);
    }

    [Fact]
    public void Logs_are_bounded_in_size_and_number()
    {
        var log = _home.Home.LogsFolder;
        Directory.CreateDirectory(log);
        ExampleSite.TakenIn(_home);
        var old = new byte[1_000_000];
        for (var i = 0; i < 80; i++)
        {
            // Of the same day, as if something had been told without end.
            File.WriteAllBytes(Path.Combine(log, string.Create(CultureInfo.InvariantCulture, $"dailyadjust-{DateTime.Now:yyyyMMdd}_{i + 1:000}.json")), old);
        }

        var result = RunningProgram.Run("morning", "--home", _home.Path, "--date", "2026-06-10");
        Assert.True(result.ExitCode == 0, result.ToString());
        Assert.True(Directory.GetFiles(log).Length <= 41, FormattableString.Invariant($"{Directory.GetFiles(log).Length} log files stay"));
    }

    /// <summary>Local addresses of TCP sockets of a process that listen, as /proc/net/tcp and tcp6 have them (proc(5); state 0A).</summary>
    private static List<string> Listening(int process)
    {
        var own = Directory.GetFiles(FormattableString.Invariant($"/proc/{process}/fd"))
            .Select(fd => new FileInfo(fd).LinkTarget ?? "")
            .Where(target => target.StartsWith("socket:[", StringComparison.Ordinal))
            .Select(target => target["socket:[".Length..^1])
            .ToHashSet(StringComparer.Ordinal);
        return [.. new[] { "tcp", "tcp6" }
            .SelectMany(kind => File.ReadLines(FormattableString.Invariant($"/proc/{process}/net/{kind}")).Skip(1))
            .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Where(fields => string.Equals(fields[3], "0A", StringComparison.Ordinal) && own.Contains(fields[9]))
            .Select(fields => fields[1])];
    }
}
