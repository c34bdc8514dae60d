using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Irrigation;

/// <summary>`ran` with an end: it takes the minutes that were due in its span, station by station, and no others.</summary>
public class NightSpanTests
{
    private static readonly Place Pump = new(PlaceKind.Pump, "", "");
    private static readonly Place Box = new(PlaceKind.Controller, "C1", "");
    private static readonly Place First = new(PlaceKind.Program, "C1", "P1");

    /// <summary>P1 at 01:00: three stations of 20 min, 01:00 to 02:00.</summary>
    [Theory]
    [InlineData("01:10", "03:40", 10, 0, 0)] // half of the first
    [InlineData("01:00", "02:00", 0, 0, 0)]
    [InlineData("00:00", "01:00", 20, 20, 20)] // ends as they begin
    [InlineData("02:00", "03:00", 20, 20, 20)]
    [InlineData("01:25", "01:30", 20, 15, 20)]
    [InlineData("01:35", "01:45", 20, 15, 15)]
    public void A_station_keeps_what_lay_outside_the_span(string from, string until, double first, double second, double third) =>
        Assert.Equal([first, second, third], Run(Night(ProgramOverlap.Together), Ran(Pump, 0, from, until, 0)));

    [Fact]
    public void The_gap_between_stations_moves_the_later_ones() =>
        Assert.Equal([20d, 18, 16], Run(Night(ProgramOverlap.Together, gapMinutes: 2), Ran(Pump, 0, "01:40", "01:48", 0)));

    [Theory]
    [InlineData(ProgramOverlap.Together, 20, 10)] // P2 at 01:30 runs beside P1: stations 4 until 01:50
    [InlineData(ProgramOverlap.Stack, 20, 20)] // P2 waits until 02:00
    public void Together_or_one_after_the_other(ProgramOverlap overlap, double third, double fourth)
    {
        var ran = Run(Night(overlap, second: "01:30"), Ran(new(PlaceKind.Program, "C1", "P2"), 0, "01:40", "01:55", 0));
        Assert.Equal([20, 20, third, fourth], ran);
    }

    [Fact]
    public void A_program_that_waits_for_one_of_the_evening_before_is_found()
    {
        // P1 of 23:30 runs 23:30 to 00:30; P2 of 00:10 the next date waits until 00:30.
        var site = Night(ProgramOverlap.Stack, first: "23:30", second: "00:10");
        Assert.Equal(20, RunOn(site, 1, Ran(Box, 1, "00:10", "00:30", 0))[3]);
        Assert.Equal(5, RunOn(site, 1, Ran(Box, 1, "00:35", "01:30", 0))[3]);

        // And the evening's own stations are cut after midnight, on their start's date.
        Assert.Equal([20d, 10, 0], RunOn(site, 0, Ran(Box, 1, "00:00", "00:40", 0))[..3]);
    }

    [Fact]
    public void A_share_counts_for_the_span_and_the_nearest_and_latest_entry_wins()
    {
        var site = Night(ProgramOverlap.Together);
        Assert.Equal([10d, 20, 20], Run(site, Ran(Pump, 0, "01:00", "01:20", 50)));
        Assert.Equal([20d, 0, 0], Run(site, Ran(Pump, 0, "01:00", "02:00", 0), Ran(First, 0, "01:00", "01:20", 100)));
        Assert.Equal([0d, 20, 20], Run(site, Ran(Pump, 0, "01:00", "02:00", 0), Ran(Pump, 0, "01:20", "02:30", 100)));

        // A whole start's entry of the program goes before the pump's span; the box's span before the pump's whole start.
        Assert.Equal([20d, 20, 20], Run(site, Ran(Pump, 0, "01:10", "03:40", 0), Ran(First, 0, "05:00", null, 100)));
        Assert.Equal([0d, 10, 20], Run(site, Ran(Pump, 0, "05:00", null, 0), Ran(Box, 0, "01:30", "02:00", 100)));
    }

    [Fact]
    public void An_entry_without_an_end_means_what_it_always_did() =>
        Assert.Equal([0d, 0, 0], Run(Night(ProgramOverlap.Together), Ran(Pump, 0, "05:00", null, 0)));

    /// <summary>Whatever the boxes, starts and clocks: spans that divide the time between them take all of it, each minute once.</summary>
    [Fact]
    public void Spans_that_divide_the_nights_cut_together_exactly_the_nights()
    {
        for (var seed = 1UL; seed <= 200; seed++)
        {
            var dice = new Dice(seed);
            var site = RandomNights(dice);
            var due = AllDays(site, []);
            var cuts = new SortedSet<int> { 0, 6 * 1440 };
            for (var i = dice.Whole(0, 12); i > 0; i--)
            {
                cuts.Add(dice.Whole(1, 4 * 1440));
            }

            var sum = due.ToDictionary(d => d.Key, _ => 0.0);
            var points = cuts.ToList();
            for (var i = 0; i + 1 < points.Count; i++)
            {
                var left = AllDays(site, [Span(Pump, site.Start, points[i], points[i + 1])]);
                foreach (var (key, minutes) in due)
                {
                    Assert.InRange(minutes - left[key], -1e-9, minutes + 1e-9);
                    sum[key] += minutes - left[key];
                }
            }

            Assert.Contains(due.Values, minutes => minutes > 0);
            Assert.All(due, d => Assert.Equal(d.Value, sum[d.Key], 1e-6));
        }
    }

