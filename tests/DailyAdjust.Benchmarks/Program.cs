using System.CommandLine;
using DailyAdjust.Benchmarks;

// Measures, and makes the courses that are measured. compare.sh runs it beside what a user would pick instead.
var root = new RootCommand("Measures, and makes the courses that are measured.")
{
    CourseCommand.Create(),
    FitCommand(),
    GrowthCommand.Create(),
    KernelCommand.Create(),
    MorningWarm.Create(),
    SitesCommand.Create(),
    WeatherCommand.Create(),
};
return await root.Parse(args).InvokeAsync();

static Command FitCommand()
{
    var command = new Command("fit", "Whether a large course's night fits, and what mends it.");
    command.SetAction(_ => NightFitting.Measure());
    return command;
}
