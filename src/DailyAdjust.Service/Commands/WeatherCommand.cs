using DailyAdjust.Reports.Tables;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`weather`: days of weather.</summary>
internal static class WeatherCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var range = new RangeOptions();
        return new AppCommand(
            "weather",
            "Prints days of weather: reference ET and how it is known, rain, temperatures.",
            "Metric; an empty cell is unknown. Without dates: every finished day since the balance began.",
            "weather --from 2026-06-01 --to 2026-06-07",
            "weather --format csv > weather.csv",
            "weather guess yard-2026.csv",
            "weather normals",
            "weather pull")
        {
            range.From, range.To, range.Format,
            WeatherGuessCommand.Create(global, time),
            WeatherNormalsCommand.Create(global, time),
            PullCommand.Create(global, time),
        }.Runs(global, time, context => Run(context, range));
    }

    private static int Run(CommandContext context, RangeOptions range)
    {
        var (from, to) = range.Range(context);
        using var site = context.OneSite().ToRead();
        var days = site.Ledger.InOneView(() => WeatherBook.LastFinished(site) is { } last ? WeatherBook.Through(site, to < last ? to.Value : last) : []);
        range.Print(context, WeatherTable.Of(days.Where(day => from is null || day.Date >= from)));
        return ExitCode.Done;
    }
}
