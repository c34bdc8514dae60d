using System.CommandLine;
using DailyAdjust.Core.Replay;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Reports.Json;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Words;
using DailyAdjust.Service.Printing;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`replay`: past weather through the site, watered in several ways.</summary>
internal static class ReplayCommand
{
    private const string AsSet = "as-set";

    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var range = new RangeOptions();
        var visits = new Option<string>("--visits")
        {
            Description = "When somebody comes to every box: daily, weekdays (mon,thu), or as-set in site.yaml.",
            HelpName = "DAYS",
            DefaultValueFactory = _ => "daily",
        };
        var rain = new Option<bool>("--rain-known-ahead") { Description = "Takes the rain that fell for the forecast of every morning; counts where site.yaml has forecast_rain: skip." };
        return new AppCommand(
            "replay",
            "Runs past weather through the site: our advice against the fixed program, perfect knowledge and refilling; water, stress days, adequacy, excess.",
            "All days run under the newest description with the soil as start_soil says; of the logbook only rain counts. Depths in mm, site figures weighted\nby ground. What is measured, and how: docs/replay.md.",
            "replay --from 2026-04-15 --to 2026-07-15",
            "replay --visits mon,thu --format json",
            "replay --visits as-set --format csv > season.csv")
        {
            range.From, range.To, range.Format, visits, rain,
        }.Runs(global, time, context => Run(context, range, context.Parsed.GetValue(visits)!, context.Parsed.GetValue(rain)));
    }

    private static int Run(CommandContext context, RangeOptions range, string visits, bool rainKnownAhead)
    {
        var (from, to) = range.Range(context);
        var visitDays = VisitsOf(visits);
        using var site = context.OneSite().ToRead();
        var inputs = InputsOf(context, site, from, to) with { Visits = visitDays, RainKnownAhead = rainKnownAhead };
        if (rainKnownAhead && !inputs.Site.Weather.ForecastRain.MaySkip)
        {
            context.Error.WriteLine("site.yaml lets forecast rain only be noted: --rain-known-ahead changes nothing.");
        }

        using var progress = Progress.Start(context.Error, "Replay", 1);
        var replay = ReplayCalculation.Run(inputs, progress.Within, Environment.ProcessorCount);
        if (context.Parsed.GetValue(range.Format) is "json")
        {
            context.Out.Write(ReplayJson.Write(replay, inputs.Site.Name, visits, rainKnownAhead));
        }
        else
        {
            var isTable = context.Parsed.GetValue(range.Format) is not "csv";
            range.Print(context, isTable ? ReplayTable.Summary(replay) : ReplayTable.Of(replay));
            if (isTable && ReplayWords.PerfectBelowFixed(replay) is { Length: > 0 } why)
            {
                context.Out.WriteLine(why);
            }
        }

        return ExitCode.Done;
    }

    private static ReplayInputs InputsOf(CommandContext context, OpenSite site, DateOnly? from, DateOnly? to)
    {
        var weather = site.Ledger.InOneView(() => WeatherBook.LastFinished(site) is { } last ? WeatherBook.Through(site, last) : []);
        if (weather.Count == 0)
        {
            throw new WrongInputException($"{site.Folder.Name}: there is no finished day of weather.", "`dailyadjust ingest FILE` reads weather files.");
        }

        var (first, end) = (from ?? weather[0].Date, to ?? weather[^1].Date);
        if (first < weather[0].Date || end > weather[^1].Date || first > end)
        {
            throw new WrongInputException(
                FormattableString.Invariant($"{site.Folder.Name}: its days reach from {weather[0].Date:yyyy-MM-dd} to {weather[^1].Date:yyyy-MM-dd}."),
                "The first is `start` in site.yaml, the last is the last one whose weather is there.");
        }

        if (weather.FirstOrDefault(day => day.EtoMm is null && day.Date >= first && day.Date <= end) is { } open)
        {
            throw new WrongInputException(
                FormattableString.Invariant($"{site.Folder.Name}: {open.Date:yyyy-MM-dd} is open: its reference ET is not known."),
                "Replay the days before or after it with --from and --to, or add normals to site.yaml.");
        }

        var unknown = weather.Count(day => day.Date >= first && day.Date <= end && day.Rain.Any(r => r.RainMm is null));
        if (unknown > 0)
        {
            context.Error.WriteLine(FormattableString.Invariant($"Rain is unknown on {unknown} of {end.DayNumber - first.DayNumber + 1} days and counts 0 there."));
        }

        return new ReplayInputs { Site = site.Newest, Weather = Known(weather, first), From = first, To = end };
    }

    /// <summary>What comes before is looked back at only as far as it is known without a gap.</summary>
    private static IReadOnlyList<WeatherDay> Known(IReadOnlyList<WeatherDay> weather, DateOnly first) =>
        [.. weather.Skip(weather.TakeWhile(day => day.Date < first).Select((day, i) => day.EtoMm is null ? i + 1 : 0).DefaultIfEmpty().Max())];

    private static VisitDays? VisitsOf(string text)
    {
        if (string.Equals(text, AsSet, StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        if (string.Equals(text, "daily", StringComparison.OrdinalIgnoreCase))
        {
            return VisitDays.Daily;
        }

        DayOfWeek? DayOf(string word) => Enum.GetValues<DayOfWeek>().Cast<DayOfWeek?>().FirstOrDefault(day =>
            string.Equals(day.ToString()![..3], word, StringComparison.OrdinalIgnoreCase));
        var days = text.Split(',').Select(word => DayOf(word.Trim())).ToList();
        return days.Contains(null)
            ? throw new WrongInputException($"--visits {text}: not known.", "Write daily, weekdays like mon,thu (mon, tue, wed, thu, fri, sat, sun), or as-set.")
            : new VisitDays.Weekdays([.. days.OfType<DayOfWeek>().Distinct()]);
    }
}
