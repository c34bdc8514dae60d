using System.Text.RegularExpressions;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Languages;
using DailyAdjust.Tests.Architecture;
using Xunit;

namespace DailyAdjust.Tests.Languages;

/// <summary>The translators' files.</summary>
public partial class CatalogueTests
{
    private static readonly Catalogue Spanish = Catalogue.Read("es");

    /// <summary>A hole that is missing or new would lose a number or show none.</summary>
    [Fact]
    public void Every_entry_has_the_holes_and_the_blanks_of_its_English()
    {
        Assert.InRange(Spanish.Entries.Count, 700, int.MaxValue);
        Assert.All(Spanish.Entries, entry =>
        {
            Assert.Equal(TestLanguages.Holes(entry.Key), TestLanguages.Holes(entry.Value));
            Assert.Equal((entry.Key[0] == ' ', entry.Key[^1] == ' '), (entry.Value[0] == ' ', entry.Value[^1] == ' '));
        });
    }

    /// <summary>An entry whose English was reworded would never be said: its words must stand in one file of the program.</summary>
    [Fact]
    public void Every_entry_is_something_that_the_program_says()
    {
        var files = Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.*", SearchOption.AllDirectories)
            .Where(f => f.EndsWith(".cs", StringComparison.Ordinal) || f.EndsWith(".razor", StringComparison.Ordinal))
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Select(f => Words().Matches(Comment().Replace(File.ReadAllText(f), "")).Select(m => m.Value).ToHashSet(StringComparer.Ordinal))
            .ToList();

        // A check's sentence may end with what the file beside it says.
        files.Add([.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "src", "DailyAdjust.Core", "Weather", "Checks"), "Clock*.cs").SelectMany(f => Words().Matches(File.ReadAllText(f)).Select(m => m.Value))]);

        // What is recorded in metric units is said in those of the site.
        var core = Path.Combine(Repository.Root, "src", "DailyAdjust.Core");
        var units = Words().Matches(File.ReadAllText(Path.Combine(core, "Sites", "RecordedUnits.cs"))).Select(m => m.Value).ToList();
        files.AddRange(Directory.EnumerateFiles(Path.Combine(core, "Weather"), "*.cs", SearchOption.AllDirectories)
            .Select(f => Words().Matches(File.ReadAllText(f)).Select(m => m.Value).Concat(units).ToHashSet(StringComparer.Ordinal)));
        var names = new System.Globalization.CultureInfo("").DateTimeFormat;
        files.Add([.. names.MonthNames, .. names.AbbreviatedMonthNames, .. names.DayNames, .. names.AbbreviatedDayNames]);
        var stale = Spanish.Entries.Keys.Where(key => Words().Matches(key).Select(m => m.Value).ToList() is var words && !files.Exists(f => words.TrueForAll(f.Contains)));
        Assert.Empty(stale);
    }

    /// <summary>Checks record what they find in English, figures and quoted names as they are: each of their sentences has its Spanish, in the units of either kind of site.</summary>
    [Fact]
    public void Every_sentence_of_the_checks_of_weather_has_its_Spanish()
    {
        var said = Directory.EnumerateFiles(Path.Combine(Repository.Root, "src", "DailyAdjust.Core", "Weather", "Checks"), "*Check.cs")
            .SelectMany(f => CheckSentence().Matches(File.ReadAllText(f)).Select(m => m.Groups["words"].Value))
            .Where(words => !words.Contains("its sun is", StringComparison.Ordinal) && !words.Contains("{unit}", StringComparison.Ordinal))
            .Select(words => CodeHole().Replace(words.Replace("\\\"", "\"", StringComparison.Ordinal), "7"))
            .Concat(["its sun is about 60 minutes late on 6 of the last 10 days: \"clock: utc\" / \"stamp: end\", \"clock: local\" in site.yaml would fit, or the logger's own clock is off"])
            .Concat(["its sun is about 60 minutes early on 6 of the last 10 days: no clock setting fits; set the logger's own clock"])
            .ToList();
        Assert.InRange(said.Count, 12, int.MaxValue);
        Assert.All(
            said.SelectMany(words => new[] { words, RecordedUnits.Sentence(UnitSystem.Us, words) }),
            words => Assert.Contains(RecordedWords.Of(words).Template, Spanish.Entries.Keys));
    }

    [Fact]
    public void A_date_with_its_year_is_said_as_the_language_says_it()
    {
        var date = new DateOnly(2026, 11, 26);
        Assert.Equal(("jueves 26 de noviembre de 2026", "noviembre de 2026"), (DateWords.LongDate(date).In(Spanish.AsLanguage()), DateWords.Month(date).In(Spanish.AsLanguage())));
        Assert.Equal(("Thursday 26 November 2026", "November 2026"), (DateWords.LongDate(date).ToString(), DateWords.Month(date).ToString()));
    }

    [Fact]
    public void A_catalogue_is_comments_and_pairs_whose_texts_may_go_on_over_lines()
    {
        const string File = """
            # a comment
            msgid ""
            msgstr ""
            "Language: xx\n"

            #: Somewhere.cs
            msgid "say \"{0}\""
            msgstr "di "
            "\"{0}\""

            msgid "not yet"
            msgstr ""
            """;
        var read = Catalogue.Parse("xx", File);
        Assert.Equal(["say \"{0}\""], read.Entries.Keys);
        Assert.Equal(("di \"{0}\"", "not yet"), (read.AsLanguage().Translate("say \"{0}\""), read.AsLanguage().Translate("not yet")));
    }

    [Fact]
    public void What_an_editor_only_guessed_stays_English_and_a_backslash_stays_a_backslash()
    {
        var read = Catalogue.Parse("xx", "#, fuzzy\nmsgid \"a\"\nmsgstr \"b\"\n\nmsgid \"c\"\nmsgstr \"\\\\new\"");
        Assert.Equal([new("c", "\\new")], read.Entries);
    }

    [Theory]
    [InlineData("msgid \"a\nmsgstr \"b\"", "line 1")]
    [InlineData("msgid \"a\"\nmsgstr b", "line 2")]
    [InlineData("msgid \"a\"\nmsgplural \"b\"", "line 2")]
    [InlineData("msgid \"a\"\nmsgstr \"b\"\n\nmsgid \"a\"\nmsgstr \"c\"\n\nmsgid \"d\"\nmsgstr \"e\"", "line 4: \"a\" stands twice")]
    [InlineData("msgid \"a\"\n\nmsgid \"b\"\nmsgstr \"c\"", "line 1: \"a\" has no msgstr")]
    public void A_damaged_catalogue_says_where(string text, string where) =>
        Assert.Contains(where, Assert.Throws<FormatException>(() => Catalogue.Parse("xx", text)).Message, StringComparison.Ordinal);

    [GeneratedRegex("InvariantCulture,\\s*\\$\"(?<words>([^\"\\\\]|\\\\.)*)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CheckSentence();

    [GeneratedRegex("\\{[^{}]*\\}", RegexOptions.None, 1000)]
    private static partial Regex CodeHole();

    [GeneratedRegex("[A-Za-z]{2,}", RegexOptions.None, 1000)]
    private static partial Regex Words();

    [GeneratedRegex("^\\s*//.*$", RegexOptions.Multiline, 1000)]
    private static partial Regex Comment();
}
