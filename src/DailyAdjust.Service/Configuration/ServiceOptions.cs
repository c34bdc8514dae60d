using System.ComponentModel.DataAnnotations;

namespace DailyAdjust.Service.Configuration;

/// <summary>Settings of the service; every one is explained in docs/configuration.md and stands in deploy/appsettings.sample.json.</summary>
public sealed class ServiceOptions
{
    /// <summary>The one section of appsettings.json that is read.</summary>
    public const string Section = "DailyAdjust";

    public const string Auto = "auto";
    public const string Never = "never";

    /// <summary>How often the inboxes are looked at and the ledgers are asked what is due, seconds.</summary>
    [Range(1, 600)]
    public int PollSeconds { get; set; } = 30;

    /// <summary>How long before the report hour the work begins, minutes.</summary>
    [Range(0, 120)]
    public int WorkBeginsMinutesBefore { get; set; } = 10;

    /// <summary>How long a morning waits for sources that are being pulled, seconds; the report hour never waits for them.</summary>
    [Range(0, 600)]
    public int PullWaitSeconds { get; set; } = 60;

    /// <summary>The largest file that is taken from an inbox, megabytes (10⁶ bytes).</summary>
    [Range(1, 1000)]
    public int LargestFileMegabytes { get; set; } = 200;

    /// <summary>How long files stay in inbox/taken, days; their bytes stay in the ledger.</summary>
    [Range(1, 3650)]
    public int KeepTakenDays { get; set; } = 60;

    /// <summary>How long report folders stay, days; what was issued stays in the ledger.</summary>
    [Range(1, 3650)]
    public int KeepReportsDays { get; set; } = 400;

    /// <summary>How long log files stay, days.</summary>
    [Range(1, 3650)]
    public int KeepLogsDays { get; set; } = 31;

    /// <summary>When `serve` makes the day's backup of a site, on the site's clock; <see cref="Never"/> = not at all.</summary>
    [RegularExpression("([01][0-9]|2[0-3]):[0-5][0-9]|never", ErrorMessage = "BackupAt is a time as 12:00, or never.")]
    public string BackupAt { get; set; } = "12:00";

    /// <summary>How long backups stay, days; the newest three stay in any case.</summary>
    [Range(1, 3650)]
    public int KeepBackupsDays { get; set; } = 30;

    /// <summary>A folder, best on another disk, into which every backup is copied too; null = none.</summary>
    public string? BackupFolder { get; set; }

    /// <summary>The least that is written to the log: Debug, Information, Warning or Error.</summary>
    [AllowedValues("Debug", "Information", "Warning", "Error")]
    public string LogLevel { get; set; } = "Information";

    /// <summary>Who prints sheets as report.pdf: <see cref="Auto"/> = an installed Chromium, <see cref="Never"/> = nobody, otherwise the path of a browser.</summary>
    [Required]
    public string Pdf { get; set; } = Auto;

    /// <summary>The longest that one print may take, seconds.</summary>
    [Range(1, 300)]
    public int PdfSeconds { get; set; } = 30;

    /// <summary>An address that is asked whenever all mornings are done; empty = none.</summary>
    public string PingUrl { get; set; } = "";

    /// <summary>Null = no sheet is mailed.</summary>
    public MailOptions? Mail { get; set; }

    /// <summary>Null = none, or none that can be used: such a one is refused when the settings are read.</summary>
    internal Uri? PingAddress => Uri.TryCreate(PingUrl, UriKind.Absolute, out var address) && (address.Scheme is "http" or "https") ? address : null;
}
