using System.Text.RegularExpressions;
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
        var names = new System.Globalization.CultureInfo("").DateTimeFormat;
        files.Add([.. names.MonthNames, .. names.AbbreviatedMonthNames, .. names.DayNames, .. names.AbbreviatedDayNames]);
        var stale = Spanish.Entries.Keys.Where(key => Words().Matches(key).Select(m => m.Value).ToList() is var words && !files.Exists(f => words.TrueForAll(f.Contains)));
        Assert.Empty(stale);
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

    [Theory]
    [InlineData("msgid \"a\nmsgstr \"b\"", "line 1")]
    [InlineData("msgid \"a\"\nmsgstr b", "line 2")]
    [InlineData("msgid \"a\"\nmsgplural \"b\"", "line 2")]
    [InlineData("msgid \"a\"\nmsgstr \"b\"\n\nmsgid \"a\"\nmsgstr \"c\"", "stands twice")]
    public void A_damaged_catalogue_says_where(string text, string where) =>
        Assert.Contains(where, Assert.Throws<FormatException>(() => Catalogue.Parse("xx", text)).Message, StringComparison.Ordinal);

    [GeneratedRegex("[A-Za-z]{2,}", RegexOptions.None, 1000)]
    private static partial Regex Words();

    [GeneratedRegex("^\\s*//.*$", RegexOptions.Multiline, 1000)]
    private static partial Regex Comment();
}
