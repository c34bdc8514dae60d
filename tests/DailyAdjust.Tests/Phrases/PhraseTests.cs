using System.Globalization;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Phrases;

public class PhraseTests
{
    private static readonly Language Backwards = new("xx", template => template switch
    {
        "station {0}: {1}" => "{1} bei {0}",
        "off" => "aus",
        "{0} and {1}" => "{0} und {1}",
        "{0} box" => "{0} Kasten",
        _ => template,
    });

    [Fact]
    public void The_sentence_with_its_holes_is_the_key_and_a_phrase_in_a_hole_is_said_in_the_same_language()
    {
        Phrase phrase = $"station {new StationKey("C1", "3")}: {new Phrase("off")}";
        Assert.Equal(("station {0}: {1}", "station C1/3: off", "aus bei C1/3"), (phrase.Template, phrase.ToString(), phrase.In(Backwards)));
    }

    [Fact]
    public void Text_in_a_hole_is_verbatim_whatever_it_looks_like()
    {
        const string Note = "off {0} {{ \"x\"";
        Phrase phrase = $"station {1}: {Note}";
        Assert.Equal(("station 1: " + Note, Note + " bei 1"), (phrase.ToString(), phrase.In(Backwards)));
        Assert.Equal("off", Phrase.Verbatim("off").In(Backwards));
    }

    [Fact]
    public void Braces_of_a_sentence_are_its_own()
    {
        Assert.Equal("{3} of 4", ((Phrase)$"{{3}} of {4}").ToString());
        Assert.Equal("{a}", new Phrase("{a}").In(Backwards));
    }

    [Fact]
    public void Numbers_know_no_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo("de-DE");
            Assert.Equal("1.50 and 1234.5", ((Phrase)$"{1.5:0.00} and {1234.5}").ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Lists_counts_and_shapes_are_made_in_the_language()
    {
        Phrase[] items = [new("off"), Phrase.Verbatim("b"), new("off")];
        Assert.Equal(("off, b and off", "aus, b und aus"), (Phrase.List(items).ToString(), Phrase.List(items).In(Backwards)));
        Assert.Equal("", Phrase.List([]).ToString());
        Assert.Equal("off", Phrase.List(items[..1]).ToString());
        Assert.Equal(("1 Kasten", "2 boxes"), (Phrase.Count(1, "box", "boxes").In(Backwards), Phrase.Count(2, "box", "boxes").In(Backwards)));
        Assert.Equal("AUS", items[0].Shaped(word => word.ToUpperInvariant()).In(Backwards));
        Assert.True(Phrase.Empty.Shaped(word => word + ".").IsEmpty);
        Assert.Equal("off b", Phrase.Sentences(items[0], Phrase.Empty, items[1]).ToString());
    }

    [Fact]
    public void A_part_is_replaced_only_where_it_is_that_very_part()
    {
        var part = Phrase.Verbatim("`checked`");
        Phrase phrase = $"note {"`checked`"}: {Phrase.Of($"say {part}").Shaped(s => s + "!")}";
        Assert.Equal("note `checked`: say <checked>!", phrase.Replace(part, Phrase.Verbatim("<checked>")).ToString());
    }

    [Fact]
    public void Phrases_are_equal_when_they_say_the_same()
    {
        Assert.Equal(new Phrase("station 1: off"), Phrase.Of($"station {1}: {new Phrase("off")}"));
        Assert.Single(new[] { new Phrase("off"), Phrase.Verbatim("off") }.Distinct());
        Assert.NotEqual(new Phrase("on"), new Phrase("off"));
    }

    [Fact]
    public void What_is_appended_after_it_was_said_is_said_too()
    {
        var phrase = new Phrase("a");
        Assert.Equal("a", phrase.ToString());
        phrase.AppendLiteral(" b ");
        phrase.AppendFormatted(3);
        Assert.Equal("a b 3", phrase.ToString());
    }
}
