using System.Diagnostics.Metrics;

namespace DailyAdjust.Service.Health;

/// <summary>
/// Counts for whoever listens (dotnet-counters, an OpenTelemetry collector attached to the process): no port is opened, and without a listener they cost nothing.
/// The tag `site` is the site's name.
/// </summary>
internal static class ServiceMetrics
{
    /// <summary>The meter's name.</summary>
    public const string Name = "DailyAdjust";

    private static readonly Meter Meter = new(Name);
    private static readonly Counter<long> Sheets = Meter.CreateCounter<long>("dailyadjust.sheets", "{sheet}", "Sheets issued.");
    private static readonly Counter<long> Missed = Meter.CreateCounter<long>("dailyadjust.mornings.missed", "{morning}", "Mornings slept over.");
    private static readonly Counter<long> Taken = Meter.CreateCounter<long>("dailyadjust.files.taken", "{file}", "Files taken from inboxes.");
    private static readonly Counter<long> Refused = Meter.CreateCounter<long>("dailyadjust.files.refused", "{file}", "Files of inboxes that could not be used.");
    private static readonly Counter<long> Mails = Meter.CreateCounter<long>("dailyadjust.mails", "{message}", "Tries to send mail, by the `state` that they led to.");
    private static readonly Counter<long> Failures = Meter.CreateCounter<long>("dailyadjust.looks.failed", "{look}", "Looks at a site that ended in an error.");
    private static readonly Histogram<double> Looks = Meter.CreateHistogram<double>("dailyadjust.looks", "s", "How long looks at a site took.");

    public static void SheetIssued(string site) => Sheets.Add(1, Tag(site));

    public static void MorningMissed(string site) => Missed.Add(1, Tag(site));

    public static void FileTaken(string site) => Taken.Add(1, Tag(site));

    public static void FileRefused(string site) => Refused.Add(1, Tag(site));

    public static void MailTried(string site, string state) => Mails.Add(1, Tag(site), new("state", state));

    public static void LookFailed(string site) => Failures.Add(1, Tag(site));

    public static void Looked(string site, TimeSpan took) => Looks.Record(took.TotalSeconds, Tag(site));

    private static KeyValuePair<string, object?> Tag(string site) => new("site", site);
}
