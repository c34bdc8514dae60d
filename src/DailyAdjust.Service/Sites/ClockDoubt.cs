using DailyAdjust.Ledger.Records;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Sites;

/// <summary>A sheet as of an instant that has not come: the clock was wrong then, or is now. Said once on the log, and on every sheet as long as it is so.</summary>
internal sealed class ClockDoubt(SiteFolder folder, ILogger log)
{
    /// <summary>A clock that is set right by less is none that was wrong; an early morning's work is as of its hour already.</summary>
    private static readonly TimeSpan LargestClockError = TimeSpan.FromHours(3);

    /// <summary>Null = there is no doubt.</summary>
    public string? Sentence { get; private set; }

    /// <summary>To be asked at every look.</summary>
    public void Follow(OpenSite site, DateTimeOffset now)
    {
        var ahead = site.Ledger.Mornings.Last() is { Step: not MorningStep.Missed } last && last.AsOf > now + LargestClockError ? last : null;
        var doubt = ahead is null ? null : LateWords.ClockDoubt(site.Newest.Clock, ahead, now);
        if (doubt is not null && Sentence is null)
        {
            log.LogError("{Site}: {Notice}", folder.Name, doubt);
        }

        Sentence = doubt;
    }
}
