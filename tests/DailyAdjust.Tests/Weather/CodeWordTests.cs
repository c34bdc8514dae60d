using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>Words of files are a contract: every member has its own, whatever it is called in the code, and an unknown one is no word at all.</summary>
public sealed class CodeWordTests
{
    [Fact]
    public void Every_way_to_know_ETo_has_its_word()
    {
        Assert.Equal(
            ["hourly", "daily", "part-estimated", "temperature-only", "supplied", "other-station", "expected", "open"],
            Enum.GetValues<EtoBasis>().Select(EtoBasisCode.Of));
        Assert.Throws<ArgumentOutOfRangeException>(() => EtoBasisCode.Of((EtoBasis)99));
    }

    [Fact]
    public void Every_way_to_know_a_rate_has_its_word_and_is_found_by_it()
    {
        Assert.Equal(["assumed", "catalogue", "measured"], Enum.GetValues<RateKnown>().Select(RateKnownWord.Of));
        Assert.All(Enum.GetValues<RateKnown>(), known => Assert.Equal(known, RateKnownWord.Find(RateKnownWord.Of(known))));
        Assert.Throws<ArgumentOutOfRangeException>(() => RateKnownWord.Of((RateKnown)99));
    }
}
