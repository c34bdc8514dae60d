using System.Globalization;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Properties;

/// <summary>
/// Once the numbers are dialled in, every zone that they leave short or would flood is named and no other: random mornings, each zone walked through its days
/// by the plain balance.
/// </summary>
public class NamedZonesTests
{
    private const int FirstSeed = 3001;
    private const int Sites = 120;

    /// <summary>The two reckonings differ by rounding of the draw curve; what lies so near a limit may be named or not, mm.</summary>
    private const double Near = 1e-6;

    /// <summary>Nobody takes the hose for less.</summary>
    private const double LeastHosedMm = 0.5;

    [Fact]
    public void Every_zone_that_its_number_leaves_short_or_would_flood_is_named_and_no_other()
    {
        var counts = new SortedDictionary<string, int>(StringComparer.Ordinal);
        var wrong = Enumerable.Range(FirstSeed, Sites)
            .Select(seed => (Seed: seed, Case: RandomCase.Of(seed)))
            .SelectMany(x => new[] { 1, 2, 4 }.SelectMany(back => Wrong($"seed {x.Seed}", x.Case.Morning(x.Case.Weather[^back].Date), counts)))
            .ToList();
        Assert.True(wrong.Count == 0, $"{wrong.Count} differ:\n" + string.Join('\n', wrong.Take(12)));

        // The mornings reach what they are meant to show.
        string[] kinds = ["aside", "driest", "drains", "drains at leave", "drains at set", "hosed until tonight", "hosed beside tonight", "left to tonight", "not driest", "nothing left", "short", "short at leave", "short at resume", "short at set", "short at skip", "short, not aside"];
        Assert.All(kinds, kind => Assert.True(counts.GetValueOrDefault(kind) >= 5, $"{kind}: {counts.GetValueOrDefault(kind)}; {string.Join(", ", counts.Select(c => $"{c.Key} {c.Value}"))}"));
    }

    private static IEnumerable<string> Wrong(string name, MorningInputs inputs, SortedDictionary<string, int> counts)
    {
        var sheet = MorningCalculation.Run(inputs);
        var asides = PlainAdvice.Run(inputs).ToDictionary(p => p.Key, p => p.SetAside.Select(z => z.Station.Key).ToHashSet());
        var morning = new PlainMorning(inputs);
        var left = new List<Left>();
        foreach (var controller in morning.Site.Controllers)
        {
            // In the order of starts: a station of two programs has the new number of the first when the second is judged.
            foreach (var program in controller.Programs.OrderBy(p => morning.FirstStart(controller, p)))
            {
                var said = sheet.Programs.Single(p => p.Key == new ProgramKey(controller.Id, program.Id));
                var visits = new PlainVisits(morning.Site, said.Key, program.Visit, inputs.Log);
                if (!visits.Includes(inputs.Date))
                {
                    continue;
                }

                left.AddRange(LeftBy(morning, controller, program, said, PlainHorizon.Of(morning.Site, controller, program, visits, inputs.Date), asides[said.Key]));
                if (controller.Applies == PercentApplies.Program)
                {
                    morning.NewSettings[said.Key] = said.Advice is AdviceKind.Skip or AdviceKind.KeepOff ? Core.Quantities.Setting.Off : new(said.Percent!.Value);
                }
            }
        }

        var where = string.Create(CultureInfo.InvariantCulture, $"{name} {inputs.Date:yyyy-MM-dd}");
        return sheet.Programs.SelectMany(p => Program(p, left.FindAll(l => l.Program == p.Key), morning.Site.Report.Worth, counts))
            .Concat(morning.Site.Stations.SelectMany(s => Driest(sheet, morning, s, left.FindAll(l => l.Station == s.Key), counts)))
            .Select(what => $"{where} {what}");
    }

    /// <summary>What a program's number leaves in one of its zones.</summary>
    /// <param name="ShortMm">Beyond allowable depletion, at the worst before a later start of the horizon or the first start after it; negative = within, mm.</param>
    /// <param name="DrainsMm">Of its own water, mm.</param>
    private sealed record Left(ProgramKey Program, StationKey Station, double ShortMm, double DrainsMm, bool IsAside);

    private static IEnumerable<Left> LeftBy(PlainMorning morning, Controller controller, WateringProgram program, ProgramAdvice said, PlainHorizon horizon, HashSet<StationKey> aside)
    {
        if (horizon.Starts.Count == 0)
        {
            yield break;
        }

        var percent = said.Advice is AdviceKind.Skip or AdviceKind.KeepOff ? 0 : said.Percent!.Value;
        foreach (var station in morning.Site.Stations.Where(s => s.Key.Controller.Is(controller.Id) && s.BaseMinutes.ContainsKey(program.Id)))
        {
            var steps = morning.Simulate(station, program, _ => PlainWater.Minutes(controller, station.BaseMinutes[program.Id], percent), horizon.FirstAfter ?? horizon.Starts[^1]);
            var worst = horizon.Later.Select(s => PlainZoneNeed.Step(steps, s).Before).DefaultIfEmpty(0).Max();
            yield return new(
                said.Key, station.Key, worst - station.Area.AllowableDepletionMm, horizon.Starts.Sum(s => PlainZoneNeed.Step(steps, s).Drained), aside.Contains(station.Key));
        }
    }

