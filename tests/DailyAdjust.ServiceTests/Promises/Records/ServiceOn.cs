using System.Diagnostics;
using System.Globalization;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Records;

/// <summary>`serve` as a process that looks every second, whose output is kept.</summary>
internal sealed class ServiceOn : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

    private readonly Process _process;
    private readonly List<string> _said = [];

    public ServiceOn(TestHome home, params string[] settings)
    {
        _process = RunningProgram.Start(new ProgramStart(["serve", "--home", home.Path, "--set", "PollSeconds=1", .. settings.SelectMany(s => new[] { "--set", s })]));
        _process.ErrorDataReceived += (_, line) => Keep(line.Data);
        _process.BeginErrorReadLine();
        _process.BeginOutputReadLine();
    }

    public string Said
    {
        get
        {
            lock (_said)
            {
                return string.Join('\n', _said);
            }
        }
    }

    public int Id => _process.Id;

    public static void WaitFor(string what, Func<bool> holds)
    {
        var waited = Stopwatch.StartNew();
        while (!holds())
        {
            Assert.True(waited.Elapsed < Patience, $"Waited in vain for {what}.");
            Thread.Sleep(50);
        }
    }

    /// <returns>Its exit code.</returns>
    public int Stop()
    {
        Tool.Run("kill", "-TERM", Id.ToString(CultureInfo.InvariantCulture));
        return End();
    }

    /// <returns>Its exit code.</returns>
    public int End()
    {
        Assert.True(_process.WaitForExit(Patience), "The service did not end.");
        _process.WaitForExit();
        return _process.ExitCode;
    }

    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            Kill();
        }

        _process.Dispose();
    }

    private void Keep(string? line)
    {
        lock (_said)
        {
            _said.Add(line ?? "");
        }
    }
}