    private static LogEntry Span(Place where, DateOnly from, int beginsMinute, int endsMinute) => new()
    {
        Time = At(from, beginsMinute),
        Until = At(from, endsMinute),
        Kind = LogKind.Ran,
        Where = where,
        Value = 0,
        Unit = LogUnit.Percent,
    };

    private static LogTime At(DateOnly from, int minute) => new(from.AddDays(minute / 1440), new TimeOnly(minute % 1440 / 60, minute % 60));

    /// <summary>Boxes with programs that overlap, wait, cross midnight; on the dates on which Chicago moves its clocks, too.</summary>
    private static Site RandomNights(Dice dice)
    {
        var start = dice.OneOf(new DateOnly(2026, 3, 7), new DateOnly(2026, 10, 31), new DateOnly(2026, 6, 1));
        var area = OneZone.Area;
        var plain = OneZone.Site(area);
        var controllers = Enumerable.Range(1, dice.Whole(1, 3)).Select(c => new Controller
        {
            Id = $"C{c}",
            Overlap = dice.OneOf(ProgramOverlap.Together, ProgramOverlap.Stack),
            StationGap = TimeSpan.FromSeconds(dice.OneOf(0, 30, 120)),
            MinutesStep = dice.OneOf(1, 0.1),
            ClockStaysStandard = dice.Chance(0.3),
            Programs = [.. Enumerable.Range(1, dice.Whole(1, 3)).Select(p => new WateringProgram
            {
                Id = $"P{p}",
                Starts = [.. Enumerable.Range(0, dice.Whole(1, 3)).Select(_ => new TimeOnly(dice.Whole(0, 23), dice.Whole(0, 59))).Distinct().Order()],
                Days = dice.Chance(0.7) ? WaterDays.Every : new WaterDays.EveryNth(2, start),
            })],
        }).ToList();
        var stations = controllers.SelectMany(c => Enumerable.Range(1, dice.Whole(1, 4)).Select(s => plain.Stations[0] with
        {
            Key = new(c.Id, $"{s}"),
            BaseMinutes = c.Programs.Where((_, p) => p == 0 || dice.Chance(0.8)).ToDictionary(p => p.Id, _ => dice.Between(2, 50), StringComparer.Ordinal),
        })).ToList();
        return plain with { Clock = new(TimeZoneInfo.FindSystemTimeZoneById("America/Chicago")), Start = start, Controllers = controllers, Stations = stations };
    }

    private static Dictionary<(DateOnly, StationKey), double> AllDays(Site site, IReadOnlyList<LogEntry> log) => Balance.Run(new BalanceInputs
    {
        Versions = [new SiteVersion(site.Start, site)],
        Weather = [.. Enumerable.Range(0, 3).Select(i => OneZone.Day(0, 5) with { Date = site.Start.AddDays(i) })],
        Log = log,
    }).Days.ToDictionary(d => (d.Date, d.Station), d => d.MinutesRun);

    private static Site Night(ProgramOverlap overlap, double gapMinutes = 0, string first = "01:00", string? second = null)
    {
        List<WateringProgram> programs = [Program("P1", first)];
        if (second is not null)
        {
            programs.Add(Program("P2", second));
        }

        var plain = OneZone.Site(OneZone.Area, controller: OneZone.Box with { Overlap = overlap, StationGap = TimeSpan.FromMinutes(gapMinutes), Programs = programs });
        Station Number(int n, string program) => plain.Stations[0] with { Key = new("C1", $"{n}"), BaseMinutes = new Dictionary<string, double>(StringComparer.Ordinal) { [program] = 20 } };
        return plain with { Stations = second is null ? [Number(1, "P1"), Number(2, "P1"), Number(3, "P1")] : [Number(1, "P1"), Number(2, "P1"), Number(3, "P1"), Number(4, "P2")] };
    }

    private static WateringProgram Program(string id, string start) => new() { Id = id, Starts = [TimeOnly.ParseExact(start, "HH:mm", null)], Days = WaterDays.Every };

    private static LogEntry Ran(Place where, int day, string time, string? until, double percent) => new()
    {
        Time = new(OneZone.First.AddDays(day), TimeOnly.ParseExact(time, "HH:mm", null)),
        Until = until is null ? null : new LogTime(OneZone.First.AddDays(day), TimeOnly.ParseExact(until, "HH:mm", null)),
        Kind = LogKind.Ran,
        Where = where,
        Value = percent,
        Unit = LogUnit.Percent,
    };

    private static double[] Run(Site site, params LogEntry[] log) => RunOn(site, 0, log);

    /// <summary>Minutes run of each station in the starts of a day.</summary>
    private static double[] RunOn(Site site, int day, params LogEntry[] log)
    {
        var all = AllDays(site, log);
        return [.. site.Stations.Select(s => Math.Round(all[(site.Start.AddDays(day), s.Key)], 9))];
    }
}
