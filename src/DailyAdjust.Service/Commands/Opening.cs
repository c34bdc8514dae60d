using DailyAdjust.Ledger;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>Opens a site for a command.</summary>
internal static class Opening
{
    /// <summary>For commands that print: beside a running service, changing nothing.</summary>
    /// <exception cref="WrongInputException">Nothing has come in yet.</exception>
    public static OpenSite ToRead(this SiteFolder folder)
    {
        try
        {
            var site = OpenSite.Open(folder, LedgerMode.Read);
            if (site.Versions.Count > 0)
            {
                return site;
            }

            site.Dispose();
        }
        catch (LedgerException missing) when (missing.Trouble == LedgerTrouble.Missing)
        {
            // Said below, with what to do.
        }

        throw new WrongInputException(
            $"{folder.Name}: nothing has been taken in yet.", "`dailyadjust ingest FILE` or `dailyadjust morning` reads the description and the files; `dailyadjust check` says what is missing.");
    }

    /// <summary>For commands that change something, with the newest description taken in.</summary>
    /// <param name="folder">The site.</param>
    /// <param name="today">The date on which an edit is read; null = the site's own now.</param>
    /// <param name="from">The first date on which an edit holds, if given.</param>
    /// <param name="time">The clock.</param>
    /// <param name="notice">What is wrong with the description; null = nothing.</param>
    /// <exception cref="WrongInputException">There never was a good description.</exception>
    public static OpenSite ToWrite(this SiteFolder folder, DateOnly? today, DateOnly? from, TimeProvider time, out string? notice)
    {
        if (!SiteLedger.IsThere(folder.LedgerFile))
        {
            // Of a new site. An inbox that is gone later is an alarm, and a share that is not mounted gets no folder in its place.
            Directory.CreateDirectory(folder.Inbox);
        }

        var site = OpenSite.Open(folder, LedgerMode.Write);
        try
        {
            var now = time.GetUtcNow();
            var date = today ?? (site.Versions.Count > 0 ? site.Newest.Clock.DateOf(now) : DateOnly.FromDateTime(now.UtcDateTime));
            notice = DescriptionIntake.Take(site, date, from, now);
            return notice is not null && site.Versions.Count == 0
                ? throw new WrongInputException(notice, "`dailyadjust check` lists every problem with its line and what to do.")
                : site;
        }
        catch
        {
            site.Dispose();
            throw;
        }
    }
}
