using System.CommandLine;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Guess;
using DailyAdjust.Service.Printing;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`weather guess`: what a weather file seems to be, and the piece of site.yaml that reads it.</summary>
internal sealed class WeatherGuessCommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "A file of a weather station or of a public network." };
    private readonly Option<double?> _latitude = new("--latitude") { Description = "Where the station stands, degrees north.", HelpName = "DEGREES" };
    private readonly Option<double?> _longitude = new("--longitude") { Description = "Degrees east; America is negative.", HelpName = "DEGREES" };
    private readonly Option<string?> _elevation = new("--elevation") { Description = "Height above sea level with its unit: \"290 m\".", HelpName = "LENGTH" };
    private readonly Option<string?> _zone = new("--time-zone") { Description = "Its time zone, such as America/Chicago.", HelpName = "ZONE" };
    private readonly UnitsOption _units = new("Without it: the site's, else the file's own.");

    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var command = new WeatherGuessCommand();
        Bound(command._latitude, 90);
        Bound(command._longitude, 180);
        return new AppCommand(
            "guess",
            "Looks at a weather file: recognises its format or proposes a column map to paste into site.yaml. Changes nothing.",
            "What the file does not prove is marked with \"check\", there and in the proposal. With the place (--site, or --latitude --longitude\n--time-zone) the sun of clear days tells which clock wrote the file, and whether its times end or begin their intervals. Exit code 2\nwhere nothing was recognised.",
            "weather guess yard-2026.csv --site mill-creek",
            "weather guess export.csv --latitude 44.2 --longitude -98.3 --elevation \"1290 ft\" --time-zone America/Chicago")
        {
            command._file, command._latitude, command._longitude, command._elevation, command._zone, command._units.Option,
        }.Runs(global, time, command.Run);
    }

    private int Run(CommandContext context)
    {
        var path = context.Parsed.GetValue(_file)!;
        var bytes = context.ReadFile(path);
        var place = Place(context);
        var name = Path.GetFileName(path);
        using var stream = new MemoryStream(bytes);
        var known = place is { } p ? new GuessPlace(p.Site.LatitudeDeg, p.Site.LongitudeDeg, p.Site.Clock) : null;
        var guess = WeatherGuess.Of(name, stream, known, MonthFirst(context, place?.Site));
        context.Out.Write(GuessText.Findings(guess));
        if (guess.Source is null)
        {
            return ExitCode.WrongInput;
        }

        var units = _units.Of(context) ?? (place is { IsOfSite: true } ? place.Value.Site.Units : guess.IsUs ? UnitSystem.Us : UnitSystem.Metric);
        var trial = GuessTrial.Of(name, bytes, guess.Source, place?.Site ?? BareSite.At(TimeZoneInfo.Utc, 0, 0, 0));
        context.Out.Write(GuessText.Trial(trial, units, place is { HasElevation: true }, place?.Site.Clock.ZoneId ?? "UTC, as no time zone was given"));
        context.Out.Write(GuessText.Paste(guess));
        return trial.Report.FileRefused ? ExitCode.WrongInput : ExitCode.Done;
    }

    /// <summary>Dates that can be read in two ways are taken as the site's country writes them; the proposal says so.</summary>
    private bool? MonthFirst(CommandContext context, Site? site) => (_units.Of(context) ?? site?.Units) switch
    {
        UnitSystem.Us => true,
        UnitSystem.Metric => false,
        _ => null,
    };

    /// <summary>From the options, else from the site that is named.</summary>
    private (Site Site, bool IsOfSite, bool HasElevation)? Place(CommandContext context)
    {
        var (latitude, longitude) = (context.Parsed.GetValue(_latitude), context.Parsed.GetValue(_longitude));
        var (elevation, zone) = (context.Parsed.GetValue(_elevation), context.Parsed.GetValue(_zone));
        if (latitude is null && longitude is null && elevation is null && zone is null)
        {
            return context.SiteName is null ? null : (SiteOf(context), true, true);
        }

        if (latitude is not { } north || longitude is not { } east || zone is null)
        {
            throw new WrongInputException("The place is given in part.", "Give --latitude, --longitude and --time-zone together (and --elevation for reference ET), or --site.");
        }

        if (!TimeZoneInfo.TryFindSystemTimeZoneById(zone, out var found) || !found.HasIanaId)
        {
            throw new WrongInputException($"--time-zone {zone}: no such time zone.", "Write its name as America/Chicago or Europe/Dublin.");
        }

        return (BareSite.At(found, north, east, Elevation(elevation)), false, elevation is not null);
    }

    private static Site SiteOf(CommandContext context)
    {
        var folder = context.OneSite();
        return DescriptionFiles.Of(folder).Reading.Site
            ?? throw new WrongInputException($"{folder.Name}: its description has errors, so that its place is not known.", "`dailyadjust check` lists them; or give --latitude, --longitude, --elevation and --time-zone instead of --site.");
    }

    private static double Elevation(string? text) => text is null ? 0
        : NumberText.TrySplit(text, out var value, out var spelling) && Core.Quantities.Units.Find(spelling, UnitKind.Length) is { } unit ? unit.ToMetric(value)
        : throw new WrongInputException($"--elevation {text}: not a length with its unit.", "Write it as \"290 m\" or \"960 ft\".");

    private static void Bound(Option<double?> option, double most) => option.Validators.Add(result =>
    {
        if (result.GetValueOrDefault<double?>() is { } value && !(Math.Abs(value) <= most))
        {
            result.AddError(FormattableString.Invariant($"{option.Name} {value}: degrees from -{most} to {most}."));
        }
    });
}
