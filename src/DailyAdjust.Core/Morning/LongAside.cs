using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>
/// Stations set aside for three weeks: no percentage serves them, other base minutes would. Read from the issued sheets, so that nothing
/// is carried from day to day beside depletion.
/// </summary>
internal static class LongAside
{
    private const int Days = 21;

    /// <summary>A morning after rain sets nobody aside: so many of the mornings on which a need was reckoned have to.</summary>
    private const double LeastShare = 0.75;

    private const int FewestMornings = 6;

    private const double StepTolerance = 1e-9;

    public static IReadOnlyList<MinutesToChange> Of(AdviceContext context, IReadOnlyList<IssuedSheet> sheets, IReadOnlyList<SiteVersion> versions)
    {
        var earliest = context.Date.AddDays(-Days);
        List<IssuedSheet> mornings = [.. sheets.Where(s => s.Date >= earliest && s.Date < context.Date).NewestOfDates()];
        var often = mornings.SelectMany(s => s.Lines.SelectMany(l => (l.SetAside ?? []).Select(a => (l.Program, a.Station)))).CountBy(a => a).Where(a => a.Value >= FewestMornings).Select(a => a.Key).ToHashSet();
        return
        [
            .. from zone in context.Zones
               from planned in zone.Programs
               where often.Contains((planned.Program.Key, zone.Station.Key.Station))
               let change = ChangeOf(zone.Station, planned.Program.Key, planned.Program.Controller, planned.BaseMinutes, mornings, versions)
               where change is not null && change.Since <= earliest.AddDays(DaysOfGrace)
               select change,
        ];
    }

    /// <summary>The first of the mornings may be a day on which the program had no start.</summary>
    private const int DaysOfGrace = 3;

    private static MinutesToChange? ChangeOf(
        Station station, ProgramKey program, Controller controller, double baseMinutes, List<IssuedSheet> mornings, IReadOnlyList<SiteVersion> versions)
    {
        var reckoned = mornings
            .Where(s => MinutesOn(versions, s.Date, station.Key, program) == baseMinutes)
            .Select(s => (s.Date, Aside: s.Lines.FirstOrDefault(l => l.Program == program)?.SetAside))
            .Where(s => s.Aside is not null)
            .ToList();
        var aside = reckoned
            .Select(s => (s.Date, Mine: s.Aside!.FirstOrDefault(a => string.Equals(a.Station, station.Key.Station, StringComparison.Ordinal))))
            .Where(s => s.Mine is { MedianPercent: > 0 })
            .ToList();
        if (aside.Count < FewestMornings || aside.Count < LeastShare * reckoned.Count)
        {
            return null;
        }

        double need = aside.Average(s => s.Mine!.Percent), median = aside.Average(s => s.Mine!.MedianPercent);
        var step = controller.MinutesStep;

        // To the dry side: the hose still corrects what a step less leaves.
        var to = Math.Floor((baseMinutes * need / median / step) + StepTolerance) * step;
        return to > baseMinutes ? new MinutesToChange(program, station.Key, station.Label, baseMinutes, to, need, median, aside[0].Date, aside.Count) : null;
    }

    private static double? MinutesOn(IReadOnlyList<SiteVersion> versions, DateOnly date, StationKey station, ProgramKey program) =>
        SiteVersions.On(versions, date).Stations.FirstOrDefault(s => s.Key == station)?.BaseMinutes is { } minutes && minutes.TryGetValue(program.Program, out var known) ? known : null;
}
