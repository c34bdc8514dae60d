using System.CommandLine;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Service.Printing;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`explain`: the chain of numbers behind one program's advice, or one station's day.</summary>
internal static class ExplainCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var what = new Argument<string>("PLACE") { Description = "A program (C1/P2) or a station (C1/3)." };
        var format = new Option<string>("--format") { Description = "text, or json (a station's day: every step with its inputs, unit and source).", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "json");
        var hours = new Option<bool>("--hours") { Description = "Works out every hour of a station's day, not only the one with the largest value." };
        return new AppCommand(
            "explain",
            "Shows the chain of numbers behind one program's advice, or behind one station's day.",
            "A program: the newest sheet, or the one of --date, computed again as of that sheet. A station: the newest finished day, or --date.",
            "explain C1/P2",
            "explain C1/3 --date 2026-06-09")
        {
            what, format, hours,
        }.Runs(global, time, context => Run(
            context, context.Parsed.GetValue(what)!, string.Equals(context.Parsed.GetValue(format), "json", StringComparison.Ordinal), context.Parsed.GetValue(hours)));
    }

    private static int Run(CommandContext context, string what, bool json, bool everyHour)
    {
        using var site = context.OneSite().ToRead();
        var place = PlaceText.Find(what, site.Newest);
        var text = site.Ledger.InOneView(() => place switch
        {
            { Kind: PlaceKind.Program } when json => throw new WrongInputException(
                "A program's chain is printed as text only.", "Its data stand in advice.json of the sheet; --format json is for a station's day."),
            { Kind: PlaceKind.Program } program => OfProgram(context, site, new ProgramKey(program.Name, program.Item)),
            { Kind: PlaceKind.Station } station => OfStation(context, site, new StationKey(station.Name, station.Item), json, everyHour),
            _ => throw new WrongInputException(
                $"There is no program or station \"{what}\" at {site.Folder.Name}.", "Write controller and program (C1/P2) or controller and station (C1/3)."),
        });
        context.Out.Write(text);
        return ExitCode.Done;
    }

    private static string OfProgram(CommandContext context, OpenSite site, ProgramKey key)
    {
        var date = context.Date ?? AdviceBook.NewestDate(site);
        var issued = date is { } day ? AdviceBook.Again(site, day) : null;
        var sheet = issued?.Sheet ?? AdviceBook.Would(
            site, MorningTime.Of(site.Newest, date, context.Time.GetUtcNow(), TimeSpan.FromMinutes(context.Options.WorkBeginsMinutesBefore)));
        var advice = sheet.Programs.FirstOrDefault(p => p.Key == key)
            ?? throw new WrongInputException(FormattableString.Invariant($"{key} is not on the sheet of {sheet.Date:yyyy-MM-dd}."), "It came into site.yaml later, or has left it.");
        return ProgramText.Of(sheet, advice, issued?.Record.Issue);
    }

    private static string OfStation(CommandContext context, OpenSite site, StationKey key, bool json, bool everyHour)
    {
        var date = context.Date ?? WeatherBook.LastFinished(site)
            ?? throw new WrongInputException($"{site.Folder.Name}: no day of weather is finished yet.", "`dailyadjust ingest FILE` reads a weather file.");
        var days = BalanceBook.Between(site, date, date);
        var day = days.FirstOrDefault(d => d.Station == key)
            ?? throw new WrongInputException(FormattableString.Invariant($"There is no finished day {date:yyyy-MM-dd} of {key}."), "`dailyadjust balance` prints the days that there are.");
        var sections = ExplainBook.OfDay(site, date, key);
        var units = SiteVersions.On(site.Versions, date).Units;
        return json
            ? ExplanationJson.Of(FormattableString.Invariant($"{key} {date:yyyy-MM-dd}"), sections)
            : StationText.Of(day, SiteVersions.On(site.Versions, date), WeatherBook.Through(site, date, date)[^1]) + ExplanationText.Of(sections, units, everyHour);
    }
}
