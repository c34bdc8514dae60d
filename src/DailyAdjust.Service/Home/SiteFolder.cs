using System.Globalization;

namespace DailyAdjust.Service.Home;

/// <summary>The paths of one site. Moving a course is moving this folder.</summary>
/// <param name="name">The folder's name, by which commands call the site.</param>
/// <param name="path">The folder.</param>
public sealed class SiteFolder(string name, string path)
{
    public string Name { get; } = name;

    public string Path { get; } = path;

    public string SiteFile => System.IO.Path.Combine(Path, "site.yaml");

    public string StationsFile => System.IO.Path.Combine(Path, "stations.csv");

    public string Inbox => System.IO.Path.Combine(Path, "inbox");

    public string Taken => System.IO.Path.Combine(Inbox, "taken");

    public string Refused => System.IO.Path.Combine(Inbox, "refused");

    public string Reports => System.IO.Path.Combine(Path, "reports");

    public string Summaries => System.IO.Path.Combine(Path, "summaries");

    public string LedgerFile => System.IO.Path.Combine(Path, "ledger.db");

    /// <summary>Copies of the ledger.</summary>
    public string Backups => Ledger.SiteLedger.BackupsOf(LedgerFile);

    /// <summary>Ledgers whose place a backup took, a folder each.</summary>
    public string SetAside => System.IO.Path.Combine(Path, "set-aside");

    /// <summary>The home folder that a command typed here has to name; null = it is found without being named.</summary>
    public string? HomeToName => System.IO.Path.GetDirectoryName(System.IO.Path.GetDirectoryName(Path)) is { } home
        && !string.Equals(home, HomeFolder.Find(null).Path, StringComparison.Ordinal) ? home : null;

    public string ReportFolder(DateOnly date) =>
        System.IO.Path.Combine(Reports, date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
}
