using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Tests.Advice;
using DailyAdjust.Tests.Irrigation;
using Xunit;

namespace DailyAdjust.Tests.Water;

/// <summary>
/// Where the water of 1 to 12 May 2026 went, by hand: two programs at 22:00 every night, an hour at 100 %, station 1 of P1 100 L/min and station 2 of P2 50 L/min:
/// 6000 L and 3000 L a night. P1 runs at 50 % from the 4th on. The sheet of the 6th says skip for P2, which is off from that noon to the noon of the 9th.
/// </summary>
public class WaterBooksTests
{
    private static readonly DateOnly First = OneZone.First;
    private static readonly Controller Box = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:00")] };
    private static readonly ProgramKey P2 = new("C1", "P2");

    [Fact]
    public void By_program_with_what_a_skip_left_out()
    {
        var programs = Books().Programs;
        Assert.Equal([new ProgramKey("C1", "P1"), P2, null], programs.Select(p => p.Program));
        Assert.Equal([(3 * 6000) + (9 * 3000), 9 * 3000, 600], programs.Select(p => p.EstimatedL));
        Assert.Equal((0, 1), (programs[0].Skips, programs[1].Skips));

        // Three nights of P2; what people leave out on their own is no skip's doing.
        Assert.Equal((0d, 3 * 3000d), (programs[0].SavedL, programs[1].SavedL));
        Assert.Equal(0, Books(log => [.. log.Where(e => e.Kind != LogKind.Off), log.First(e => e.Kind == LogKind.Off) with { Time = new(First.AddDays(3), new(12, 0)) }], sheets: []).Programs[1].SavedL);
    }

    [Fact]
    public void By_day_and_in_all()
    {
        var books = Books();
        Assert.Equal((First, First.AddDays(11)), (books.From, books.To));
        Assert.Equal([9000, 9000, 9000, 6000, 6600, 3000, 3000, 3000, 6000, 6000, 6000, 6000], books.Days.Select(d => d.EstimatedL));
        Assert.Equal(books.Days.Sum(d => d.EstimatedL), books.Programs.Sum(p => p.EstimatedL));
        Assert.Equal(books.EstimatedL, books.Areas.Sum(a => a.EstimatedL));
        Assert.Equal(0, books.StationsWithoutFlow);
    }

    [Fact]
    public void A_span_within_it_counts_its_own_days_only()
    {
        var books = Books(from: First.AddDays(5));
        Assert.Equal(7, books.Days.Count);
        Assert.Equal([7 * 3000, 4 * 3000], books.Programs.Select(p => p.EstimatedL));
    }

    [Fact]
    public void Days_past_the_allowable_are_counted_by_zone_and_named()
    {
        // 5 mm drawn a day, a little less from ground that is past the 4 mm allowable. Station 1 gets them every night. Station 2 is 5, 9.9 and 14.6 mm short on the three nights, 9.2 after the
        // next and 3.9 after that. They got 10 mm on three nights, 5 on nine and 1 by hand; and 10 on nine.
        Assert.Equal(new AreaWater("ground", 72_600, (76 + 90) / 2.0, 0, 2, "C1/2", 4), Assert.Single(Books(allowable: 0.04).Areas) with { DrainedMm = 0 });
    }

    [Fact]
    public void Against_what_the_place_may_take()
    {
        var books = Books(limits: new() { AllotmentL = 60_000, DayL = 8000, MonthL = 100_000, YearL = 80_000, RateLPerMin = 120 });
        Assert.Equal(
            [
                new LimitUse(LimitKind.Allotment, 60_000, First, 72_600, IsMetered: false, 1),
                new LimitUse(LimitKind.Day, 8000, First, 9000, IsMetered: false, 3),
                new LimitUse(LimitKind.Month, 100_000, First, 72_600, IsMetered: false, 0),
                new LimitUse(LimitKind.Year, 80_000, First, 72_600, IsMetered: false, 0),

                // Both at once: 150 L/min, on every night but the three.
                new LimitUse(LimitKind.Rate, 120, First, 150, IsMetered: false, 9),
            ],
            books.Limits);
    }

