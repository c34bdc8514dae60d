using System.Runtime.InteropServices;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>An event of the days to come.</summary>
/// <param name="Water">When, what, and how much where that is the same for all zones.</param>
/// <param name="Start">A start whose depth is the zone's own; null = the amount stands.</param>
internal readonly record struct OutlineEvent(WaterEvent Water, OutlineStart? Start)
{
    /// <summary>Net, mm; for a probe the depletion that it shows.</summary>
    public double AmountMm(ZonePlan zone) => Start?.DepthMm(zone) ?? Water.AmountMm;
}

/// <summary>A start at what is known or decided of its program.</summary>
/// <param name="Day">The day.</param>
/// <param name="Start">With the setting that it runs at.</param>
/// <param name="AsDue">All of it runs, whatever was said of it.</param>
internal sealed record OutlineStart(DayOfSite Day, DayStart Start, bool AsDue)
{
    /// <summary>Net, mm.</summary>
    public double DepthMm(ZonePlan zone)
    {
        var baseMinutes = zone.BaseMinutesIn(Start.Program)!.Value;
        return zone.Net.DepthMm(AsDue ? DayOfSite.MinutesDue(Start, baseMinutes) : Day.MinutesRun(Start, zone, baseMinutes));
    }
}

/// <summary>What the days to come bring a zone, and those that share its programs and its gauge.</summary>
/// <param name="context">The morning.</param>
/// <param name="zone">The zone.</param>
/// <param name="program">The program whose starts are open from the horizon on.</param>
/// <param name="horizon">Which starts are looked at.</param>
/// <param name="between">What the program runs at from this morning's round until the horizon opens.</param>
/// <param name="rain">Rain to suppose.</param>
/// <param name="newSettings">What other programs run at from this morning's round on, where that is decided already.</param>
internal sealed class OutlineEvents(
    AdviceContext context, ZonePlan zone, PlannedProgram program, Horizon horizon, Setting between, SupposedRain rain, IReadOnlyDictionary<ProgramKey, Setting> newSettings)
{
    private static readonly ComesAfter<OutlineEvent> Later = (in OutlineEvent one, in OutlineEvent other) => WaterEvent.Later(one.Water, other.Water);
    private readonly List<OutlineEvent> _events = [];

    /// <summary>Of one date, in order; until the next is asked for.</summary>
    public ReadOnlySpan<OutlineEvent> On(DateOnly date)
    {
        var day = context.Day(date);
        _events.Clear();
        if (date == context.Date)
        {
            var known = new List<WaterEvent>();
            context.AddKnown(known, zone);
            known.ForEach(e => _events.Add(new OutlineEvent(e, null)));
        }

        if (rain.Mm > 0 && context.Site.Clock.DateOf(rain.At) == date)
        {
            _events.Add(new OutlineEvent(new WaterEvent(rain.At, WaterKind.Rain, day.ShareBy(rain.At), rain.Mm), null));
        }

        foreach (ref readonly var start in CollectionsMarshal.AsSpan(day.StartsAt(zone.Station.Key.Controller)))
        {
            if (zone.BaseMinutesIn(start.Program) is not null)
            {
                Add(day, start);
            }
        }

        FewEvents.Sort(_events, Later);
        return CollectionsMarshal.AsSpan(_events);
    }

    private void Add(DayOfSite day, in DayStart start)
    {
        var own = start.Program.Key == program.Key;
        if (own && horizon.TakenOut.Contains(start.Start))
        {
            return;
        }

        var water = new WaterEvent(start.Start.At, WaterKind.Irrigation, start.DrawnBy, 0);
        if (own && start.Start.At >= horizon.Opens)
        {
            // The percentage that is sought is for the program's own starts: what a grow-in that begins after them gives stands.
            _events.Add(new OutlineEvent(water with { Slot = 0, GrowsIn = start.GrowIn is not null }, start.GrowIn is null ? null : new OutlineStart(day, At(start, between), AsDue: false)));
            return;
        }

        _events.Add(new OutlineEvent(water, start.Start.At < context.RoundDone ? new OutlineStart(day, start, AsDue: false)
            : own ? new OutlineStart(day, At(start, between), AsDue: true)
            : new OutlineStart(day, newSettings.TryGetValue(start.Program.Key, out var setting) ? At(start, setting) : start, AsDue: false)));
    }

    /// <summary>A start at what this morning's round puts on its program. A grow-in that begins after it runs though the program was left out before.</summary>
    private DayStart At(in DayStart start, Setting setting) =>
        setting.IsOff && start.GrowIn?.GrowIn.From > context.RoundDone ? start : start with { Setting = setting };
}
