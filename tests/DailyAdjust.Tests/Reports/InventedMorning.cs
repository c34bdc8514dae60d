using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Reports;

namespace DailyAdjust.Tests.Reports;

/// <summary>A morning on the invented course with something in every part of the sheet.</summary>
internal static class InventedMorning
{
    public static readonly DateOnly Date = new(2026, 7, 15);

    public static SheetIssue Issue { get; } = new()
    {
        SiteId = "quarry-bend",
        Number = 2,
        Replaces = 1,
        Notices = ["shop-0713.csv was refused: line 40 is cut off. It lies in inbox/refused with its reason"],
    };

    public static MorningSheet Build(UnitSystem units = UnitSystem.Us) => new()
    {
        Site = InventedCourse.Build(units),
        Date = Date,
        AsOf = At(0, 4, 50),
        Freshness = new Freshness
        {
            WeatherThrough = At(0, 4, 0),
            Station = "shop <script>alert(1)</script>",
            AssumedNotes = [new(null, Phrase.Verbatim("wind speed: 2 h interpolated on Mon 13 July"))],
            UnknownRain = [new UnknownRain("east", Date.AddDays(-1), 1.016)],
            AssumedSoil = [new AssumedZone(new StationKey("B", "7"), "Green 6 back", Date.AddDays(-20))],
            UnansweredRounds = [new(Date.AddDays(-2), null)],
            NeverConfirmed = [new ProgramKey("E", "P2")],
            RecentDays = [.. Enumerable.Range(-7, 7).Select(Weather)],
            ExpectedEtoMm = 5.334,
        },
        Programs = InventedPrograms.Build(),
        Overnight = new Overnight([new OvernightRain("shop", 13.716, 2.54), new OvernightRain("east", null, 0)], 4.826, 14.4, At(0, 4, 30)),
        DueRuns =
        [
            new DueRun(new ProgramKey("A", "P2"), "Fairways 1-3", Date.AddDays(-1), At(-1, 21, 30), At(0, 0, 40), new Setting(100), Answered: false),
            new DueRun(new ProgramKey("A", "P1"), "Greens 1-3", Date, At(0, 4, 10), At(0, 4, 45), new Setting(90), Answered: true),
        ],
        Driest =
        [
            new DryZone(new StationKey("B", "7"), "Green 6 back", "greens", 5.08, 6.1, 3.048, 2423, Phrase.Verbatim("needs more than the rest of the greens: crown, full sun")),
            new DryZone(new StationKey("E", "3"), "@Fairway 8 ridge", "fairways", 17.2, 15.0, 6.6, null, Phrase.Verbatim("half an hour of its minutes is missing")),
        ],
        Wettest = [new WetZone(new StationKey("C", "2"), "Range low end", "range", 9.144, 3.556, 0.254)],
        StandingOrders = [new StandingOrder("E/P1", Phrase.Verbatim("drain trench open"), Date.AddDays(5)), new StandingOrder("pump", Phrase.Verbatim("reduced to 2,000 L/min"), Until: null)],
        Fit = new NightFit(
            [
                new ProgramRun(Date, new ProgramKey("B", "P1"), At(0, 21, 30), At(1, 1, 20)),
                new ProgramRun(Date.AddDays(1), new ProgramKey("B", "P1"), At(1, 21, 30), At(2, 1, 20)),
            ],
            [new ProgramOverlapFound("B", "P1", "P3", Date, 14, 55)],
            [new OutsideWindow("C", "P1", Date, At(1, 5, 50), At(1, 6, 40), IsGrowIn: false)],
            [new PumpExceeded(At(0, 22, 0), At(0, 22, 30), 3407, 3000)],
            [new FitCut(new ProgramKey("C", "P2"), 120, 105, new Shortfall(0.762, 3, DialEnds: false), new TimeOnly(20, 45))]),
        Areas = [.. InventedAreas.Build(Date)],
        Outlook =
        [
            new Outlook(1, 0, 41, "", 0, 1.2),
            new Outlook(3, 2, 41, "Green 6 back", 0.762, 0.4),
            new Outlook(7, 9, 41, "Green 6 back", 4.318, 0),
        ],
        Season =
        [
            new ProgramSeason(new ProgramKey("A", "P1"), Date.AddDays(-40), [.. Enumerable.Repeat(50.0, 33), .. Enumerable.Repeat(110.0, 7)]),
            new ProgramSeason(new ProgramKey("B", "P1"), Date.AddDays(-40), [.. Enumerable.Repeat(0.0, 38), 100, 100]),
        ],
        Water = new WaterUsed(201_000, 2_460_000, 14_300_000, 3) { MeteredMonth = new(Date.AddDays(-15), Date.AddDays(-2), 2_380_000) },
        Pointers = [Phrase.Verbatim("Green 6 back has been set aside for three weeks: raise its base minutes by about a third")],
    };

    /// <summary>Everything answered, nothing failed: eight programs, the usual changes.</summary>
    public static MorningSheet Ordinary()
    {
        var sheet = Build();
        return sheet with
        {
            Freshness = sheet.Freshness with { UnknownRain = [], AssumedSoil = [], UnansweredRounds = [], NeverConfirmed = [], Station = "shop" },
            Programs = [.. sheet.Programs.Where(p => p.Key.Controller is "A" or "B" or "C").Select(p => p with { Unanswered = null })],
            Fit = sheet.Fit with { Overlaps = [], Pump = [], Window = [], Cuts = [] },
        };
    }

    /// <summary>The same site when its weather has stopped: nothing is advised.</summary>
    public static MorningSheet WithoutAdvice()
    {
        var sheet = Build();
        return sheet with
        {
            Freshness = sheet.Freshness with { NoAdvice = Phrase.Verbatim("the newest weather is 3 days old"), NoAdviceSince = Date.AddDays(-1) },
            Programs = [.. sheet.Programs.Select(p => p with
            {
                Advice = AdviceKind.AsSet, Percent = null, ExactPercent = null, Reason = Phrase.Verbatim("No sound advice: the newest weather is 3 days old."),
            })],
        };
    }

    /// <summary>An instant on the course's clock, so many days after the sheet's date.</summary>
    public static DateTimeOffset At(int day, int hour, int minute) =>
        InventedCourse.Clock.ToInstant(Date.AddDays(day), new TimeOnly(hour, minute));

    private static WeatherDay Weather(int day) => new()
    {
        Date = Date.AddDays(day),
        Station = "shop",
        EtoMm = 4.5 + (0.1 * day),
        Basis = day == -2 ? EtoBasis.PartEstimated : EtoBasis.Hourly,
        AirTemperatureMaxC = 29.4,
        AirTemperatureMinC = 15.5,
        Estimated = day == -2 ? ["wind_speed: 2 h interpolated"] : [],
        Rain = [new GaugeDay("shop", day == -1 ? 13.716 : 0, [], RainBasis.Measured, 0), new GaugeDay("east", null, [], RainBasis.Unknown, 1.016)],
    };
}
