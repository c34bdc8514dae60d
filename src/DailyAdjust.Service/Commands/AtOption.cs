using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>--at of the commands that make or reckon a sheet: one of the report times of a date, where a date has several.</summary>
internal sealed class AtOption
{
    public Option<TimeOnly?> Option { get; } = new("--at")
    {
        Description = "As of this one of the site's report times (report: at in site.yaml), of --date, else of the date that the command takes without it.",
        HelpName = "HH:MM",
        CustomParser = Read,
    };

    /// <summary>Null = the option is not given.</summary>
    /// <param name="context">The command.</param>
    /// <param name="site">Knows the hours and the clock.</param>
    /// <param name="day">The date that the command is about; null = today.</param>
    /// <exception cref="WrongInputException">The site has no sheet at that time, or it is still to come.</exception>
    public MorningTime? Of(CommandContext context, Site site, DateOnly? day)
    {
        if (context.Parsed.GetValue(Option) is not { } at)
        {
            return null;
        }

        if (!site.Report.At.Contains(at))
        {
            throw new WrongInputException(
                $"--at {Text(at)}: no sheet of this site is made at that time.", $"Its report times (report: at in site.yaml): {string.Join(", ", site.Report.At.Select(Text))}.");
        }

        var now = context.Time.GetUtcNow();
        var date = day ?? site.Clock.DateOf(now);
        var morning = new MorningTime(date, site.Clock.ToInstant(date, at));
        return morning.AsOf - TimeSpan.FromMinutes(context.Options.WorkBeginsMinutesBefore) <= now
            ? morning
            : throw new WrongInputException(FormattableString.Invariant($"--at {Text(at)}: that time of {date:yyyy-MM-dd} is still to come."), "Without --at the sheet is as of now; --date names an earlier date.");
    }

    private static string Text(TimeOnly time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    private static TimeOnly? Read(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (TimeOnly.TryParseExact(text, ["HH:mm", "H:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
        {
            return time;
        }

        result.AddError($"--at {text}: not a time of day. Write it as 16:00.");
        return null;
    }
}
