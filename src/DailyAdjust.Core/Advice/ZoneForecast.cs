using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Irrigation;

namespace DailyAdjust.Core.Advice;

/// <summary>What comes of a choice of water for the horizon's starts, mm.</summary>
internal struct ForecastOutcome
{
    /// <summary>Depletion right after the horizon's last start.</summary>
    public double AfterLastMm;

    /// <summary>Largest depletion before any start of the horizon but its first, and before the first start after it.</summary>
    public double WorstLaterMm;

    /// <summary>Largest depletion from the first start after the horizon up to the first start on a later date.</summary>
    public double WorstBeyondMm;

    /// <summary>Of the program's water: each start's excess over the depletion it meets, added up.</summary>
    public double DrainedMm;
}

/// <summary>
/// One zone's days to come as one list of steps, from 00:00 of the sheet's date, in which only the water of one program's
/// starts is still open. Everything before the first of them is reckoned once.
/// </summary>
internal sealed class ZoneForecast
{
    private readonly Step[] _steps;
    private readonly int _firstOpenStep;
    private readonly int _horizonStarts;
    private readonly int _startsToAfter;
    private readonly int _allStarts;
    private readonly RootZone _beforeFirst;

    public ZoneForecast(ZonePlan zone, double baseMinutes, Step[] steps, double depletionMm, Horizon horizon)
    {
        Zone = zone;
        BaseMinutes = baseMinutes;
        _steps = steps;
        _horizonStarts = horizon.Starts.Count;
        _startsToAfter = _horizonStarts + (horizon.After is null ? 0 : 1);
        _allStarts = _horizonStarts + horizon.FirstDateAfter.Count + (horizon.LaterDate is null ? 0 : 1);
        var soil = new RootZone(zone.TotalAvailableMm, zone.AllowableMm, depletionMm);
        _firstOpenStep = steps.Length;
        for (var i = 0; i < steps.Length; i++)
        {
            Draw(ref soil, steps[i]);
            if (steps[i].Slot >= 0)
            {
                _firstOpenStep = i;
                break;
            }

            Take(ref soil, steps[i]);
        }

        _beforeFirst = soil;
    }

    public ZonePlan Zone { get; }

    public double BaseMinutes { get; }

    /// <summary>In order of time.</summary>
    internal ReadOnlySpan<Step> Steps => _steps;

    /// <summary>How many starts of the program lie in the horizon; with the first one after it; and all that are looked at.</summary>
    internal (int Horizon, int ToAfter, int All) Starts => (_horizonStarts, _startsToAfter, _allStarts);

    /// <summary>How many starts after the first are looked at: the rest of the horizon and the first one after it.</summary>
    public int LaterStarts => Math.Max(0, _startsToAfter - 1);

    /// <summary>Depletion that the horizon's first start meets, mm.</summary>
    public double BeforeFirstMm => _beforeFirst.DepletionMm;

    /// <summary>Runs the horizon.</summary>
    /// <param name="waterMm">Net water of each of the horizon's starts.</param>
    /// <param name="beforeLater">Receives the depletion before each later start; may be empty.</param>
    public ForecastOutcome Run(double waterMm, Span<double> beforeLater = default) => Run(waterMm, 0, beyond: false, beforeLater);

    /// <summary>Runs the horizon without the program's water, and then the first date after it.</summary>
    /// <param name="waterAfterMm">Net water of each start of that date.</param>
    public ForecastOutcome RunBeyond(double waterAfterMm) => Run(0, waterAfterMm, beyond: true, default);

    private ForecastOutcome Run(double waterMm, double waterAfterMm, bool beyond, Span<double> beforeLater)
    {
        var soil = _beforeFirst;
        var outcome = new ForecastOutcome { AfterLastMm = soil.DepletionMm };
        for (var i = _firstOpenStep; i < _steps.Length; i++)
        {
            ref readonly var step = ref _steps[i];
            if (i > _firstOpenStep)
            {
                Draw(ref soil, step);
            }

            if (beyond && step.PastAfter)
            {
                outcome.WorstBeyondMm = Math.Max(outcome.WorstBeyondMm, soil.DepletionMm);
            }

            if (step.Slot < 0)
            {
                Take(ref soil, step);
                continue;
            }

            if (step.Slot > 0 && step.Slot < _startsToAfter)
            {
                outcome.WorstLaterMm = Math.Max(outcome.WorstLaterMm, soil.DepletionMm);
                if (!beforeLater.IsEmpty)
                {
                    beforeLater[step.Slot - 1] = soil.DepletionMm;
                }
            }

            if (step.Slot < _horizonStarts)
            {
                outcome.DrainedMm += Math.Max(0, waterMm - soil.DepletionMm);
                soil.Add(waterMm);
                if (step.Slot == _horizonStarts - 1)
                {
                    outcome.AfterLastMm = soil.DepletionMm;
                }

                continue;
            }

            if (!beyond || step.Slot == _allStarts - 1)
            {
                break;
            }

            soil.Add(step.GrowsIn ? step.AmountMm : waterAfterMm);
        }

        return outcome;
    }

    private static void Draw(ref RootZone soil, in Step step)
    {
        if (step.BeginsDay)
        {
            soil.BeginDay();
        }

        soil.Draw(step.DemandMm);
    }

    private static void Take(ref RootZone soil, in Step step)
    {
        if (step.IsProbe)
        {
            soil.SetTo(step.AmountMm);
        }
        else
        {
            soil.Add(step.AmountMm);
        }
    }

    /// <summary>Draw first, then take the water.</summary>
    /// <param name="BeginsDay">The first step of its day.</param>
    /// <param name="DemandMm">ETo · K · Δf since the step before.</param>
    /// <param name="AmountMm">Water, or the depletion of a probe.</param>
    /// <param name="Slot">Which of the program's open starts it is; -1 = none.</param>
    /// <param name="IsProbe">A probe reading.</param>
    /// <param name="PastAfter">It comes after the first start behind the horizon.</param>
    internal readonly record struct Step(bool BeginsDay, double DemandMm, double AmountMm, int Slot, bool IsProbe, bool PastAfter)
    {
        /// <summary>A start of a grow-in: its amount stands.</summary>
        public bool GrowsIn { get; init; }
    }
}
