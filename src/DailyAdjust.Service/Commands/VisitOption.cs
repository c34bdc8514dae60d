using System.CommandLine;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>--visit of the commands that advise: somebody goes there on the sheet's date though no visit is planned.</summary>
internal sealed class VisitOption
{
    public Option<string[]> Option { get; } = new("--visit")
    {
        Description = "Somebody goes there on the sheet's date though no visit is planned: a controller (C2), a program (C2/P1) or site.",
        HelpName = "PLACE",
        AllowMultipleArgumentsPerToken = true,
    };

    /// <summary>What the logbook says of it, at the instant whose knowledge counts; none where the option is not given.</summary>
    /// <exception cref="WrongInputException">There is no such place.</exception>
    public IReadOnlyList<LogEntry> Entries(CommandContext context, Site site, MorningTime morning) =>
    [
        .. (context.Parsed.GetValue(Option) ?? []).Select(text => new LogEntry
        {
            Time = new LogTime(morning.Date, TimeOnly.FromDateTime(site.Clock.ToLocal(morning.AsOf).DateTime)),
            Kind = LogKind.Visit,
            Where = PlaceOf(text, site),
        }),
    ];

    private static Place PlaceOf(string text, Site site) =>
        PlaceText.Find(text, site) is { Kind: PlaceKind.Controller or PlaceKind.Program or PlaceKind.Site } place
            ? place
            : throw new WrongInputException($"--visit {text}: there is no such controller or program.", "Places stand in site.yaml: a controller such as C2, a program such as C2/P1, or site.");
}
