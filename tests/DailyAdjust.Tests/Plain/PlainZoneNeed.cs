using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>What one zone asks of one program.</summary>
internal sealed record PlainZoneNeed(Station Station, double Percent, bool CanWait, bool Due)
{
    private const double Largest = 1000;

    public static PlainZoneNeed Of(PlainMorning morning, Controller controller, WateringProgram program, PlainHorizon horizon, Station station)
    {
        var area = station.Area;
        var raw = area.AllowableDepletionMm;
        var baseMinutes = station.BaseMinutes[program.Id];
        var last = horizon.Starts[^1];

        // (a) and (b): minutes are not rounded.
        IReadOnlyList<PlainStep> At(double percent) =>
            morning.Simulate(station, program, _ => baseMinutes * percent / 100, horizon.FirstAfter ?? last);

        bool BroughtTo(double depletion, double percent) => Step(At(percent), last).After <= depletion + PlainSoil.Same;
        bool StaysWithin(double percent)
        {
            var steps = At(percent);
            return horizon.Later.All(s => Step(steps, s).Before <= raw + PlainSoil.Same);
        }

        var enough = Smallest(p => BroughtTo(area.LeaveEmpty * raw, p));
        var a = enough is { } e ? area.Replace * e : Largest;
        var b = Smallest(StaysWithin) ?? Smallest(p => BroughtTo(0, p)) ?? Largest;

        // Can wait: nothing in the horizon, then the largest percentage on the first date after it.
        var dry = morning.Simulate(
            station,
            program,
            s => horizon.FirstDateAfter.Contains(s) ? PlainWater.Minutes(controller, baseMinutes, controller.PercentMax) : 0,
            horizon.Furthest);
        var canWait = horizon.Later.All(s => Step(dry, s).Before <= raw + PlainSoil.Same) && StaysWithinAfter(dry, horizon, raw);

        var due = Step(dry, horizon.Starts[0]).Before > (area.RunAt * raw) + PlainSoil.Same;
        return new(station, Math.Round(Math.Max(a, b), 4), canWait, due);
    }

    public static PlainStep Step(IReadOnlyList<PlainStep> steps, PlainStart start) => steps.Single(s => s.Event.Start == start);

    /// <summary>Depletion is largest just before water comes: look before every event up to the first start on a later date.</summary>
    private static bool StaysWithinAfter(IReadOnlyList<PlainStep> steps, PlainHorizon horizon, double raw) =>
        horizon.LaterDate is not { } later || steps
            .SkipWhile(s => s.Event.Start != horizon.FirstAfter)
            .Skip(1)
            .TakeWhile(s => s.Event.Start != later)
            .Append(Step(steps, later))
            .All(s => s.Before <= raw + PlainSoil.Same);

    /// <summary>The smallest percentage of 0..1000 that does it, from above; null = none does.</summary>
    private static double? Smallest(Func<double, bool> does)
    {
        if (does(0))
        {
            return 0;
        }

        const double scan = 10;
        for (double high = scan; high <= Largest; high += scan)
        {
            if (!does(high))
            {
                continue;
            }

            var low = high - scan;
            while (high - low > 1e-7)
            {
                var middle = (low + high) / 2;
                if (does(middle))
                {
                    high = middle;
                }
                else
                {
                    low = middle;
                }
            }

            return high;
        }

        return null;
    }
}
