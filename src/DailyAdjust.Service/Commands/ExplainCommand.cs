using System.CommandLine;
using DailyAdjust.Core.Explain;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
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
        var format = new Option<string>("--format") { Description = "text, or json: every step with its inputs, unit and source.", DefaultValueFactory = _ => "text" };
        format.AcceptOnlyFromAmong("text", "json");
        var at = new AtOption();
        var all = new Option<bool>("--all") { Description = "Works out every hour and every zone, not only one as the example." };
        return new AppCommand(
            "explain",
            "Shows every number behind one program's advice, or behind one station's day, with its equation and source.",
            "A program: the newest sheet, or the one of --date, computed again as of that sheet; a --date without a sheet as of its report hour. Where site.yaml has\nseveral report times --at takes one of them: the sheet that was issued as of it, else as it would be. A station: the newest finished day, or --date.",
            "explain C1/P2",
            "explain C1/P2 --date 2026-06-09 --at 16:00",
            "explain C1/3 --date 2026-06-09")
        {
            what, format, at.Option, all,
        }.Runs(global, time, context => Run(
            context, context.Parsed.GetValue(what)!, at, string.Equals(context.Parsed.GetValue(format), "json", StringComparison.Ordinal), context.Parsed.GetValue(all)));
    }

    private static int Run(CommandContext context, string what, AtOption at, bool json, bool all)
    {
        using var site = context.OneSite().ToRead();
        var place = PlaceText.Find(what, site.Newest);
        var text = site.Ledger.InOneView(() => place switch
        {
            { Kind: PlaceKind.Program } program => OfProgram(context, site, new ProgramKey(program.Name, program.Item), at, json, all),
            { Kind: PlaceKind.Station } when context.Parsed.GetValue(at.Option) is not null => throw new WrongInputException(
                $"--at goes with a program's advice, and {what} is a station, whose day is taken apart from 00:00 to its end.", "Leave --at out, or write controller and program (C1/P2)."),
            { Kind: PlaceKind.Station } station => OfStation(context, site, new StationKey(station.Name, station.Item), json, all),
            _ => throw new WrongInputException(
                $"There is no program or station \"{what}\" at {site.Folder.Name}.", "Write controller and program (C1/P2) or controller and station (C1/3)."),
        });
        context.Out.Write(text);
        return ExitCode.Done;
    }

    private static string OfProgram(CommandContext context, OpenSite site, ProgramKey key, AtOption at, bool json, bool all)
    {
        var date = context.Date ?? AdviceBook.NewestDate(site);
        var look = at.Of(context, site.Newest, date);
        var issued = (look?.Date ?? date) is { } day ? AdviceBook.Again(site, day, look?.AsOf) : null;
        var inputs = issued?.Inputs ?? AdviceBook.WouldKnow(
            site, look ?? MorningTime.Of(site.Newest, date, context.Time.GetUtcNow(), TimeSpan.FromMinutes(context.Options.WorkBeginsMinutesBefore)));
        var sheet = MorningCalculation.Run(inputs);
        var advice = sheet.Programs.FirstOrDefault(p => p.Key == key)
            ?? throw new WrongInputException(FormattableString.Invariant($"{key} is not on the sheet of {sheet.Date:yyyy-MM-dd}."), "It came into site.yaml later, or has left it.");
        var sections = ProgramSteps.Of(inputs, sheet, key);
        return json
            ? ExplanationJson.Of(FormattableString.Invariant($"{key} {sheet.Date:yyyy-MM-dd}"), sections)
            : ProgramText.Of(sheet, advice, issued?.Record.Issue) + ExplanationText.Of(sections, sheet.Site.Units, all);
    }

    private static string OfStation(CommandContext context, OpenSite site, StationKey key, bool json, bool all)
    {
        var date = context.Date ?? WeatherBook.LastFinished(site)
            ?? throw new WrongInputException($"{site.Folder.Name}: no day of weather is finished yet.", "`dailyadjust ingest FILE` reads a weather file.");
        var days = BalanceBook.DayByDay(site, date, date).SelectMany(d => d).ToList();
        var day = days.FirstOrDefault(d => d.Station == key)
            ?? throw new WrongInputException(FormattableString.Invariant($"There is no finished day {date:yyyy-MM-dd} of {key}."), "`dailyadjust balance` prints the days that there are.");
        var sections = ExplainBook.OfDay(site, date, key);
        var units = SiteVersions.On(site.Versions, date).Units;
        return json
            ? ExplanationJson.Of(FormattableString.Invariant($"{key} {date:yyyy-MM-dd}"), sections)
            : StationText.Of(day, SiteVersions.On(site.Versions, date), WeatherBook.Through(site, date, date)[^1]) + ExplanationText.Of(sections, units, all);
    }
}
