using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Reports;

/// <summary>The invented morning with everything that can be otherwise than on an ordinary day.</summary>
internal static class InventedExceptions
{
    private const string ClubFinal = "club final";
    private const string DrainWork = "drain work";
    private const string Foliar = "foliar";
    private const string NewSod = "new sod";
    private const string WettingAgent = "wetting agent";
    private static readonly Phrase GrowIn = new("grow-in");

    private static readonly DateOnly Date = InventedMorning.Date;
    private static readonly LogEntry Spoken = new()
    {
        Time = new LogTime(Date.AddDays(-2), new(8, 0)),
        Kind = LogKind.Stage,
        Where = new Place(PlaceKind.Site, "", ""),
        Text = "stage 2",
        By = "R. Vance",
    };

    public static MorningSheet Build()
    {
        var sheet = InventedMorning.Build();
        return sheet with
        {
            StandingOrders =
            [
                new StandingOrder("area:greens", Phrase.Of($"no water, {WettingAgent}"), Date.AddDays(1)) { UntilClock = new(18, 0), By = "R. Vance", Begins = At(1, 6) },
                new StandingOrder("C/P1", Phrase.Of($"{GrowIn}: {NewSod}"), Date.AddDays(9)),
            ],
            Exceptions = new SheetExceptions
            {
                HandRuns =
                [
                    new HandRunOrder(LogKind.WaterIn, new Place(PlaceKind.Area, "greens", ""), 6.35, At(0, 20), IsLate: false, "R. Vance", "granular", [
                        new HandRunStation(new StationKey("A", "1"), "Green 1", 4, 26, 3, 10, 25),
                        new HandRunStation(new StationKey("A", "2"), "Green 2", 6.35, 38, 1, 38, 0)]) { Begins = At(0, 7), Against = [new StandingOrder("C/P1", Phrase.Of($"hold: {DrainWork}"), Date)] },
                ],
                GrowIns =
                [
                    new GrowInLine(new ProgramKey("C", "P1"), 3, 12, Date.AddDays(9), [new(7, 0), new(10, 0), new(13, 0)], [new GrowInMinutes([new StationKey("C", "2")], 4)], IsChange: true, IsOver: false),
                    new GrowInLine(new ProgramKey("A", "P2"), 1, 10, Date.AddDays(10), [new(7, 0), new(13, 0)], [new GrowInMinutes([new StationKey("A", "1")], 5)], IsChange: false, IsOver: false) { Begins = At(1, 7) },
                ],
                Shut = [new ShutBox("D", new ShutSpan(At(-1, 17), At(0, 17), "shop", 9.4), [new ShutStart(new ProgramKey("D", "P1"), Date, At(0, 2))])],
                Season = [new SeasonBox("E", SeasonState.Closing, At(-1, 9), null, ""), new SeasonBox("B", SeasonState.Closing, At(-1, 9), Date.AddDays(-1), "Pat")],
                Stage = new StageLine(new StageInForce("stage 2", Date.AddDays(-2), null, Spoken), new DroughtStage { Name = "stage 2", MostPercent = 60 }, [new AreaCeiling("rough", 0), new AreaCeiling("greens", 100)]),
                Night = [new NightCaution(OffReason.Cold, 1.5, 4.4444, IsForecast: true, Holds: true), new NightCaution(OffReason.Wind, 6.2, 4.4704, IsForecast: false, Holds: false)],
                PutBack =
                [
                    new PutBack(new ProgramKey("A", "P1"), [new StationKey("A", "2")], [], Phrase.Of($"no water, {Foliar}"), new LogTime(Date.AddDays(-1), new(23, 0))),
                    new PutBack(new ProgramKey("A", "P2"), [], [new(21, 0), new(23, 0)], Phrase.Of($"event, {ClubFinal}"), new LogTime(Date, null)),
                ],
                TakenOutRuns = [.. new[] { "3", "4" }.Select(s => new TakenOutRun(new ProgramKey("A", "P1"), new StationKey("A", s), Date.AddDays(-1), At(-1, 21), At(-1, 22)))],
            },
            Programs = [.. sheet.Programs.Select((p, i) => i == 0 ? Hit(p) : p)],
            RunByHand = new RunByHand
            {
                FirstPlay = At(0, 7),
                Groups =
                [
                    new HandGroup(At(0, 5), At(0, 6), 1135.6, 1892.7, [
                        new HandBox("A", "P1", 90, [Missed("A", "1", 30, 30), Missed("A", "2", 24, 24)]),
                        new HandBox("B", null, null, [Missed("B", "3", 12.5, 8)])]),
                ],
                NotBeforePlay = [new HandBox("C", null, null, [Missed("C", "1", 40, 40)])],
                BeyondPump = [Missed("C", "2", 20, 20)],
                CanWait = [new StationKey("D", "1"), new StationKey("D", "2")],
                MustNotRun = [new StationKey("E", "1")],
            },
            BoxesToVerify = [new BoxToVerify(new UnverifiedBox("A", At(-1, 22), At(0, 3), "lightning") { CheckedEarly = At(0, 2) }, [(new ProgramKey("A", "P1"), new Setting(90)), (new ProgramKey("A", "P2"), Setting.Off)]), new BoxToVerify(new UnverifiedBox("B", At(0, 0), null, "") { SinceHasHour = false }, [(new ProgramKey("B", "P1"), new Setting(80))])],
            SettingsNotUsed = [new ImpossibleSetting(new Controller { Id = "A", Programs = [], PercentMax = 150 }, [new ProgramKey("A", "P1")], Spoken with { Time = new LogTime(Date, null), Kind = LogKind.Setting, Text = "", Value = 500, Unit = LogUnit.Percent })],
            ClockChange = new ClockChange(At(1, 2), TimeSpan.FromHours(1), IsAhead: true, ["A", "B"]),
        };
    }

    private static MissedStation Missed(string box, string station, double missed, double minutes) => new(new StationKey(box, station), $"Green {station}", "greens", missed, missed - minutes, minutes, 400);

    private static ProgramAdvice Hit(ProgramAdvice program) => program with
    {
        PauseDays = 3,
        PausedUntil = At(2, 7),
        GrowInBegins = At(1, 7),
        TakenOut = [new TakenOutStart(At(0, 21), Phrase.Of($"event, {ClubFinal}"), new LogTime(Date, new(23, 0)))],
        StationsOut = [new TakenOutStations([new StationKey("A", "3"), new StationKey("A", "4")], At(0, 21), Phrase.Of($"hold: {DrainWork}"), null)],
        Fault = new Fault(At(-3, 9), "leak at the 6th", "Pat", IsOwnNote: true),
    };

    private static DateTimeOffset At(int day, int hour) => InventedCourse.Build(UnitSystem.Us).Clock.ToInstant(Date.AddDays(day), new TimeOnly(hour, 0));
}
