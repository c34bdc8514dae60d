using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>The percentage of horizons with several starts and nights against every whole percent tried one by one, by arithmetic of its own.</summary>
public class MultiStartTests
{
    private const double Raw = 50;
    private const double Taw = 100;
    private const double EtoMm = 5;
    private const int Cases = 300;

    private static readonly string[] Evening = ["20:30", "21:30", "22:30"];

    [Fact]
    public void The_exact_percentage_lies_right_below_the_first_whole_percent_that_is_enough()
    {
        int several = 0, bounded = 0;
        for (var seed = 1; seed <= Cases; seed++)
        {
            var dice = new Dice((ulong)seed);
            var starts = dice.Whole(1, 3);
            var (visit, nights) = dice.OneOf<(VisitDays, int)>((VisitDays.Daily, 1), (new VisitDays.Weekdays([DayOfWeek.Monday, DayOfWeek.Thursday]), 3), (new VisitDays.Weekdays([DayOfWeek.Monday]), 7));
            var (depletion, leaveEmpty) = (dice.Between(0, 60), dice.OneOf(0, 0.3, 0.6, 0.95));
            var course = SmallCourse.OneStation(depletion, SmallCourse.Area with { LeaveEmpty = leaveEmpty }) with
            {
                Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", Evening[..starts]) with { Visit = visit }] },
            };
            var enough = Enumerable.Range(0, 1001).First(p => IsEnough(depletion, p / 10.0, starts, nights, leaveEmpty * Raw));
            Assert.Equal(enough, Math.Ceiling(course.Advice().ExactPercent!.Value - 1e-3));
            several += starts * nights > 1 ? 1 : 0;
            bounded += enough > 0 ? 1 : 0;
        }

        Assert.True(several > Cases / 2 && bounded > Cases / 2, $"{several} of several starts, {bounded} above 0");
    }

    /// <summary>Whether so much water a start brings the ground to what may be missing after the last start, and keeps it within the allowable before every later one.</summary>
    private static bool IsEnough(double depletion, double waterMm, int starts, int nights, double mayBeMissing)
    {
        const double same = 1e-9;
        for (var night = 0; night < nights; night++)
        {
            depletion = AfterDay(depletion);
            for (var start = 0; start < starts; start++)
            {
                if (night + start > 0 && depletion > Raw + same)
                {
                    return false;
                }

                depletion = Math.Max(0, depletion - waterMm);
            }
        }

        return depletion <= mayBeMissing + same && AfterDay(depletion) <= Raw + same;
    }

    /// <summary>Less is drawn once more than the allowable is missing in the morning.</summary>
    private static double AfterDay(double depletion) => depletion + (EtoMm * (depletion <= Raw ? 1 : (Taw - depletion) / (Taw - Raw)));
}
