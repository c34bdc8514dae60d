using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Benchmarks;

/// <summary>What is measured: the courses of a home, on a date.</summary>
internal static class MeasuredHome
{
    /// <summary>A command that measures them.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="what">What it measures.</param>
    /// <param name="home">What the home has to hold.</param>
    /// <param name="measure">Given one course or more.</param>
    public static Command Command(string name, string what, string home, Action<IReadOnlyList<SiteFolder>, DateOnly> measure)
    {
        var sites = new Argument<IReadOnlyList<SiteFolder>>("home") { Description = home, Arity = ArgumentArity.ExactlyOne, CustomParser = SitesOf };
        var date = new Argument<DateOnly>("date") { Description = "The sheets' date, YYYY-MM-DD.", CustomParser = DateOf };
        var command = new Command(name, what) { sites, date };
        command.SetAction(given => measure(given.GetValue(sites)!, given.GetValue(date)));
        return command;
    }

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
