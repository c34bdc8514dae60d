using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>One start of a program that is to be laid: its stations one after another.</summary>
/// <param name="FlowLPerMin">What the pump gives in each minute after the start, begun ones whole.</param>
/// <param name="Minutes">From the start to the end of the last station.</param>
internal sealed record StartBlock(IReadOnlyList<double> FlowLPerMin, double Minutes)
{
    private const double Tolerance = 1e-9;

    /// <summary>Of a program's stations in the controller's order, each with its minutes.</summary>
    public static StartBlock Of(Controller controller, IEnumerable<(Station Station, double Minutes)> stations)
    {
        var sequence = new StationSequence(controller, stations);
        var flow = new double[Begun(sequence.Length.TotalMinutes)];
        foreach (var part in sequence.Parts)
        {
            for (var m = (int)Math.Floor(part.Begins.TotalMinutes + Tolerance); m < Begun(part.Ends.TotalMinutes); m++)
            {
                // Of a minute in which one station ends and the next begins, the pump gives never both at once.
                flow[m] = Math.Max(flow[m], part.Station.FlowLPerMin ?? 0);
            }
        }

        return new(flow, sequence.Length.TotalMinutes);
    }

    private static int Begun(double minutes) => (int)Math.Ceiling(minutes - Tolerance);
}

/// <summary>
/// All different nights of two years minute by minute: which boxes are busy, and what the pump gives. A night is the watering window that opens on a date: a start
/// after midnight belongs to the night of the date before. Begun minutes count whole.
/// </summary>
internal sealed class PlanNights
{
    private const int DaysLookedAt = 731;
    private const double Tolerance = 1e-9;

    private readonly double? _capacity;
    private readonly List<DateOnly> _nights;
    private readonly double[][] _flow;
    private readonly Dictionary<string, bool[][]> _busy;

    public PlanNights(Site site, WateringWindow window, IReadOnlyList<PlannedProgram> programs)
    {
        Opens = window.Opens;
        Length = (int)(window.Closes - window.Opens).TotalMinutes;
        Length = Length == 0 ? 24 * 60 : Length;
        _capacity = site.PumpCapacityLPerMin;

        // Nights on which the same programs start, before and after midnight, are one.
        string Runs(DateOnly date) => string.Concat(programs.Select(p => p.Program.Days.Includes(date) ? '1' : '0'));
        _nights = [.. Enumerable.Range(0, DaysLookedAt).Select(site.Start.AddDays).DistinctBy(d => Runs(d) + Runs(d.AddDays(1)), StringComparer.Ordinal)];
        _flow = [.. _nights.Select(_ => new double[Length])];
        _busy = site.Controllers.ToDictionary(c => c.Id, _ => _nights.Select(_ => new bool[Length]).ToArray(), StringComparer.Ordinal);
    }

    public TimeOnly Opens { get; }

    /// <summary>Minutes from the window's opening to its closing.</summary>
    public int Length { get; }

    public TimeOnly TimeAt(int minute) => Opens.AddMinutes(minute);

    public bool AfterMidnight(int minute) => Opens.ToTimeSpan().TotalMinutes + minute >= 24 * 60;

    /// <summary>Minutes after the opening; null where it lies outside the window.</summary>
    public int? MinuteOf(TimeOnly time)
    {
        var minute = (int)(time - Opens).TotalMinutes;
        return minute < Length ? minute : null;
    }

    /// <summary>Whether a start fits on every night on which it runs: inside the window, its box free, the pump strong enough.</summary>
    public bool Fits(PlannedProgram program, StartBlock start, int minute)
    {
        if (minute + start.Minutes > Length + Tolerance)
        {
            return false;
        }

        var busy = _busy[program.Key.Controller];
        foreach (var night in NightsOf(program, minute))
        {
            for (var m = 0; m < start.FlowLPerMin.Count; m++)
            {
                var flow = start.FlowLPerMin[m];
                if (busy[night][minute + m] || (flow > 0 && _flow[night][minute + m] + flow > _capacity + Tolerance))
                {
                    return false;
                }
            }
        }

        return true;
    }

    public void Lay(PlannedProgram program, StartBlock start, int minute)
    {
        foreach (var night in NightsOf(program, minute))
        {
            Array.Fill(_busy[program.Key.Controller][night], value: true, minute, start.FlowLPerMin.Count);
            for (var m = 0; m < start.FlowLPerMin.Count; m++)
            {
                _flow[night][minute + m] += start.FlowLPerMin[m];
            }
        }
    }

    private IEnumerable<int> NightsOf(PlannedProgram program, int minute)
    {
        var later = AfterMidnight(minute) ? 1 : 0;
        return Enumerable.Range(0, _nights.Count).Where(i => program.Program.Days.Includes(_nights[i].AddDays(later)));
    }
}
