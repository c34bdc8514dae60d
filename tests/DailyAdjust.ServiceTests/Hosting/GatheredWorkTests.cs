using DailyAdjust.Service.Hosting;
using Xunit;

namespace DailyAdjust.ServiceTests.Hosting;

public sealed class GatheredWorkTests
{
    [Fact]
    public void What_was_only_just_done_is_done_once_for_all_who_ask_meanwhile()
    {
        var done = 0;
        var work = new GatheredWork(() =>
        {
            done++;
            Thread.Sleep(2000);
        });
        work.Ask();
        Assert.Equal(1, done);
        work.Ask();
        work.Ask();
        Assert.Equal(1, done);
        work.DoDue();
        Assert.Equal(2, done);
        work.DoDue();
        Assert.Equal(2, done);
    }

    [Fact]
    public void What_takes_no_time_is_done_whenever_somebody_asks()
    {
        var done = 0;
        var work = new GatheredWork(() => done++);
        for (var i = 1; i <= 3; i++)
        {
            work.Ask();
            Thread.Sleep(100);
            Assert.Equal(i, done);
        }
    }

    [Fact]
    public void What_failed_is_still_due()
    {
        var tries = 0;
        var work = new GatheredWork(() => throw new IOException((++tries).ToString(System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Throws<IOException>(work.Ask);
        Assert.Throws<IOException>(work.Ask);
        Assert.Equal(2, tries);
    }
}
