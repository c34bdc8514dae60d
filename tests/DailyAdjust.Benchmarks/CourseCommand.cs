using System.CommandLine;
using System.Globalization;
using DailyAdjust.Tests.Courses;

namespace DailyAdjust.Benchmarks;

/// <summary>Writes invented courses into the sites folder of a home.</summary>
internal static class CourseCommand
{
    public static Command Create()
    {
        var home = new Argument<string>("home") { Description = "The home folder." };
        var sites = new Option<int>("--sites") { Description = "How many.", DefaultValueFactory = _ => 1 };
        var stations = new Option<int>("--stations") { Description = "Of each.", DefaultValueFactory = _ => 300 };
        var controllers = new Option<int>("--controllers") { Description = "Of each.", DefaultValueFactory = _ => 8 };
        var programs = new Option<int>("--programs") { Description = "Of each controller, 1 to 8.", DefaultValueFactory = _ => 4 };
        var from = Date("--from", "The first day of the weather.", "2026-01-01");
        var through = Date("--through", "The last day of the weather.", "2026-07-15");
        var seed = new Option<int>("--seed") { Description = "Of the first; the next one has the next.", DefaultValueFactory = _ => 1 };
        var command = new Command("course", "Writes invented courses: description, weather and logbook, ready to be taken.") { home, sites, stations, controllers, programs, from, through, seed };
        command.SetAction(given =>
        {
            for (var i = 0; i < given.GetValue(sites); i++)
            {
                var number = given.GetValue(seed) + i;
                var size = new CourseSize
                {
                    Seed = (ulong)number,
                    Stations = given.GetValue(stations),
                    Controllers = given.GetValue(controllers),
                    Programs = given.GetValue(programs),
                    From = given.GetValue(from),
                    Through = given.GetValue(through),
                };
                CourseFiles.Put(size, Path.Combine(given.GetValue(home)!, "sites", string.Create(CultureInfo.InvariantCulture, $"course-{number:0000}")));
            }
        });
        return command;
    }

    private static Option<DateOnly> Date(string name, string what, string otherwise) => new(name)
    {
        Description = what,
        DefaultValueFactory = _ => Day(otherwise),
        CustomParser = result => Day(result.Tokens[0].Value),
    };

    private static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);
}
