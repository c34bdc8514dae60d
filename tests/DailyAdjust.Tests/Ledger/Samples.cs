using System.Globalization;
using System.Text;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Ledger;

namespace DailyAdjust.Tests.Ledger;

/// <summary>Invented values with every member set.</summary>
internal static class Samples
{
    public static readonly DateOnly Day = new(2026, 6, 8);

    public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    /// <summary>A stored file, whole.</summary>
    public static byte[] BytesOf(SiteLedger ledger, long seq)
    {
        using var stream = ledger.Files.OpenRead(seq);
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    public static LogEntry Entry(string time, LogKind kind, Place where, double? value = null, string text = "", int ordinal = 0, string note = "") => new()
    {
        Time = time.Length > 10
            ? new LogTime(DateOnly.ParseExact(time[..10], "yyyy-MM-dd", CultureInfo.InvariantCulture), TimeOnly.ParseExact(time[11..], "HH:mm", CultureInfo.InvariantCulture))
            : new LogTime(DateOnly.ParseExact(time, "yyyy-MM-dd", CultureInfo.InvariantCulture), null),
        Kind = kind,
        Where = where,
        Ordinal = ordinal,
        Value = value,
        Text = text,
        Note = note,
    };

    public static Place Program(string controller, string program) => new(PlaceKind.Program, controller, program);

    public static Place Site => new(PlaceKind.Site, "", "");

    public static LogEntry FullEntry => new()
    {
        Time = new LogTime(Day, new TimeOnly(5, 30)),
        Kind = LogKind.Round,
        Where = Site,
        Ordinal = 2,
        Value = 0.1 + 0.2,
        Unit = LogUnit.LitresPerMin,
        Text = "closed",
        Sheet = new DateOnly(2026, 6, 7),
        Issue = 2,
        Except = [Program("C1", "P2"), new(PlaceKind.Controller, "C3", "")],
        Until = new LogTime(new DateOnly(2026, 6, 30), null),
        By = "Zoë",
        Note = "said \"done\", was\nhalf done — см. ниже",
        Instrument = "meter 2",
        RodLengthM = 0.0762,
    };

    public static WeatherDay FullDay => new()
    {
        Date = Day,
        Station = "yard",
        EtoMm = 5.123457,
        Basis = EtoBasis.PartEstimated,
        AirTemperatureMaxC = 31.7,
        AirTemperatureMinC = -0.0,
        Estimated = ["dew_point: from lowest temperature", "wind_speed: 2 h interpolated"],
        Rain =
        [
            new GaugeDay("yard", 0.1 + 0.2, [new RainFall(new DateTimeOffset(2026, 6, 8, 7, 0, 0, TimeSpan.Zero), 0.1), new RainFall(new DateTimeOffset(2026, 6, 8, 8, 0, 0, TimeSpan.Zero), 0.2)], RainBasis.Measured, 0),
            new GaugeDay("far green", null, [], RainBasis.Unknown, 1.0 / 3),
        ],
        SetAside = [new SetAsideValue("yard", new DateTimeOffset(2026, 6, 8, 3, 0, 0, TimeSpan.Zero), "air_temperature 88 °C", "above 60 °C"), new SetAsideValue("yard", new DateTimeOffset(2026, 6, 8, 9, 0, 0, TimeSpan.Zero), "wind_speed 2.2 m/s", "unchanged for 14 h") { Check = "stuck", Values = 14 }],
        Doubts = [new SensorDoubt("clock", "yard", "its sun is about 60 minutes early")],
        Marks = ["rain: trace counts as 0"],
        StandIn = new StandIn("yard", 20123, -12.5),
        Stations = [new StationDay("yard", 21.55, 97.1, null, 0.871, -4.3), new StationDay("far", null, null, null, null, null)],
    };

    public static SoilState State(DateOnly day, int stations = 3)
    {
        var depletion = new Dictionary<StationKey, double>();
        for (var i = stations; i > 0; i--)
        {
            depletion[new StationKey(i % 2 == 0 ? "C1" : "C/2", $"{i}")] = i / 3.0;
        }

        return new SoilState(day, depletion);
    }

    public static IReadOnlyList<IssuedLine> Lines =>
    [
        new(new ProgramKey("C1", "P1"), AdviceKind.Set, 75, true),
        new(new ProgramKey("C1", "P2"), AdviceKind.KeepOff, 0, false),
        new(new ProgramKey("C2", "P1"), AdviceKind.Skip, null, true),
    ];

    public static Dictionary<string, byte[]> ReportFiles => new(StringComparer.Ordinal)
    {
        ["report.txt"] = Bytes("Turn C1 program P1 to 75.\n"),
        ["advice.csv"] = Bytes("date,controller\n"),
        ["empty.csv"] = [],
    };
}
