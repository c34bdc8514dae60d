using System.CommandLine;
using DailyAdjust.Tests.Courses;

namespace DailyAdjust.Benchmarks;

/// <summary>Writes the invented courses' weather as one large file.</summary>
internal static class WeatherCommand
{
    private static readonly DateOnly _last = new(2026, 7, 20);

    public static Command Create()
    {
        var file = new Argument<string>("file") { Description = "Where to." };
        var rows = new Option<int>("--rows") { Description = "One an hour, of whole days.", DefaultValueFactory = _ => 500_000 };
        var command = new Command("weather", "Writes invented weather by the hour, as the courses have it.") { file, rows };
        command.SetAction(given => File.WriteAllText(given.GetValue(file)!, CourseWeather.Hourly(_last.AddDays(1 - (given.GetValue(rows) / 24)), _last, seed: 1)));
        return command;
    }
}
