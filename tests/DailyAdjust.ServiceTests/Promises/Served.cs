using System.Diagnostics;
using System.Globalization;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>The real service running over a home, looking every second.</summary>
internal sealed class Served : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly TestHome _home;
    private readonly Process _process;
    private int _looks;

    /// <param name="home">Its home.</param>
    /// <param name="variables">Of its environment; the last that names one wins.</param>
    public Served(TestHome home, params IReadOnlyDictionary<string, string>[] variables)
        : this(home, [], variables)
    {
    }

    /// <param name="home">Its home.</param>
    /// <param name="within">A command that becomes the program: it gets the program and its arguments behind its own.</param>
    /// <param name="variables">Of its environment; the last that names one wins.</param>
    public Served(TestHome home, string[] within, params IReadOnlyDictionary<string, string>[] variables)
    {
        _home = home;
        _process = RunningProgram.Start(new ProgramStart("serve", "--home", home.Path, "--set", "PollSeconds=1")
        {
            Under = within,
            Variables = variables.SelectMany(v => v).GroupBy(v => v.Key, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last().Value, StringComparer.Ordinal),
        });
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginErrorReadLine();
        _process.BeginOutputReadLine();
    }

    public int Id => _process.Id;

    public static void WaitFor(string what, Func<bool> holds)
    {
        var waited = Stopwatch.StartNew();
        while (!holds())
        {
            if (waited.Elapsed > Patience)
            {
                Assert.Fail($"Waited in vain for {what}.");
            }

            Thread.Sleep(50);
        }
    }

    /// <summary>A date's newest sheet for a terminal; "" = there is none.</summary>
    public static string Sheet(SiteFolder site, DateOnly date)
    {
        var file = Path.Combine(site.ReportFolder(date), "report-full.txt");
        return File.Exists(file) ? string.Join(' ', File.ReadAllText(file).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)) : "";
    }

    /// <summary>Every morning's record, by date and issue.</summary>
    public static IReadOnlyList<MorningRecord> Mornings(SiteFolder site)
    {
        try
        {
            using var open = OpenSite.Open(site, LedgerMode.Read);
            return open.Ledger.Mornings.Between(DateOnly.MinValue, DateOnly.MaxValue);
        }
        catch (LedgerException none) when (none.Trouble is LedgerTrouble.Missing or LedgerTrouble.Busy)
        {
            return [];
        }
    }

    /// <summary>Whether a date's sheet is out.</summary>
    public static bool IsOut(SiteFolder site, DateOnly date, int issue = 1) =>
        Mornings(site).Any(m => m.Date == date && m.Issue == issue && m.Step == MorningStep.Written);

    /// <summary>Returns when the service has looked at this site at least once from beginning to end: it takes a logbook file only at a look, and the next one only after that.</summary>
    public void LetItLook(SiteFolder site)
    {
        for (var time = 0; time < 2; time++)
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"look-{++_looks}.csv");
            Drop(site, name, "time,kind,where,value,unit,until,by,note\n2020-01-01 10:30,note,site,,,,,looked at\n");
            WaitFor("a look", () => !File.Exists(Path.Combine(site.Inbox, name)));
        }
    }

    /// <summary>Puts a whole file, old enough to be taken at once, into the inbox.</summary>
    public static void Drop(SiteFolder site, string name, string text, bool overwrite = false)
    {
        var hidden = Path.Combine(site.Inbox, "." + name);
        File.WriteAllText(hidden, text);
        File.SetLastWriteTimeUtc(hidden, new DateTime(1995, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        File.Move(hidden, Path.Combine(site.Inbox, name), overwrite);
    }

    public void Signal(string name) => Assert.Equal(0, Tool.Run("kill", "-" + name, Id.ToString(CultureInfo.InvariantCulture)).ExitCode);

    /// <summary>Asks it to stop.</summary>
    public void Stop()
    {
        Signal("TERM");
        Assert.True(_process.WaitForExit(Patience), "The service did not stop.");
        Assert.Equal(0, _process.ExitCode);
    }

    /// <summary>All that it has logged.</summary>
    public string Log()
    {
        if (!Directory.Exists(_home.Home.LogsFolder))
        {
            return "";
        }

        return string.Concat(Directory.GetFiles(_home.Home.LogsFolder).Order(StringComparer.Ordinal).Select(file =>
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var reader = new StreamReader(stream);
            return reader.ReadToEnd();
        }));
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
            _process.WaitForExit();
        }

        _process.Dispose();
    }
}
