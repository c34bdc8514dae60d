using Spectre.Console;

namespace DailyAdjust.Service.Printing;

/// <summary>A progress bar on a terminal's standard error, once the work has taken a second; elsewhere nothing is drawn.</summary>
public sealed class Progress : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly IAnsiConsole? console;
    private readonly string label;
    private readonly int steps;
    private readonly long begun = TimeProvider.System.GetTimestamp();
    private int done;
    private bool drawn;

    private Progress(IAnsiConsole? console, string label, int steps) => (this.console, this.label, this.steps) = (console, label, steps);

    /// <param name="error">Standard error; anything else is a test or a pipe.</param>
    /// <param name="label">What is going on.</param>
    /// <param name="steps">How many steps there are.</param>
    public static Progress Start(TextWriter error, string label, int steps) =>
        new(ReferenceEquals(error, Console.Error) && !Console.IsErrorRedirected ? AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(error) }) : null, label, steps);

    public void Step()
    {
        done++;
        if (console is not null && TimeProvider.System.GetElapsedTime(begun) >= Patience)
        {
            Draw(console);
        }
    }

    public void Dispose()
    {
        if (drawn)
        {
            console!.WriteLine();
        }
    }

    private void Draw(IAnsiConsole terminal)
    {
        const int Width = 30;
        var filled = steps == 0 ? Width : Width * done / steps;
        drawn = true;
        terminal.Write(new ControlCode("\r"));
        terminal.Markup(FormattableString.Invariant(
            $"{label.EscapeMarkup()} [green]{new string('━', filled)}[/][grey]{new string('━', Width - filled)}[/] {done} of {steps}"));
    }
}
