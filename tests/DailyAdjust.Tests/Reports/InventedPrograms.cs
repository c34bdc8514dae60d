using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Reports;

/// <summary>One program for every kind of advice and every exception on the sheet.</summary>
internal static class InventedPrograms
{
    private static DateOnly Date => InventedMorning.Date;

    public static IReadOnlyList<ProgramAdvice> Build() =>
    [
        Program("A", "P1", "Greens 1-3", 90, AdviceKind.Leave, 90, "90 % is good enough: at most 0.01 in would drain") with { ExactPercent = 88.12345 },
        Program("A", "P2", "Fairways 1-3", 100, AdviceKind.Skip, null, "0.64 in fell since Tuesday; the ground holds until Saturday") with
        {
            ExactPercent = 12.5,
            LookAgain = Date.AddDays(3),
            Finishes = null,
        },
        Program("B", "P1", "Greens 4-6", 90, AdviceKind.Set, 60, "=half of last night's run drained") with
        {
            ExactPercent = 58.7654321,
            After = new AfterTonight(Date.AddDays(1), 75),
            StopRule = new StopRule("shop", 5.588, InventedMorning.At(0, 21, 30)),
            Zones = Zones(),
            Chain =
            [
                new Reason("rain", Phrase.Verbatim("0.54 in fell on Tue 14 July at gauge shop"), new Dictionary<string, double>(StringComparer.Ordinal) { ["rainMm"] = 13.716, ["eto_mm"] = double.NaN }),
                new Reason("need", Phrase.Verbatim("Green 4 drives the program: 58.8 %"), new Dictionary<string, double>(StringComparer.Ordinal) { ["percent"] = 58.7654321 }),
            ],
        },
        Program("B", "P2", "Fairways 4-6", 100, AdviceKind.Leave, 100, "100 % is good enough") with
        {
            Unanswered = new UnansweredAdvice(new(Date.AddDays(-2), null), AdviceKind.Set, 80, new AlternativeAdvice(AdviceKind.Set, 100), new AlternativeAdvice(AdviceKind.Leave, 100)) { Issue = 1 },
        },
        Program("B", "P3", "Tees", 0, AdviceKind.Resume, 75, "0.24 in is missing and no rain fell since Saturday") with { ExactPercent = 73.2, Shortfall = new Shortfall(1.27, 6, DialEnds: true) },
        Program("C", "P1", "Range north", 80, AdviceKind.Set, 105, "0.55 in is missing") with { ExactPercent = 103.1 },
        Program("C", "P2", "Range south", 80, AdviceKind.Set, 105, "0.55 in is missing") with { ExactPercent = 103.1 },
        Program("D", "P1", "Practice green", 100, AdviceKind.Set, 70, "0.10 in is missing") with
        {
            MinutesOnly = true,
            NewMinutes = [new StationMinutes(new StationKey("D", "1"), 10, 7), new StationMinutes(new StationKey("D", "2"), 12, 8.5)],
        },
        Program("E", "P1", "Fairways 7-9", 100, AdviceKind.Off, null, "Hold: drain trench open") with { OffUntil = Date.AddDays(5) },
        Program("E", "P2", "Nursery", 100, AdviceKind.Leave, 100, "No start before the next visit") with { Confirmed = false },
        Program("E", "P3", "", 0, AdviceKind.KeepOff, 0, "Still wet") with { LookAgain = Date.AddDays(1) },
    ];

    private static ProgramAdvice Program(string controller, string program, string name, double present, AdviceKind advice, double? percent, string reason) => new()
    {
        Key = new ProgramKey(controller, program),
        Name = name,
        Present = new Setting(present),
        Confirmed = true,
        Advice = advice,
        Percent = percent,
        NextStart = InventedMorning.At(0, 21, 30),
        Finishes = InventedMorning.At(1, 1, 20),
        MayBeOn = present > 0,
        Reason = Phrase.Verbatim(reason),
    };

    private static IReadOnlyList<ZoneAdvice> Zones() =>
    [
        Zone("4", "Green 4") with { Percent = 58.7654321, DepletionMm = 2.1 },
        Zone("7", "Green 6 back") with { Percent = 140.2, DepletionMm = 5.08, SetAside = true, ShortMm = 3.048 },
        Zone("8", "Green 5 low end") with { Percent = 0, DepletionMm = 0, CanWait = true, DrainsMm = 1.27 },
        Zone("9", "Green 6 front") with { Percent = 71, DepletionMm = 3, Due = true, ShortMm = 0.51 },
    ];

    private static ZoneAdvice Zone(string station, string name) => new()
    {
        Station = new StationKey("B", station),
        Name = name,
        Area = "greens",
        DepletionMm = 0,
        AllowableMm = 6.2,
    };
}
