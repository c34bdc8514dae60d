using System.Text;
using System.Text.RegularExpressions;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Languages;
using DailyAdjust.Reports.Words;
using DailyAdjust.Tests.Architecture;
using DailyAdjust.Tests.Plain;
using DailyAdjust.Tests.Reports;
using Xunit;

namespace DailyAdjust.Tests.Languages;

/// <summary>The invented mornings in other languages.</summary>
public partial class SheetLanguageTests
{
    private const int FirstSeed = 7001;
    private const int Sites = 60;

    private static readonly string[] ForPeople = [ReportFiles.Html, ReportFiles.Text, ReportFiles.FullText];

    [Fact]
    public void Whatever_the_sheet_says_has_its_Spanish()
    {
        var met = new HashSet<string>(StringComparer.Ordinal);
        foreach (var sheet in Rendered.EveryMorning)
        {
            MorningReport.Render(sheet, InventedMorning.Issue, TestLanguages.Noting(met));
        }

        Assert.InRange(met.Count, 250, int.MaxValue);
        var spanish = Catalogue.Read("es").Entries;
        Assert.DoesNotContain(met, t => TestLanguages.HasWords(t) && !spanish.ContainsKey(t));
    }

    /// <summary>Random courses with their orders, rounds and seasons.</summary>
    [Fact]
    public void Whatever_the_sheet_of_a_random_course_says_has_its_Spanish()
    {
        var met = new HashSet<string>(StringComparer.Ordinal);
        foreach (var seed in Enumerable.Range(FirstSeed, Sites))
        {
            var course = RandomCase.Of(seed);
            MorningReport.Render(MorningCalculation.Run(course.Morning(course.Weather[^1].Date)), InventedMorning.Issue, TestLanguages.Noting(met));
        }

        Assert.InRange(met.Count, 250, int.MaxValue);
        var spanish = Catalogue.Read("es").Entries;
        Assert.DoesNotContain(met, t => TestLanguages.HasWords(t) && !spanish.ContainsKey(t));
    }

    /// <summary>Names and notes of the invented course stand in the files that invent it; units and files are no words.</summary>
    [Fact]
    public void Nothing_is_said_but_by_phrases()
    {
        var invented = Directory.EnumerateFiles(Path.Combine(Repository.Root, "tests", "DailyAdjust.Tests", "Reports"), "Invented*.cs")
            .Append(Path.Combine(Repository.Root, "tests", "DailyAdjust.Tests", "Reports", "ForecastPartTests.cs"))
            .SelectMany(f => Quoted().Matches(File.ReadAllText(f)).Select(m => m.Groups["text"].Value.Replace("\\\"", "\"", StringComparison.Ordinal)))
            .SelectMany(text => text.Split('{').Select(part => part.Split('}')[^1].Trim()))
            .SelectMany(text => text.Split([". ", ": ", "; "], StringSplitOptions.None).Append(text))
            .Where(text => text.Length > 1);
        foreach (var (sheet, name) in Rendered.EveryMorning.SelectMany(s => ForPeople.Select(f => (s, f))))
        {
            Assert.Empty(TestLanguages.Outside(Of(sheet, name, TestLanguages.Bracketed), [.. invented, .. TestLanguages.NoWords]));
        }
    }

    [Fact]
    public void A_site_chooses_what_its_people_read_and_what_machines_read_stays()
    {
        var english = InventedExceptions.Build();
        var site = english.Site;
        var spanish = english with { Site = SpanishSite(site) };
        var (here, there) = (MorningReport.Render(english, InventedMorning.Issue), MorningReport.Render(spanish, InventedMorning.Issue));
        Assert.All(
            new[] { ReportFiles.AdviceCsv, ReportFiles.AdviceJson, ReportFiles.RoundCsv },
            file => Assert.Equal(here[file].ToArray(), there[file].ToArray()));
        var page = Encoding.UTF8.GetString(there[ReportFiles.Html].Span);
        Assert.Contains("<html lang=\"es\">", page, StringComparison.Ordinal);
        Assert.Contains("Cortar la corriente y poner candado y etiqueta antes de abrir un controlador o la bomba.", page, StringComparison.Ordinal);
        Assert.Contains("dailyadjust log", page, StringComparison.Ordinal);
        Assert.Contains("Apagarlo si el pluviómetro shop marca 0.22 pulg o más antes de las 21:30 hoy.", HtmlReportTests.Readable(page), StringComparison.Ordinal);
        Assert.DoesNotContain("Lock out", page, StringComparison.Ordinal);
        var mail = new SheetMail(there[ReportFiles.AdviceJson].Span, spanish.Site).Subject;
        Assert.Contains(": mié 15 de julio", mail.Replace(",", ":", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal(new SheetMail(here[ReportFiles.AdviceJson].Span, site).AsksForSomething, new SheetMail(there[ReportFiles.AdviceJson].Span, spanish.Site).AsksForSomething);
    }

    [Theory]
    [InlineData(SheetLanguage.English)]
    [InlineData(SheetLanguage.Spanish)]
    public void The_caution_at_the_end_of_the_short_text_is_never_cut(SheetLanguage code)
    {
        var language = SheetLanguages.Of(code);
        foreach (var sheet in Rendered.EveryMorning)
        {
            var text = Of(sheet, ReportFiles.Text, language);
            Assert.EndsWith(" " + CautionWords.Short.In(language), string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
            Assert.InRange(text.Split('\n').Length - 1, 12, 39);
        }
    }

    private static Site SpanishSite(Site site) => site with { Report = site.Report with { Language = SheetLanguage.Spanish } };

    private static string Of(MorningSheet sheet, string file, Language language) => Encoding.UTF8.GetString(MorningReport.Render(sheet, InventedMorning.Issue, language)[file].Span);

    [GeneratedRegex("\"(?<text>([^\"\\\\]|\\\\.)*)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Quoted();
}
