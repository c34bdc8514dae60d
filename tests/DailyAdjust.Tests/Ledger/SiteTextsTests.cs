using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Inputs;
using Xunit;
using static DailyAdjust.Tests.Ledger.Samples;

namespace DailyAdjust.Tests.Ledger;

public sealed class SiteTextsTests : IDisposable
{
    private readonly LedgerFolder _home = new();
    private readonly SiteLedger _ledger;

    public SiteTextsTests() => _ledger = _home.Write();

    [Fact]
    public void A_version_holds_from_its_day_and_earlier_days_keep_theirs()
    {
        Add(1, "a");
        Add(10, "b");
        Assert.Equal(["1 a", "10 b"], Held());
        Assert.Equal(Bytes("stations of b"), _ledger.SiteVersions.Effective()[1].Stations);
    }

    [Fact]
    public void The_same_text_again_changes_nothing()
    {
        Add(1, "a");
        Assert.Null(Add(5, "a"));
        Add(10, "b");
        Assert.Null(Add(10, "b"));
        Assert.Null(Add(11, "b", corrects: true));
        Assert.Equal(2, _ledger.Watermark);
    }

    [Fact]
    public void Going_back_to_an_earlier_text_is_a_version_of_its_own()
    {
        Add(1, "a");
        Add(10, "b");
        Add(20, "a");
        Assert.Equal(["1 a", "10 b", "20 a"], Held());
    }

    [Fact]
    public void A_later_version_of_the_same_or_an_earlier_day_holds_from_that_day_on()
    {
        Add(1, "a");
        Add(10, "b");
        Add(10, "c");
        Assert.Equal(["1 a", "10 c"], Held());
        Add(5, "d");
        Assert.Equal(["1 a", "5 d"], Held());
        Add(5, "d2");
        Add(3, "d2");
        Assert.Equal(["1 a", "3 d2"], Held());
    }

    [Fact]
    public void A_correction_holds_from_the_start_of_the_version_it_corrects()
    {
        Add(1, "a");
        Add(10, "b");
        var fixedUp = Add(15, "b, right this time", corrects: true);
        Assert.Equal(new DateOnly(2026, 6, 10), fixedUp!.From);
        Assert.Equal(["1 a", "10 b, right this time"], Held());
    }

    [Fact]
    public void A_correction_of_an_earlier_time_takes_the_place_of_the_version_in_force_then()
    {
        Add(1, "a");
        Add(10, "b");
        Add(7, "a, right this time", corrects: true);
        Assert.Equal(["1 a, right this time"], Held());
    }

    [Fact]
    public void A_correction_with_nothing_to_correct_is_a_first_version()
    {
        Add(4, "a", corrects: true);
        Assert.Equal(["4 a"], Held());
    }

    [Fact]
    public void What_held_at_an_earlier_input_number_can_be_asked_for()
    {
        Add(1, "a");
        Add(10, "b");
        Add(15, "c", corrects: true);
        Assert.Empty(Held(0));
        Assert.Equal(["1 a"], Held(1));
        Assert.Equal(["1 a", "10 b"], Held(2));
        Assert.Equal(["1 a", "10 c"], Held(3));
    }

    [Fact]
    public void Text_that_moves_from_one_file_to_the_other_is_another_version() =>
        Assert.NotEqual(SiteTexts.ShaOf(Bytes("ab"), Bytes("c")), SiteTexts.ShaOf(Bytes("a"), Bytes("bc")), StringComparer.Ordinal);

    public void Dispose()
    {
        _ledger.Dispose();
        _home.Dispose();
    }

    private SiteText? Add(int day, string text, bool corrects = false) =>
        _ledger.SiteVersions.Add(new DateOnly(2026, 6, day), corrects, Bytes(text), Bytes("stations of " + text), LedgerFolder.Noon);

    private List<string> Held(long upTo = long.MaxValue) =>
        [.. _ledger.SiteVersions.Effective(upTo).Select(v => FormattableString.Invariant($"{v.From.Day} {System.Text.Encoding.UTF8.GetString(v.Site)}"))];
}
