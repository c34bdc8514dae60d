using System.Text;
using System.Text.RegularExpressions;
using DailyAdjust.Core.Morning;
using DailyAdjust.Ledger;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Languages;
using DailyAdjust.Service.Sites;
using DailyAdjust.Tests.Languages;
using Xunit;

namespace DailyAdjust.ServiceTests.Languages;

/// <summary>The sheets of the demo's season, said in other languages.</summary>
public sealed partial class DemoInOtherLanguagesTests : IDisposable
{
    private static readonly string[] ForPeople = [ReportFiles.Html, ReportFiles.Text, ReportFiles.FullText];

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Whatever_they_say_has_its_Spanish_and_nothing_is_said_but_by_phrases()
    {
        Assert.Equal(0, InProcess.Run("demo", "--home", _home.Path).ExitCode);
        var folder = Assert.Single(_home.Home.Sites());
        string[] names = [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "sample-weather"), "*.*", SearchOption.AllDirectories).SelectMany(Names)];
        var met = new HashSet<string>(StringComparer.Ordinal);
        using var site = OpenSite.Open(folder, LedgerMode.Read);
        var sheets = site.Ledger.Sheets.Issued();
        Assert.InRange(sheets.Count, 8, int.MaxValue);
        foreach (var issued in sheets)
        {
            var sheet = MorningCalculation.Run(AdviceBook.Again(site, issued.Date, issued.AsOf)!.Value.Inputs);
            var issue = new SheetIssue { SiteId = folder.Name, Number = issued.Issue };
            MorningReport.Render(sheet, issue, TestLanguages.Noting(met));
            var report = MorningReport.Render(sheet, issue, TestLanguages.Bracketed);
            Assert.All(ForPeople, file => Assert.Empty(TestLanguages.Outside(Encoding.UTF8.GetString(report[file].Span), [.. names, folder.Name, .. TestLanguages.NoWords])));
        }

        Assert.InRange(met.Count, 250, int.MaxValue);
        var spanish = Catalogue.Read("es").Entries;
        Assert.DoesNotContain(met, t => TestLanguages.HasWords(t) && !spanish.ContainsKey(t));
    }

    /// <summary>What the course's own files call things, and what people noted.</summary>
    private static IEnumerable<string> Names(string file) => file.EndsWith("site.yaml", StringComparison.Ordinal)
        ? Named().Matches(File.ReadAllText(file)).Select(m => m.Groups["name"].Value.Trim('"', ' ')).Where(v => v.Length > 1)
        : Path.GetFileName(file) is "stations.csv" or "logbook.csv" ? File.ReadAllLines(file).Skip(1).SelectMany(l => l.Split(',', '"')).Where(v => v.Length > 1) : [];

    [GeneratedRegex("^[- ]*(name|place): (?<name>[^#\\r\\n]+)|(name|id): (?<name>\"[^\"]*\"|[^,}#\\r\\n]+)", RegexOptions.ExplicitCapture | RegexOptions.Multiline, 1000)]
    private static partial Regex Named();
}