    [Fact]
    public void What_meters_say_goes_before_the_estimate_for_the_year_and_stands_apart()
    {
        LogEntry Meter(int day, double litres) => new() { Time = new(First.AddDays(day), new(7, 0)), Kind = LogKind.Meter, Where = new(PlaceKind.Pump, "", ""), Value = litres, Unit = LogUnit.Litres };
        var books = Books(log => [.. log, Meter(0, 1000), Meter(10, 71_000)], limits: new() { AllotmentL = 60_000 });
        Assert.Equal(new MeteredWater(First, First.AddDays(10), 70_000), books.Metered);
        Assert.Equal(new LimitUse(LimitKind.Allotment, 60_000, First, 70_000, IsMetered: true, 1), Assert.Single(books.Limits));

        // Last read on the 3rd, it tells of a part of the year only.
        Assert.Equal(new LimitUse(LimitKind.Allotment, 60_000, First, 72_600, IsMetered: false, 1), Assert.Single(Books(log => [.. log, Meter(0, 1000), Meter(2, 19_000)], limits: new() { AllotmentL = 60_000 }).Limits));
        Assert.Equal(72_600, books.EstimatedL);
    }

    [Fact]
    public void What_meters_say_stands_in_the_month_in_which_they_were_read()
    {
        // The books begin on 1 May; a reading of 20 April is the last before them.
        LogEntry Meter(DateOnly date, double litres, PlaceKind kind = PlaceKind.Pump) => new() { Time = new(date, new(7, 0)), Kind = LogKind.Meter, Where = new(kind, kind == PlaceKind.Pump ? "" : "C1", ""), Value = litres, Unit = LogUnit.Litres };
        string Month(params LogEntry[] meters) => Csv(SummaryTable.ByMonth(Books(log => [.. log, .. meters])))[1];
        DateOnly april = new(2026, 4, 20), fifth = new(2026, 5, 5), tenth = new(2026, 5, 10);
        Assert.EndsWith(",61.000,16114,2026-04-20,2026-05-10", Month(Meter(april, 1000), Meter(fifth, 12_000), Meter(tenth, 62_000)), StringComparison.Ordinal);
        Assert.EndsWith(",50.000,13209,2026-05-05,2026-05-10", Month(Meter(fifth, 12_000), Meter(tenth, 62_000)), StringComparison.Ordinal);

        // The pump's, whatever the boxes' own meters say of the same water.
        Assert.EndsWith(",50.000,13209,2026-05-05,2026-05-10", Month(Meter(fifth, 12_000), Meter(tenth, 62_000), Meter(april, 0, PlaceKind.Controller), Meter(tenth, 70_000, PlaceKind.Controller)), StringComparison.Ordinal);

        // Read once, or a new meter: nobody knows.
        Assert.EndsWith(",,,,", Month(Meter(fifth, 12_000)), StringComparison.Ordinal);
        Assert.EndsWith(",,,,", Month(Meter(fifth, 12_000), Meter(tenth, 100)), StringComparison.Ordinal);
        Assert.EndsWith(",,,,", Month(Meter(april, 12_000), Meter(fifth, 100), Meter(tenth, 62_000)), StringComparison.Ordinal);
    }

