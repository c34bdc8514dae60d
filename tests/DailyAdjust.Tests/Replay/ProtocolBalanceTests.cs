using DailyAdjust.Core.Replay;
using Xunit;

namespace DailyAdjust.Tests.Replay;

/// <summary>The protocol's equations (Published/root-zone/six-zones.csv) on four days worked out by hand; storage 10 mm, full at first.</summary>
public class ProtocolBalanceTests
{
    [Fact]
    public void Four_days_by_hand()
    {
        var balance = new ProtocolBalance(10, depletionMm: 0);

        // Day 1: 6 mm are drawn: 4 left.
        balance.Draw(6);
        Assert.Equal(6, balance.RoomMm);

        // Day 2: 5 mm of rain count 4: 8 left; 9 mm are asked for: 1 mm short.
        balance.Rain(5);
        balance.Draw(9);
        Assert.Equal(10, balance.RoomMm);
        Assert.Equal(1, balance.DeficitMm);

        // Day 3: 12 mm applied, of which 1 runs off: 11 reach ground with room for 10: 1 too much. 5 are drawn.
        balance.Irrigate(12, 1);
        balance.Draw(5);
        Assert.Equal(1, balance.SurplusMm);
        Assert.Equal(5, balance.RoomMm);

        // Day 4: rain beyond the storage is no fault of the irrigation; what is watered onto it is.
        balance.Rain(20);
        balance.Irrigate(4, 0);
        Assert.Equal(5, balance.SurplusMm);

        // ETc 20, deficit 1; applied 16, of which 1 ran off and 5 found no room.
        Assert.Equal(95, balance.AdequacyPercent, 9);
        Assert.Equal(37.5, balance.ExcessPercent, 9);
    }

    [Fact]
    public void Where_nothing_was_asked_or_watered_nothing_is_short_or_too_much()
    {
        var balance = new ProtocolBalance(10, depletionMm: 0);
        Assert.Equal(100, balance.AdequacyPercent);
        Assert.Equal(0, balance.ExcessPercent);
    }
}
