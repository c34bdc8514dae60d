using DailyAdjust.Ledger.Records;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Backups;

/// <summary>What a sheet tells of backups that are not made: it is what people look at.</summary>
internal static class BackupNotices
{
    /// <summary>So many days with a sheet and without a backup are too many; days on which the computer was off count for nothing.</summary>
    private const int MostDays = 4;

    private const string WhatToDo = "`dailyadjust serve` makes one a day, and its log says why it could not. `dailyadjust backup` makes one now.";

    /// <returns>One sentence, or none.</returns>
    public static IReadOnlyList<string> Of(OpenSite site, ServiceOptions options, DateTimeOffset now)
    {
        if (SiteBackup.At(options) is null)
        {
            return [];
        }

        var newest = new SiteBackup(site.Folder, options).Files.Newest(now) is { } backup ? site.Newest.Clock.DateOf(backup.MadeAt) : (DateOnly?)null;
        var days = site.Ledger.Mornings.Between((newest ?? DateOnly.MinValue).AddDays(1), DateOnly.MaxValue)
            .Where(m => m.Step == MorningStep.Written).Select(m => m.Date).Distinct().Count();
        return days < MostDays ? []
            : newest is { } date ? [FormattableString.Invariant($"There has been no backup of the records since {date:yyyy-MM-dd}: {WhatToDo}")]
            : [$"There is no backup of the records: {WhatToDo}"];
    }
}
