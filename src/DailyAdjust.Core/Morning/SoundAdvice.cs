using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>Why there is no sound advice, and since which date.</summary>
internal sealed record Trouble(Phrase Why, DateOnly? Since);

/// <summary>Whether the weather allows advice at all.</summary>
internal static class SoundAdvice
{
    /// <summary>Null: it does.</summary>
    public static Trouble? Of(MorningInputs inputs, Site site)
    {
        if (inputs.NewestReadingEnd is not { } newest)
        {
            return new Trouble(new("no weather has come in yet for the stations that the site's description names"), inputs.Versions[0].Site.Start);
        }

        if (inputs.AsOf - newest > site.Report.WeatherMaxAge)
        {
            return new Trouble(
                $"the newest weather ends {Words.DateAndTime(site.Clock, newest)}, more than {Age(site.Report.WeatherMaxAge)} ago",
                site.Clock.DateOf(newest));
        }

        if (inputs.Weather.FirstOrDefault(w => w.EtoMm is null) is { } open)
        {
            return new Trouble($"the weather of {Words.Date(open.Date)} is not known and nothing stands in for it", open.Date);
        }

        return inputs.ExpectedEtoMm(inputs.Date, site) is null
            ? new Trouble(new("no day's weather is known yet from which to expect today's"), inputs.Date)
            : null;
    }

    private static Phrase Age(TimeSpan age) => age.TotalDays switch
    {
        < 1 => $"{age.TotalHours:0.#} h",
        1 => $"{1} day",
        var days => $"{days:0.#} days",
    };
}
