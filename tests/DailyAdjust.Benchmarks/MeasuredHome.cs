using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Benchmarks;

/// <summary>What is measured: the courses of a home, on a date.</summary>
internal static class MeasuredHome
{
    public static Argument<IReadOnlyList<SiteFolder>> Sites(string what) => new("home") { Description = what, Arity = ArgumentArity.ExactlyOne, CustomParser = SitesOf };

    public static Argument<DateOnly> Date() => new("date") { Description = "The sheets' date, YYYY-MM-DD.", CustomParser = DateOf };

    private static IReadOnlyList<SiteFolder> SitesOf(ArgumentResult given)
    {
        var home = given.Tokens[0].Value;
        var sites = Directory.Exists(home) ? new HomeFolder(home).Sites() : [];
        if (sites.Count == 0)
        {
            given.AddError($"There is no course in {home}; `course {home}` makes one.");
        }

        return sites;
    }

    private static DateOnly DateOf(ArgumentResult given)
    {
        if (!DateOnly.TryParseExact(given.Tokens[0].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
        {
            given.AddError($"{given.Tokens[0].Value} is no date; write YYYY-MM-DD.");
        }

        return date;
    }
}
