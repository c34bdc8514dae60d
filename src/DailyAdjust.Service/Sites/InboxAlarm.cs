using DailyAdjust.Service.Home;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Sites;

/// <summary>An inbox out of which nothing can be taken: said once on the log, and on every sheet as long as it is so.</summary>
internal sealed class InboxAlarm(SiteFolder folder, ILogger log)
{
    /// <summary>Null = all is well.</summary>
    public string? Sentence { get; private set; }

    /// <summary>To be told of every look.</summary>
    public void Follow(InboxLook look)
    {
        var trouble = look.Trouble is { } clause ? $"The inbox {folder.Inbox} {clause}: nothing can come in until that is put right." : null;
        if (trouble is not null && !string.Equals(trouble, Sentence, StringComparison.Ordinal))
        {
            log.LogError("{Site}: {Notice}", folder.Name, trouble);
        }
        else if (trouble is null && Sentence is not null)
        {
            log.LogInformation("{Site}: the inbox {Inbox} can be read again", folder.Name, folder.Inbox);
        }

        Sentence = trouble;
    }
}
