using System.CommandLine;
using DailyAdjust.Core.Plan;
using DailyAdjust.Reports;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Commands;

/// <summary>`door-card`: the chart that hangs on a controller's door.</summary>
internal static class DoorCardCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var controllers = new Argument<string[]>("CONTROLLER") { Description = "Without one: all of them, in walking order.", Arity = ArgumentArity.ZeroOrMore };
        var to = new Option<string?>("--out") { Description = $"Where the page for paper is written. Without it: {DoorCards.HtmlFile} in the site's folder.", HelpName = "FILE" };
        return new AppCommand(
            "door-card",
            "Printable chart of each controller's stations, minutes, starts and days, with a revision number; leads through keying it in.",
            "Takes an edited description in first. The number counts the versions of the site in which this controller's chart changed: the same chart keeps its number.",
            "door-card",
            "door-card C1 --out c1.html")
        {
            controllers, to,
        }.Runs(global, time, context => Run(context, context.Parsed.GetValue(controllers) ?? [], context.Parsed.GetValue(to)));
    }

    private static int Run(CommandContext context, string[] wanted, string? path)
    {
        var folder = context.OneSite();
        using var site = folder.ToWrite(context.Date, from: null, context.Time, out var notice);
        if (notice is not null)
        {
            context.Error.WriteLine(notice);
        }

        var known = site.Newest.Controllers.OrderBy(c => c.Route).Select(c => c.Id).ToList();
        if (wanted.FirstOrDefault(w => !known.Contains(w, StringComparer.Ordinal)) is { } unknown)
        {
            throw new WrongInputException($"There is no controller \"{unknown}\" in site.yaml.", $"Controllers: {string.Join(", ", known)}.");
        }

        var history = site.History();
        var cards = known.Where(id => wanted.Length == 0 || wanted.Contains(id, StringComparer.Ordinal)).Select(id => DoorCard.Of(history, id)).ToList();
        context.Out.Write(DoorCards.Text(site.Newest, cards));
        var file = path ?? Path.Combine(folder.Path, DoorCards.HtmlFile);
        AtomicFile.Write(file, DoorCards.Html(site.Newest, cards));
        context.Out.WriteLine($"For paper: {file}");
        return ExitCode.Done;
    }
}
