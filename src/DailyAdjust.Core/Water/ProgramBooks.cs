using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Water;

/// <summary>Water by program, and what was left out because a sheet said so.</summary>
internal static class ProgramBooks
{
    public static IReadOnlyList<ProgramWater> Of(Site site, IReadOnlyList<IssuedSheet> sheets, IReadOnlyList<StationWater> runs, DateOnly from, DateOnly to)
    {
        var skips = new Skips(sheets);
        var byProgram = runs.Where(r => r.Program is not null).ToLookup(r => r.Program!.Value);
        var names = ZonePlan.AllPrograms(site).ToDictionary(p => p.Key, p => p.Program.Name);
        var order = site.Controllers.OrderBy(c => c.Route).SelectMany(c => c.Programs.Select(p => new ProgramKey(c.Id, p.Id)))
            .Concat(byProgram.Select(g => g.Key).Where(k => !names.ContainsKey(k)).OrderBy(k => k.ToString(), StringComparer.Ordinal));
        List<ProgramWater> programs = [.. order.Select(key => new ProgramWater(
            key,
            names.GetValueOrDefault(key, ""),
            byProgram[key].Sum(r => r.Litres),
            skips.Count(key, from, to),
            byProgram[key].Where(r => r.LeftOutMinutes > 0 && skips.AskedAt(key, r.At!.Value)).Sum(r => r.LeftOutLitres)))];
        return runs.Any(r => r.Program is null)
            ? [.. programs, new ProgramWater(null, "", runs.Where(r => r.Program is null).Sum(r => r.Litres), 0, 0)]
            : programs;
    }

    /// <summary>What the sheets said of every program, in order; of a date its newest issue.</summary>
    private sealed class Skips
    {
        private readonly Dictionary<ProgramKey, List<(DateOnly Date, DateTimeOffset AsOf, AdviceKind Advice)>> _said = [];

        public Skips(IReadOnlyList<IssuedSheet> sheets)
        {
            foreach (var sheet in sheets.NewestOfDates())
            {
                foreach (var line in sheet.Lines)
                {
                    var list = _said.TryGetValue(line.Program, out var known) ? known : _said[line.Program] = [];
                    list.Add((sheet.Date, sheet.AsOf, line.Advice));
                }
            }
        }

        public int Count(ProgramKey program, DateOnly from, DateOnly to)
        {
            var list = _said.GetValueOrDefault(program, []);
            return list.Where((line, i) => line.Date >= from && line.Date <= to && line.Advice == AdviceKind.Skip && (i == 0 || list[i - 1].Advice != AdviceKind.Skip)).Count();
        }

        /// <summary>Whether the newest sheet before a start said to leave it out.</summary>
        public bool AskedAt(ProgramKey program, DateTimeOffset start)
        {
            var list = _said.GetValueOrDefault(program, []);
            var last = list.FindLastIndex(line => line.AsOf < start);
            while (last > 0 && list[last].Advice == AdviceKind.KeepOff)
            {
                last--;
            }

            return last >= 0 && list[last].Advice == AdviceKind.Skip;
        }
    }
}
