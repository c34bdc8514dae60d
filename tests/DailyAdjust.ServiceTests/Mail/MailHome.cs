using System.Globalization;
using System.Text.Json.Nodes;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Service.Home;

namespace DailyAdjust.ServiceTests.Mail;

/// <summary>A home with mail set up, whose site's sheet of today is due at any hour (without weather: no sound advice, which everybody is told).</summary>
public sealed class MailHome : IDisposable
{
    public const string Super = "super@example.com";

    private readonly TestHome _home = new();

    public MailHome()
    {
        Site = ExampleSite.PutInto(_home);
        Edit(Site.SiteFile, "at: \"05:00\"", "at: \"00:00\"");
    }

    public SiteFolder Site { get; }

    public string Path => _home.Path;

    public HomeFolder Home => _home.Home;

    /// <summary>Of the environment of every program that is started.</summary>
    public Dictionary<string, string> Variables { get; } = new(StringComparer.Ordinal);

    public string ServerFolder => System.IO.Path.Combine(Path, "server");

    public IReadOnlyList<OutboxMessage> Outbox
    {
        get
        {
            try
            {
                using var ledger = SiteLedger.Open(Site.LedgerFile, LedgerMode.Read);
                return ledger.Outbox.Between(DateOnly.MinValue, DateOnly.MaxValue);
            }
            catch (LedgerException missing) when (missing.Trouble == LedgerTrouble.Missing)
            {
                return [];
            }
        }
    }

    /// <summary>All of the newest sheet's text, on one line.</summary>
    public string Report => string.Join(' ', File.ReadAllText(Directory.GetFiles(Site.Reports, "report-full.txt", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Last())
        .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    public string Log => Directory.Exists(Home.LogsFolder) ? string.Concat(Directory.GetFiles(Home.LogsFolder).Select(ReadShared)) : "";

    public static void Edit(string file, string from, string to)
    {
        var text = File.ReadAllText(file);
        Xunit.Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(file, text.Replace(from, to, StringComparison.Ordinal));
    }

    /// <summary>Writes appsettings.json: an unencrypted server on this machine that wants no login, unless told otherwise.</summary>
    public void Settings(int port, params (string Key, JsonNode? Value)[] more)
    {
        var mail = new JsonObject
        {
            ["Server"] = "127.0.0.1",
            ["Port"] = port,
            ["Security"] = "none",
            ["From"] = "Sheets <sheets@golf.example.net>",
            ["Recipients"] = new JsonArray(new JsonObject { ["To"] = Super }),
            ["RetrySeconds"] = 1,
        };
        foreach (var (key, value) in more)
        {
            mail[key] = value;
        }

        File.WriteAllText(Home.SettingsFile, new JsonObject { ["DailyAdjust"] = new JsonObject { ["PollSeconds"] = 1, ["LogLevel"] = "Debug", ["Mail"] = mail } }.ToJsonString());
    }

    public ProgramResult Run(params string[] arguments) => RunningProgram.Run(new ProgramStart([.. arguments, "--home", Path]) { Variables = Variables });

    public RunningService Serve() => new(new ProgramStart("serve", "--home", Path) { Variables = Variables });

    public MessageState? StateOf(int issue) => Outbox.FirstOrDefault(m => m.Issue == issue)?.State;

    public void Dispose() => _home.Dispose();

    private static string ReadShared(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}

/// <summary>`serve` as a process; ended with the test, however that ends.</summary>
public sealed class RunningService : IDisposable
{
    private readonly System.Diagnostics.Process _process;
    private readonly System.Text.StringBuilder _said = new();

    public RunningService(ProgramStart start)
    {
        _process = RunningProgram.Start(start);
        _process.ErrorDataReceived += (_, line) =>
        {
            lock (_said)
            {
                _said.Append(line.Data).Append('\n');
            }
        };
        _process.BeginErrorReadLine();
        _process.BeginOutputReadLine();
    }

    public int ProcessId => _process.Id;

    /// <summary>On the console, by now.</summary>
    public string Said
    {
        get
        {
            lock (_said)
            {
                return _said.ToString();
            }
        }
    }

    public bool HasEnded => _process.HasExited;

    /// <summary>As a power cut would: no step that it has not kept is done.</summary>
    public void KillHard()
    {
        _process.Kill(entireProcessTree: true);
        _process.WaitForExit();
    }

    /// <returns>Its exit code.</returns>
    public int Stop()
    {
        if (HasEnded)
        {
            return _process.ExitCode;
        }

        using (var kill = System.Diagnostics.Process.Start("kill", ["-TERM", _process.Id.ToString(CultureInfo.InvariantCulture)]))
        {
            kill.WaitForExit();
        }

        Xunit.Assert.True(_process.WaitForExit(TimeSpan.FromSeconds(60)), "The service did not stop.");
        return _process.ExitCode;
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            KillHard();
        }

        _process.Dispose();
    }
}
