using System.Diagnostics;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>A kill before a step of the disk, or, where there is none, after some time; or an error of that step.</summary>
internal sealed record Kill(int Step, int Milliseconds)
{
    /// <summary>The errno that the step ends with, and every later one that writes; 0 = the process is killed.</summary>
    public int Error { get; init; }

    public static Kill Before(int step) => new(step, 0);

    public static Kill After(int milliseconds) => new(0, milliseconds);
}

/// <summary>
/// One command, killed again and again on copies of one home: after every kill the ledger is whole and each file there once; after the last start, which nobody disturbs, all is as
/// if nothing had happened.
/// </summary>
internal sealed class KilledRuns : IDisposable
{
    private readonly Func<TestHome> _home;
    private readonly Func<TestHome, string[]> _arguments;
    private readonly int _exitCode;
    private readonly List<string> _states = [];
    private readonly TestHome _calm;

    /// <param name="home">A new home to begin with.</param>
    /// <param name="arguments">The command.</param>
    /// <param name="exitCode">That it ends with.</param>
    public KilledRuns(Func<TestHome> home, Func<TestHome, string[]> arguments, int exitCode)
    {
        (_home, _arguments, _exitCode) = (home, arguments, exitCode);
        _calm = home();
        var log = Path.Combine(_calm.Path, "logs", "steps");
        Directory.CreateDirectory(Path.GetDirectoryName(log)!);
        var watch = Stopwatch.StartNew();
        var result = RunningProgram.Run(new ProgramStart(arguments(_calm)) { Variables = DiskSteps.Variables(_calm.Path, SecondDay.Clock, log) });
        Took = watch.Elapsed;
        Assert.True(result.ExitCode == exitCode, result.ToString());
        _states.Add(SiteState.Of(SecondDay.Site(_calm)));
        Log = File.ReadAllLines(log);
        Steps = StepNames.Of(Log);
    }

    /// <summary>Of an undisturbed run, a line "number call path" per step.</summary>
    public IReadOnlyList<string> Log { get; }

    /// <summary>What an undisturbed run is at, step by step.</summary>
    public IReadOnlyList<string> Steps { get; }

    /// <summary>What the run that was disturbed last said.</summary>
    public ProgramResult? Last { get; private set; }

    /// <summary>An undisturbed run.</summary>
    public TimeSpan Took { get; }

    /// <returns>How often it was really killed, or ended with 1 by an error: a run may end before its moment comes.</returns>
    public int Try(params IReadOnlyList<Kill> kills)
    {
        using var home = _home();
        var site = SecondDay.Site(home);
        var dropped = Directory.GetFiles(site.Inbox).ToDictionary(file => Path.GetFileName(file), File.ReadAllBytes, StringComparer.Ordinal);
        var killed = 0;
        foreach (var kill in kills)
        {
            killed += WasKilled(home, kill) ? 1 : 0;
            SiteState.AssertWhole(site);
            SiteState.AssertEachOnce(site, dropped);
        }

        var end = RunningProgram.Run(new ProgramStart(_arguments(home)) { Variables = DiskSteps.Variables(home.Path, SecondDay.Clock) });
        Assert.True(end.ExitCode == _exitCode, $"{string.Join(", ", kills)}: {end}");
        Assert.Equal(StateAfter(Runs(site)), SiteState.Of(site));
        SiteState.AssertNoLeftovers(home);
        return killed;
    }

    public void Dispose() => _calm.Dispose();

    private bool WasKilled(TestHome home, Kill kill)
    {
        var variables = DiskSteps.Variables(home.Path, SecondDay.Clock);
        using var process = RunningProgram.Start(new ProgramStart(_arguments(home)) { Variables = kill.Error > 0 ? variables.FailAt(kill.Step, kill.Error) : kill.Step > 0 ? variables.KillAt(kill.Step) : variables });
        process.StandardInput.Close();
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        if (kill.Step == 0)
        {
            process.WaitForExit(kill.Milliseconds);
            process.Kill();
        }

        Assert.True(process.WaitForExit(TimeSpan.FromMinutes(2)), "The program did not end.");
        Last = new(process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
        var disturbed = kill.Error > 0 ? 1 : 137;
        Assert.True(Last.ExitCode == disturbed || Last.ExitCode == _exitCode, $"{kill}: {Last}");
        return Last.ExitCode == disturbed;
    }

    /// <summary>The same command again and again is another issue each time.</summary>
    private static int Runs(SiteFolder site) => Math.Max(1, (int)SiteState.Number(site.LedgerFile, $"SELECT count(*) FROM morning WHERE day = '{SecondDay.Date:yyyy-MM-dd}'"));

    private string StateAfter(int runs)
    {
        while (_states.Count < runs)
        {
            var result = RunningProgram.Run(new ProgramStart(_arguments(_calm)) { Variables = DiskSteps.Variables(_calm.Path, SecondDay.Clock) });
            Assert.True(result.ExitCode == _exitCode, result.ToString());
            _states.Add(SiteState.Of(SecondDay.Site(_calm)));
        }

        return _states[runs - 1];
    }
}
