using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Commands;

/// <summary>Options that every command takes.</summary>
public sealed class GlobalOptions
{
    public Option<string?> Home { get; } = new("--home")
    {
        Description = $"The home folder. Without it: the variable {HomeFolder.Variable}, else ./{HomeFolder.LocalName} if it exists, else {HomeFolder.OfThisUser}.",
        HelpName = "DIR",
        Recursive = true,
    };

    public Option<string?> Site { get; } = new("--site")
    {
        Description = "The site, by the name of its folder. Without it: the only one; some commands take all of them.",
        HelpName = "SITE",
        Recursive = true,
    };

    public Option<DateOnly?> Date { get; } = DateOption("--date", "The morning's date, as of the report hour: nothing known later is used.", recursive: true);

    public Option<string[]> Set { get; } = new("--set")
    {
        Description = "Overrides one setting of appsettings.json for this run.",
        HelpName = "KEY=VALUE",
        Recursive = true,
        AllowMultipleArgumentsPerToken = false,
    };

    public static Option<DateOnly?> DateOption(string name, string description, bool recursive = false) => new(name)
    {
        Description = description,
        HelpName = "YYYY-MM-DD",
        Recursive = recursive,
        CustomParser = result => ParseDate(name, result),
    };

    public static DateOnly? ReadDate(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null;

    private static DateOnly? ParseDate(string name, ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (ReadDate(text) is { } date)
        {
            return date;
        }

        result.AddError($"{name} {text}: not a date. Write it as 2026-06-09.");
        return null;
    }
}