    private static IEnumerable<string> Program(ProgramAdvice said, List<Left> left, double worth, SortedDictionary<string, int> counts)
    {
        foreach (var named in said.Zones)
        {
            var (plainShort, plainDrains, aside) = left.Find(l => l.Station == named.Station) is { } l ? (l.ShortMm, l.DrainsMm, l.IsAside) : (0, 0, false);
            var isShort = Math.Max(0, plainShort);
            if (Math.Abs(named.ShortMm - isShort) > Near || (named.ShortMm > 0 ? plainShort < -Near : plainShort > Near))
            {
                yield return $"{said.Key} {said.Advice} {said.Percent}: {named.Station} is short by {plainShort}, named {named.ShortMm}";
            }

            if (Math.Abs(named.DrainsMm - plainDrains) > Near)
            {
                yield return $"{said.Key} {said.Advice} {said.Percent}: of {named.Station} {plainDrains} drains, named {named.DrainsMm}";
            }

            if (named.SetAside != aside)
            {
                yield return $"{said.Key}: {named.Station} set aside is {aside}, named {named.SetAside}";
            }

            var kind = said.Advice.ToString().ToLowerInvariant();
            Count(counts, plainShort > Near, "short", $"short at {kind}", aside ? "short, aside" : "short, not aside");
            Count(counts, plainDrains > (worth * named.AllowableMm) + Near, "drains", $"drains at {kind}");
            Count(counts, aside, "aside");
            Count(counts, plainShort < 0 && plainDrains == 0 && !aside, "nothing left");
        }

        // In words: as many as there are.
        (string Code, int Zones)[] told =
        [
            ("short", left.Count(l => l.ShortMm > Near)),
            ("too-wet", left.Count(l => l.DrainsMm > (worth * said.Zones.Single(z => z.Station == l.Station).AllowableMm) + Near)),
        ];
        foreach (var (code, zones) in told)
        {
            var inWords = said.Chain.Where(r => r.Code.Is(code)).Sum(r => (int)r.Data["zones"]);
            if (inWords != zones)
            {
                yield return $"{said.Key}: {zones} zones {code}, {inWords} in words";
            }
        }
    }

    /// <summary>
    /// Where to take hose and probe: ground past its allowable depletion by tonight, set aside, or left short by every program that was judged for it; with what it lacks beside
    /// tonight's water, and no more than it can take when the round is done.
    /// </summary>
    private static IEnumerable<string> Driest(MorningSheet sheet, PlainMorning morning, Station station, List<Left> left, SortedDictionary<string, int> counts)
    {
        var area = station.Area;
        var tonight = morning.Tonight(station);
        var night = morning.Night(station, key => sheet.Programs.Single(p => p.Key == key) is var said && said.Advice is AdviceKind.Skip or AdviceKind.KeepOff ? 0 : said.Percent!.Value);
        var isServed = left.Exists(l => l.ShortMm <= Near) && !left.Exists(l => l.IsAside);
        var lacks = tonight - (area.LeaveEmpty * area.AllowableDepletionMm);
        if (night.Count > 0)
        {
            var beyond = morning.Finds(station, night.Min(n => n.At)) - area.AllowableDepletionMm;
            lacks = isServed ? beyond : Math.Max(beyond, lacks - night.Sum(n => n.Mm));
        }

        var room = morning.Finds(station, morning.RoundDone);
        var wanted = Math.Min(lacks, room);
        if (Math.Abs(wanted - LeastHosedMm) <= Near)
        {
            yield break;
        }
        var isDry = tonight > area.AllowableDepletionMm || left.Exists(l => l.IsAside) || (left.Count > 0 && left.TrueForAll(l => l.ShortMm > Near));
        var isListed = isDry && wanted > LeastHosedMm;
        var named = sheet.Driest.SingleOrDefault(d => d.Station == station.Key);
        Count(counts, isListed, "driest");
        Count(counts, !isListed, "not driest");
        Count(counts, isListed && night.Count > 0, isServed ? "hosed until tonight" : "hosed beside tonight");
        Count(counts, isListed && room < lacks, "hosed as far as there is room");
        Count(counts, isDry && !isListed, "left to tonight");
        if (isListed != named is not null || (named is not null && Math.Abs(named.ShortMm - wanted) > Near))
        {
            yield return $"{station.Key}: hose and probe is {isListed} for {wanted}, named {named}";
        }
    }

    private static void Count(SortedDictionary<string, int> counts, bool holds, params string[] kinds)
    {
        foreach (var kind in holds ? kinds : [])
        {
            counts[kind] = counts.GetValueOrDefault(kind) + 1;
        }
    }
}
