using System.CommandLine;
using System.Globalization;
using System.Text;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Setup;

namespace DailyAdjust.Service.Commands;

/// <summary>`new`: a dozen questions, then a commented site.yaml and a stations.csv.</summary>
internal static class NewCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var name = new Argument<string?>("NAME") { Description = "The course's name; asked for when left out.", Arity = ArgumentArity.ZeroOrOne };
        name.Validators.Add(result =>
        {
            if (result.Tokens.Count > 0 && result.Tokens[0].Value.StartsWith('-'))
            {
                result.AddError($"Unrecognized option '{result.Tokens[0].Value}'.");
            }
        });
        return new AppCommand(
            "new",
            "Sets up a site: asks a dozen questions, writes a commented site.yaml and a stations.csv to fill in.",
            "You need to know: where the course lies, its controllers, and of every program the start times, water days, areas and minutes per\nstation. Soils, roots and rates get common values that you can replace later; `dailyadjust check` lists what would help most.",
            "new",
            "new \"Mill Creek Municipal\" --home ./dailyadjust-home")
        {
            name,
        }.Runs(global, time, context => Run(context, context.Parsed.GetValue(name)));
    }

    private static int Run(CommandContext context, string? name)
    {
        var terminal = !Console.IsInputRedirected;
        var interview = new Interview(Console.In, context.Out, askAgain: terminal);
        var answers = SiteQuestions.Ask(interview, name, DateOnly.FromDateTime(context.Time.GetLocalNow().DateTime));
        var site = context.Home.Site(context.SiteName ?? FolderName(answers.Name));
        if (File.Exists(site.SiteFile))
        {
            throw new WrongInputException($"{site.SiteFile} exists already.", "Nothing was changed. --site gives the new site another folder name.");
        }

        Directory.CreateDirectory(site.Inbox);
        AtomicFile.Write(site.StationsFile, StationsText.Of(answers));
        AtomicFile.Write(site.SiteFile, SiteYamlText.Of(answers));
        if (answers.Weather?.Path is { } weather)
        {
            File.Copy(weather, Path.Combine(site.Inbox, Path.GetFileName(weather)), overwrite: true);
        }

        context.Out.WriteLine();
        context.Out.WriteLine($"Written: {site.SiteFile}");
        context.Out.WriteLine($"         {site.StationsFile}");
        context.Out.WriteLine();
        context.Out.WriteLine("Next:");
        context.Out.WriteLine($"  1. dailyadjust check --home {context.Home.Path}      what is missing, what would help");
        context.Out.WriteLine(answers.Weather is null
            ? $"  2. name your station's columns in site.yaml, then drop its CSV files into {site.Inbox}"
            : $"  2. your weather file lies in {site.Inbox} already; drop newer ones there");
        context.Out.WriteLine($"  3. dailyadjust morning --home {context.Home.Path}    the first sheet, in {site.Reports}");
        return ExitCode.Done;
    }

    /// <summary>"Mill Creek Municipal" as mill-creek-municipal.</summary>
    internal static string FolderName(string name)
    {
        var folder = new StringBuilder();
        foreach (var c in name.Normalize(NormalizationForm.FormD).Where(c => CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark))
        {
            if (char.IsAsciiLetterOrDigit(c))
            {
                folder.Append(char.ToLowerInvariant(c));
            }
            else if (folder.Length > 0 && folder[^1] != '-')
            {
                folder.Append('-');
            }
        }

        var trimmed = folder.ToString().Trim('-');
        return trimmed.Length > 0 ? trimmed : "site";
    }
}
