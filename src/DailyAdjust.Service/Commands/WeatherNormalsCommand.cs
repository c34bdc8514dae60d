using System.CommandLine;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Formats;
using DailyAdjust.Service.Printing;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`weather normals`: monthly means, from the site's own finished months or from a typical year (EPW), to paste into site.yaml.</summary>
internal static class WeatherNormalsCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var file = new Argument<string?>("FILE") { Description = "A typical year (EPW). Without it: the site's own days.", Arity = ArgumentArity.ZeroOrOne };
        var units = new UnitsOption("Without it: the site's, and metric of a typical year.");
        return new AppCommand(
            "normals",
            "Monthly means of reference ET and rain, and the piece of site.yaml that holds them. Changes nothing.",
            "Expected ETo falls back on them where no weather is known. A month counts if nine tenths of its days are known; a typical year is nobody's\nrecord and serves until the site has years of its own. Exit code 2 where a month of reference ET is missing.",
            "weather normals --site mill-creek",
            "weather normals USA_SD_Huron.epw --units us")
        {
            file, units.Option,
        }.Runs(global, time, context => Run(context, context.Parsed.GetValue(file), units.Of(context)));
    }

    private static int Run(CommandContext context, string? path, UnitSystem? wanted)
    {
        var (months, ofSite) = path is null ? OfHistory(context) : (OfTypicalYear(context, path), UnitSystem.Metric);
        var units = wanted ?? ofSite;
        context.Out.Write(NormalsText.Table(months, units));
        var missing = months.Where(month => month.EtoMmPerDay is null).Select(month => FormattableString.Invariant($"{month.Month}")).ToList();
        if (missing.Count > 0)
        {
            context.Error.WriteLine($"No reference ET of month {string.Join(", ", missing)}: nine tenths of a month's days must be known, of every month of the year.");
            return ExitCode.WrongInput;
        }

        context.Out.WriteLine();
        context.Out.WriteLine("Under weather: in site.yaml:");
        context.Out.Write(NormalsText.Paste(months, units));
        return ExitCode.Done;
    }

    private static (IReadOnlyList<MonthNormal> Months, UnitSystem Units) OfHistory(CommandContext context)
    {
        using var site = context.OneSite().ToRead();
        return (site.Ledger.InOneView(() => NormalsBook.OfHistory(site)), site.Newest.Units);
    }

    private static IReadOnlyList<MonthNormal> OfTypicalYear(CommandContext context, string path)
    {
        using var stream = new MemoryStream(context.ReadFile(path));
        var year = EpwReader.Read(Path.GetFileName(path), stream);
        foreach (var problem in year.Report.Problems)
        {
            context.Error.WriteLine(problem);
        }

        return year.Place is null ? throw new WrongInputException($"{path}: it is no typical year that can be read.") : NormalsBook.OfTypicalYear(year);
    }
}
