using DailyAdjust.Core.Sites;
using DailyAdjust.Reports;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Printing;

/// <summary>
/// How the answers to a sheet that was not made on its own date are booked on its own morning. It stands beside the sheet, not on it: a
/// sheet's bytes know neither today's date nor where its home lies.
/// </summary>
internal static class AnsweringNote
{
    /// <param name="folder">The site's.</param>
    /// <param name="clock">The site's.</param>
    /// <param name="asOf">The instant whose knowledge the sheet has, UTC.</param>
    /// <param name="now">UTC.</param>
    /// <returns>Null = it is today's sheet: what is logged now is said now.</returns>
    public static string? Of(SiteFolder folder, SiteClock clock, DateTimeOffset asOf, DateTimeOffset now)
    {
        if (clock.DateOf(now) == clock.DateOf(asOf))
        {
            return null;
        }

        var home = folder.HomeToName is { } named ? $" --home {ShellWord.Of(named)}" : "";
        return FormattableString.Invariant($"The sheet's `log` commands book now. To answer it as of its own morning, add: --date {clock.ToLocal(asOf):yyyy-MM-dd} --time {clock.ToLocal(asOf):HH:mm}{home}");
    }
}
