using Spectre.Console;

namespace DailyAdjust.Service.Printing;

/// <summary>A progress bar on a terminal's standard error, once the work has taken a second; elsewhere nothing is drawn.</summary>
public sealed class Progress : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private static readonly TimeSpan BetweenDrawings = TimeSpan.FromMilliseconds(100);

    private readonly IAnsiConsole? _console;
    private readonly string _label;
    private readonly int _steps;
    private readonly long _begun = TimeProvider.System.GetTimestamp();
    private long _lastDrawn;
    private int _done;
    private bool _drawn;

    private Progress(IAnsiConsole? console, string label, int steps) => (_console, _label, _steps) = (console, label, steps);

    /// <param name="error">Standard error; anything else is a test or a pipe.</param>
    /// <param name="label">What is going on.</param>
    /// <param name="steps">How many steps there are.</param>
    public static Progress Start(TextWriter error, string label, int steps) =>
        new(ReferenceEquals(error, Console.Error) && !Console.IsErrorRedirected ? AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(error) }) : null, label, steps);

    /// <summary>A step is done.</summary>
    public void Step()
    {
        _done++;
        Within(0);
    }

    /// <summary>How much of the running step is done, 0 to 1.</summary>
    public void Within(double share)
    {
        if (_console is null || TimeProvider.System.GetElapsedTime(_begun) < Patience || (_drawn && TimeProvider.System.GetElapsedTime(_lastDrawn) < BetweenDrawings))
        {
            return;
        }

        (_drawn, _lastDrawn) = (true, TimeProvider.System.GetTimestamp());
        Draw(_console, _steps == 0 ? 1 : Math.Min(1, (_done + share) / _steps));
    }

    public void Dispose()
    {
        if (_drawn)
        {
            Draw(_console!, 1);
            _console!.WriteLine();
        }
    }

    private void Draw(IAnsiConsole terminal, double share)
    {
        const int Width = 30;
        var filled = (int)(Width * share);
        terminal.Write(new ControlCode("\r"));
        terminal.Markup(FormattableString.Invariant(
            $"{_label.EscapeMarkup()} [green]{new string('━', filled)}[/][grey]{new string('━', Width - filled)}[/] {share * 100,3:0} %"));
    }
}
