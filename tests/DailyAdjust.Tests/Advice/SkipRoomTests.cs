using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>
/// skip_room: 5 mm are missing tonight, 3 may stay (6 % of 50): 2 of 10 mm would do, 20 %, and the ground can wait. The program stands at 40 %: its 4 mm
/// leave 1 mm empty, 2 % of the allowable depletion.
/// </summary>
public class SkipRoomTests
{
    [Theory]
    [InlineData(null, AdviceKind.Skip)] // the design's rule
    [InlineData(0.0, AdviceKind.Leave)] // nothing drains: no walk
    [InlineData(0.02, AdviceKind.Leave)]
    [InlineData(0.021, AdviceKind.Skip)] // more is to stay empty
    public void It_is_left_while_so_much_stays_empty(double? room, AdviceKind expected) => Assert.Equal(expected, Course(40, room).Advice().Advice);

    [Fact]
    public void What_would_drain_is_left_out_all_the_same() => Assert.Equal(AdviceKind.Skip, Course(60, 0).Advice().Advice);

    [Fact]
    public void What_is_off_stays_off() => Assert.Equal(AdviceKind.KeepOff, Course(null, 0).Advice().Advice);

    private static SmallCourse Course(double? percent, double? room) => SmallCourse.OneStation(0, SmallCourse.Area with { LeaveEmpty = 0.06 }) with
    {
        Report = new ReportPolicy { SkipRoom = room },
        Log =
        [
            new LogEntry
            {
                Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)),
                Kind = percent is null ? LogKind.Off : LogKind.Setting,
                Where = new(PlaceKind.Program, "C1", "P1"),
                Value = percent,
                Unit = percent is null ? LogUnit.None : LogUnit.Percent,
            },
        ],
    };
}
