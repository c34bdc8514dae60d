namespace DailyAdjust.Reports;

/// <summary>One file of a report: UTF-8 without byte order mark, lines ended by LF.</summary>
public sealed record ReportFile(string Name, ReadOnlyMemory<byte> Bytes);

/// <summary>The files of one report, in the order in which they should be written.</summary>
public sealed class ReportFiles(IReadOnlyList<ReportFile> files)
{
    public const string Html = "report.html";

    /// <summary>Under 40 lines.</summary>
    public const string Text = "report.txt";
    public const string FullText = "report-full.txt";

    /// <summary>The page printed: derived, made by the service where it can, and no file of the report itself.</summary>
    public const string Print = "report.pdf";
    public const string RoundCsv = "round.csv";
    public const string AdviceCsv = "advice.csv";
    public const string AdviceJson = "advice.json";

    public IReadOnlyList<ReportFile> All { get; } = files;

    /// <exception cref="KeyNotFoundException">The report has no file of that name.</exception>
    public ReadOnlyMemory<byte> this[string name] =>
        All.FirstOrDefault(f => string.Equals(f.Name, name, StringComparison.Ordinal))?.Bytes
        ?? throw new KeyNotFoundException($"The report has no file {name}.");
}
