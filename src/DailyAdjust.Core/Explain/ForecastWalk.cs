using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Explain;

/// <summary>How far one way of watering is followed.</summary>
internal enum WalkTo
{
    AfterLastStart,
    FirstStartAfter,
    LaterDate,
}

/// <summary>What was met on the way.</summary>
/// <param name="BeforeStarts">Depletion before each start of the horizon.</param>
/// <param name="BeforeLater">Depletion before each later start, the first one after the horizon included.</param>
/// <param name="Beyond">Depletions from the first start after the horizon to the first on a later date.</param>
internal sealed record WalkedHorizon(IReadOnlyList<Term> BeforeStarts, IReadOnlyList<Term> BeforeLater, IReadOnlyList<Term> Beyond);

/// <summary>One zone's days to come, the steps of its <see cref="ZoneForecast"/> written down.</summary>
internal sealed class ForecastWalk
{
    private readonly AdviceContext _context;
    private readonly ProgramCase _program;
    private readonly ZoneForecast _forecast;
    private readonly List<ForecastMark> _marks = [];
    private readonly HashSet<DateOnly> _daysShown = [];
    private readonly ZoneWalk _walk;
    private readonly int _firstOpen;
    private int _waters;
    private int _starts;

    public ForecastWalk(ProgramCase program, ZoneNeed need)
    {
        (_context, _program, _forecast) = (program.Context, program, need.Forecast);
        new ForecastOutline(_context, need.Zone, program.Program, program.Horizon, Setting.Off, default, program.NewSettings).Of(need.Zone, _marks);
        _walk = new ZoneWalk(_context.Site.Clock, need.Zone, _context.DepletionMm[need.Zone.Station.Key], namesDates: true);
        _walk.Steps.Add(Step.Given("below full at 00:00 of " + Words.Date(_context.Date), "Dr", _walk.DepletionMm, "mm", "the balance of the day before"));
        for (_firstOpen = 0; _firstOpen < _marks.Count; _firstOpen++)
        {
            Draw(_walk, _firstOpen);
            if (_forecast.Steps[_firstOpen].Slot >= 0)
            {
                break;
            }

            Take(_walk, _firstOpen);
        }
    }

    /// <summary>To which others may be added.</summary>
    public List<Step> Steps => _walk.Steps;

    public DateOnly Last => _marks[^1].Date;

    /// <summary>As it was before the horizon's first start.</summary>
    public Term BeforeFirst => _walk.Depletion;

    /// <summary>Waters the horizon's starts.</summary>
    /// <param name="water">Net, of each start.</param>
    /// <param name="to">How far.</param>
    /// <param name="after">Net, of each start of the first date after the horizon.</param>
    public WalkedHorizon Run(Term water, WalkTo to, Term after = default)
    {
        var walk = _walk.Fork();
        var (horizon, toAfter, all) = _forecast.Starts;
        List<Term> starts = [], later = [], beyond = [];
        for (var i = _firstOpen; i < _marks.Count; i++)
        {
            if (i > _firstOpen)
            {
                Draw(walk, i);
            }

            var step = _forecast.Steps[i];
            if (to == WalkTo.LaterDate && step.PastAfter)
            {
                beyond.Add(Keep(walk, "below full then", "b"));
            }

            if (step.Slot < 0)
            {
                Take(walk, i);
                continue;
            }

            var at = walk.When(_marks[i].Event!.Value.At);
            if (step.Slot > 0 && step.Slot < toAfter)
            {
                later.Add(Keep(walk, $"below full before the start of {at}", "m"));
            }

            if (step.Slot < horizon)
            {
                starts.Add(step.Slot > 0 ? later[^1] : new("Dr", walk.DepletionMm));
                walk.Take(water, at + ": this program's watering");
                if (step.Slot == horizon - 1 && to == WalkTo.AfterLastStart)
                {
                    break;
                }

                continue;
            }

            if (to != WalkTo.LaterDate || step.Slot == all - 1)
            {
                break;
            }

            if (step.GrowsIn)
            {
                Take(walk, i);
                continue;
            }

            walk.Take(after, at + ": this program's watering");
        }

        return new WalkedHorizon(starts, later, beyond);
    }

    private Term Keep(ZoneWalk walk, string name, string letter)
    {
        var term = new Term(FormattableString.Invariant($"{letter}{++_starts}"), walk.DepletionMm);
        walk.Steps.Add(Step.Of(name, term.Symbol, "{Dr}", term.Value, "mm", "", walk.Depletion));
        return term;
    }

    private void Draw(ZoneWalk walk, int i)
    {
        var mark = _marks[i];
        if (_forecast.Steps[i].BeginsDay)
        {
            Begin(walk, mark.Date);
        }

        if (mark.Event is { } e)
        {
            walk.DrawTo(_context.ShareDrawn(mark.Date, e.DrawnBy), e.At, mark.Date == _context.Date && _context.Drawn is { } measured ? (e.DrawnBy, measured) : null);
        }
        else
        {
            walk.DrawTo(1, null);
        }
    }

    private void Take(ZoneWalk walk, int i)
    {
        if (_marks[i].Event is { } e)
        {
            walk.Take(e);
        }
    }

    private void Begin(ZoneWalk walk, DateOnly date)
    {
        var (zone, day, eto) = (_forecast.Zone, _context.Day(date), _context.ExpectedEtoMm(date));
        var k = zone.K(date);
        walk.BeginDay(date, day.Curve, eto * k);
        if (!_daysShown.Add(date))
        {
            walk.Steps.Add(Step.Given($"{Words.Date(date)}: demand of the day without stress", "D", eto * k, "mm", "as above"));
            return;
        }

        walk.Steps.Add(Step.Given($"{Words.Date(date)}: reference ET expected", "ETo", eto, "mm", "as above"));
        walk.Steps.AddRange(DemandSteps.OfDay(zone, date, eto));
        foreach (var start in day.StartsAt(zone.Station.Key.Controller).Where(s => zone.Station.BaseMinutes.ContainsKey(s.Program.Key.Program)))
        {
            var own = start.Program.Key == _program.Program.Key;
            if (own && ((start.Start.At >= _program.Horizon.Opens && start.GrowIn is null) || _program.Horizon.TakenOut.Contains(start.Start)))
            {
                continue;
            }

            var symbol = FormattableString.Invariant($"net{++_waters}");
            walk.Steps.AddRange(WateringSteps.Of(day, start, zone, symbol, $"{start.Program.Key} at {walk.When(start.Start.At)}"));
            if (walk.Steps[^1] is { Value: { } net } last && string.Equals(last.Symbol, symbol, StringComparison.Ordinal))
            {
                walk.Expect(start.Start.At, net, symbol);
            }
        }
    }
}
