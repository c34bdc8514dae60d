using DailyAdjust.Reports;
using DailyAdjust.Service.Demo;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Commands;

/// <summary>`demo`: a whole season of an invented course.</summary>
internal static class DemoCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time) => new AppCommand(
        "demo",
        "Builds a home from sample-weather, runs a season of an invented course up to its last morning, and prints that sheet.",
        $"Without --home it goes into ./{HomeFolder.LocalName}, where the other commands find it. Delete the folder to build it anew.",
        "demo",
        "demo --home /tmp/demo")
        .Runs(global, time, (context, stop) => Task.FromResult(Run(context, stop)));

    private static int Run(CommandContext context, CancellationToken stop)
    {
        var named = context.Parsed.GetValue<string?>("--home") ?? Environment.GetEnvironmentVariable(HomeFolder.Variable);
        var home = new HomeFolder(string.IsNullOrWhiteSpace(named) ? HomeFolder.LocalName : named);
        var sample = SampleWeather.Find()
            ?? throw new WrongInputException("The folder sample-weather was not found beside the program, nor above the working folder.", "Run the demo from the repository, or from the published folder.");
        var last = DemoSeason.Build(sample, home, context, stop);
        var text = File.ReadAllText(Path.Combine(last.Folder, ReportFiles.Text));
        context.Out.Write(text);
        context.Out.WriteLine();
        context.Out.WriteLine($"The sheet and its files: {last.Folder}");
        context.Out.WriteLine($"All sites, past days:    {home.IndexFile}");
        context.Out.WriteLine($"The course itself:       {last.Site.Path}");
        context.Out.WriteLine($"Go on with:              dailyadjust explain {ShellWord.Of(last.Example)} --home {ShellWord.Of(home.Path)}");
        if (last.Answering is { } note)
        {
            context.Out.WriteLine(note);
        }

        return ExitCode.Done;
    }
}