    [Fact]
    public void By_day_the_meters_steps_are_together_what_they_say_of_the_span()
    {
        LogEntry Meter(int day, double litres) => new() { Time = new(First.AddDays(day), new(7, 0)), Kind = LogKind.Meter, Where = new(PlaceKind.Pump, "", ""), Value = litres, Unit = LogUnit.Litres };
        var books = Books(log => [.. log, Meter(0, 1000), Meter(3, 22_000), Meter(4, 23_500), Meter(10, 71_000)]);
        var lines = Csv(SummaryTable.ByDay(books));
        Assert.EndsWith("rain_unknown_days,metered_m3,metered_gal,metered_from,metered_to", lines[0], StringComparison.Ordinal);
        string[] metered = [.. lines.Skip(1).Select(l => string.Join(',', l.Split(',')[^4..])).Where(l => l.Length > 3)];
        Assert.Equal([$"21.000,5548,{First:yyyy-MM-dd},{First.AddDays(3):yyyy-MM-dd}", $"1.500,396,{First.AddDays(3):yyyy-MM-dd},{First.AddDays(4):yyyy-MM-dd}", $"47.500,12548,{First.AddDays(4):yyyy-MM-dd},{First.AddDays(10):yyyy-MM-dd}"], metered);
        Assert.Equal(books.Metered!.Litres, books.MeterSteps.Sum(s => s.Litres));
    }

    [Fact]
    public void The_water_year_may_begin_in_another_month() =>
        Assert.Equal((new DateOnly(2025, 10, 1), new DateOnly(2026, 10, 1)), (new WaterLimits { YearBegins = 10 }.YearOf(new(2026, 5, 1)), new WaterLimits { YearBegins = 10 }.YearOf(new(2026, 10, 1))));

    [Fact]
    public void The_last_week_that_is_over() =>
        Assert.Equal(
            [(new DateOnly(2026, 4, 27), new DateOnly(2026, 5, 3)), (new DateOnly(2026, 4, 27), new DateOnly(2026, 5, 3)), (new DateOnly(2026, 5, 4), new DateOnly(2026, 5, 10))],
            new[] { new DateOnly(2026, 5, 4), new(2026, 5, 10), new(2026, 5, 11) }.Select(CalendarWeek.LastBefore));

    private static string[] Csv(Table table) => table.ToCsv().TrimStart('\uFEFF').Split(["\r\n", "\n"], StringSplitOptions.RemoveEmptyEntries);

    private static WaterBooks Books(
        Func<IReadOnlyList<LogEntry>, IReadOnlyList<LogEntry>>? change = null, DateOnly? from = null, WaterLimits? limits = null, IReadOnlyList<IssuedSheet>? sheets = null, double allowable = 0.5)
    {
        var area = SmallCourse.Area with { AllowableDepletion = allowable };
        var site = OneZone.Site(area, controller: Box) with
        {
            Stations = [SmallCourse.Station(1, area: area, programs: "P1") with { FlowLPerMin = 100 }, SmallCourse.Station(2, area: area, programs: "P2") with { FlowLPerMin = 50 }],
            WaterLimits = limits ?? new(),
        };
        LogEntry Said(LogKind kind, int day, string program, double? percent) => new()
        {
            Time = new(First.AddDays(day), new(12, 0)),
            Kind = kind,
            Where = new(PlaceKind.Program, "C1", program),
            Value = percent,
            Unit = percent is null ? LogUnit.None : LogUnit.Percent,
        };
        List<LogEntry> log =
        [
            Said(LogKind.Setting, 3, "P1", 50),
            Said(LogKind.Off, 5, "P2", null),
            Said(LogKind.Setting, 8, "P2", 100),
            new() { Time = new(First.AddDays(4), new(9, 0)), Kind = LogKind.Run, Where = new(PlaceKind.Station, "C1", "1"), Value = 6, Unit = LogUnit.Minutes },
        ];
        var skip = new IssuedSheet(First.AddDays(5), 1, new(First.AddDays(5).ToDateTime(new(5, 0)), TimeSpan.Zero), [new(new("C1", "P1"), AdviceKind.Leave, 50, Asks: false), new(P2, AdviceKind.Skip, null, Asks: true)]);
        return WaterBooksCalculation.Of(new(
            new BalanceInputs
            {
                Versions = [new(First, site)],
                Weather = [.. Enumerable.Range(0, 12).Select(n => OneZone.Day(n, 5))],
                Log = change?.Invoke(log) ?? log,
                Sheets = sheets ?? [skip],
            },
            from ?? First))!;
    }
}
