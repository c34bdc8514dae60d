using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Replay;

/// <summary>
/// Dials that somebody sets as our sheets say: each morning the site's own rules with what was known then, carried out on the whole
/// when the round is to be done. Nothing is unknown, unanswered or assumed, and the logbook is empty.
/// </summary>
internal sealed class AdvisedWatering : DialWatering
{
    private static readonly Doubts None = new(_ => false, _ => false);
    private readonly Site _site;
    private readonly SiteLayout _layout;
    private readonly WeatherDay[] _weather;
    private readonly DateOnly _first;
    private readonly bool _rainKnownAhead;
    private readonly bool _everyChange;
    private readonly Dictionary<ProgramKey, int> _place = [];
    private readonly Dictionary<StationKey, double> _depletion = [];

    /// <param name="site">The site.</param>
    /// <param name="plan">Of it.</param>
    /// <param name="weather">Consecutive days, from before the first morning through the last.</param>
    /// <param name="rainKnownAhead">The forecast is the rain that fell.</param>
    /// <param name="everyChange">Even what is not worth a walk is set.</param>
    public AdvisedWatering(Site site, SitePlan plan, WeatherDay[] weather, bool rainKnownAhead, bool everyChange)
        : base(plan.Programs.Count)
    {
        (_site, _layout, _weather, _rainKnownAhead, _everyChange) = (site, SiteLayout.Of(plan), weather, rainKnownAhead, everyChange);
        _first = weather[0].Date;
        for (var i = 0; i < plan.Programs.Count; i++)
        {
            _place[plan.Programs[i].Key] = i;
        }

        Changes = new int[plan.Programs.Count];
        Mornings = new int[plan.Programs.Count];
    }

    /// <summary>By program: how often it was changed.</summary>
    public int[] Changes { get; }

    /// <summary>By program: mornings on which it was judged.</summary>
    public int[] Mornings { get; }

    /// <summary>Walks to a controller.</summary>
    public int Visits { get; private set; }

    /// <summary>The depletion at 00:00 of the next morning, one zone after another.</summary>
    public void Know(ReplayZone zone) => _depletion[zone.Plan.Station.Key] = zone.DepletionMm;

    public override void Morning(ReplayDay day)
    {
        var context = ContextOf(day);
        var noAdvice = Expected(day.Date, day.Date) is null ? new Phrase("nothing tells what reference ET to expect") : null;
        var judged = new ProgramAdvisor(context, [], None, noAdvice).Judge();
        var cuts = CutsOf(context, judged);
        string? walkedTo = null;
        foreach (var (program, decision) in judged.Select(j => (j.Case, j.Decision)))
        {
            var place = _place[program.Program.Key];
            Mornings[place] += program.Need is null ? 0 : 1;
            var setting = Done(program, decision, Before[place]);
            if (cuts.TryGetValue(program.Program.Key, out var cut))
            {
                setting = new Setting(cut.ToPercent);
            }

            if (setting == Before[place])
            {
                continue;
            }

            After[place] = setting;
            Changes[place]++;
            if (!string.Equals(walkedTo, program.Program.Key.Controller, StringComparison.Ordinal))
            {
                walkedTo = program.Program.Key.Controller;
                Visits++;
            }
        }
    }

    private Setting Done(ProgramCase program, Decision decision, Setting present) => decision.Advice switch
    {
        AdviceKind.Set or AdviceKind.Resume => new Setting(decision.Percent!.Value),
        AdviceKind.Leave when _everyChange && decision.Cause == Cause.GoodEnough => new Setting(DialNumber.Nearest(program.Program.Controller, decision.ExactPercent!.Value)),
        AdviceKind.Skip or AdviceKind.Off => Setting.Off,
        _ => present,
    };

    private AdviceContext ContextOf(ReplayDay day)
    {
        var asOf = _site.Clock.ToInstant(day.Date, _site.Report.At.Last(at => at < _site.Report.RoundDoneBy));
        var midnight = _site.Clock.DayStart(day.Date);

        // What stands at 00:00 is a day's total, which nobody knows before the day is over.
        GaugeDay SoFar(GaugeDay gauge)
        {
            List<RainFall> falls = [.. gauge.Falls.Where(f => f.At > midnight && f.At <= asOf)];
            return gauge with { RainMm = falls.Sum(f => f.Mm), Falls = falls };
        }

        return new AdviceContext(
            _site,
            day.Date,
            asOf,
            SettingHistory.Always(_place.Select(p => (p.Key, Before[p.Value]))),
            [],
            _depletion,
            [.. day.Weather.Rain.Select(SoFar)],
            date => Expected(date, day.Date) ?? 0,
            RecentDays(day.Date),
            [],
            _layout)
        {
            Forecast = _rainKnownAhead ? TrueRain.Ahead(_site, _weather, day.Date, asOf) : [],
        };
    }

    /// <summary>As far back as a morning looks: for what reference ET to expect, and for rain switches.</summary>
    private ArraySegment<WeatherDay> RecentDays(DateOnly morning)
    {
        var known = morning.DayNumber - _first.DayNumber;
        var from = Math.Max(0, known - LookBack.Days);
        return new ArraySegment<WeatherDay>(_weather, from, known - from);
    }

    private double? Expected(DateOnly day, DateOnly morning) => ExpectedEto.For(day, morning, RecentDays(morning), _site.Weather.Normals);

    /// <summary>Where the night or the pump gives less, numbers are cut as a sheet cuts them.</summary>
    private Dictionary<ProgramKey, NightCut> CutsOf(AdviceContext context, IReadOnlyList<Judged> judged)
    {
        if (_site.Window is null && _site.PumpCapacityLPerMin is null)
        {
            return [];
        }

        var may = judged.Where(j => j.Case.Need is not null).Select(j => j.Case.Program.Key).ToHashSet();
        IReadOnlyList<ProgramAdvice> advice = [.. judged.Select(j => new ProgramAdvice
        {
            Key = j.Case.Program.Key,
            Name = j.Case.Program.Program.Name,
            Present = j.Case.Present.Setting,
            Confirmed = true,
            Advice = j.Decision.Advice,
            Percent = j.Decision.Percent,
            Reason = Phrase.Empty,
        })];
        return new NightCuts(context, new Nights(context, [], judged.SelectMany(j => j.Case.TakenOut.Select(t => (j.Case.Program.Key, t.At))))).Of(advice, may.Contains).ToDictionary(c => c.Program);
    }
}
