using System.CommandLine;
using DailyAdjust.Service.Health;

namespace DailyAdjust.Service.Commands;

/// <summary>`doctor`: how the installation stands, one line each.</summary>
internal static class DoctorCommand
{
    /// <summary>In place of a site's name.</summary>
    private const string Whole = "(home)";

    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var thorough = new Option<bool>("--thorough") { Description = "Also unpacks every file that the ledgers keep and holds it against its hash (slower)." };
        var quiet = new Option<bool>("--quiet") { Description = "Only what is not well." };
        return new AppCommand(
            "doctor",
            "How the installation stands: rights, disk, time zones, mail; per site its ledger, inbox, weather, sheet and backup. One line each.",
            "Every line begins with well, look or alarm. Exit code 1 when a line is an alarm (a sheet is wrong, missing or unprotected, or soon will be), otherwise 0: a monitor needs no more. "
            + "It runs beside the service, holds nobody up, and keeps nothing: it writes a file into each folder that must be writable, and takes it away again. docs/operations.md says what each line asks for.",
            "doctor",
            "doctor --quiet",
            "doctor --site mill-creek --thorough")
        {
            thorough,
            quiet,
        }.Runs(global, time, context => Run(context, context.Parsed.GetValue(thorough), context.Parsed.GetValue(quiet)));
    }

    private static int Run(CommandContext context, bool thorough, bool quiet)
    {
        var now = context.Time.GetUtcNow();
        var sites = context.Sites();
        List<Finding> found =
        [
            .. new HomeDoctor(context.Home, context.Options, now).Examine(),
            .. sites.SelectMany(site => new SiteDoctor(site, context.Options, now, thorough).Examine()),
        ];
        var place = Math.Max(Whole.Length, found.Max(f => f.Place.Length));
        var subject = found.Max(f => f.Subject.Length);
        foreach (var finding in found.Where(f => !quiet || f.Standing != Standing.Well))
        {
            context.Out.WriteLine($"{Word(finding.Standing),-5}  {(finding.Place.Length == 0 ? Whole : finding.Place).PadRight(place)}  {finding.Subject.PadRight(subject)}  {OneLine(finding.Sentence)}");
        }

        return found.Exists(f => f.Standing == Standing.Alarm) ? ExitCode.Failed : ExitCode.Done;
    }

    private static string Word(Standing standing) => standing switch
    {
        Standing.Alarm => "alarm",
        Standing.Look => "look",
        _ => "well",
    };

    private static string OneLine(string text) => string.Join(' ', text.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
}
