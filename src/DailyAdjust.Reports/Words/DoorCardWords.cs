using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>The chart on a controller's door, in words.</summary>
internal static class DoorCardWords
{
    public const string Chart = "Programs";
    public const string Stations = "Stations: minutes at 100 %";
    public const string KeyIn = "Keying it in on an emptied controller";
    public const string Checking = "Checking what was keyed in";
    public const string Before = "Before you begin";
    public const string Days = "water days";
    public const string Set = "set";
    public const string Checked = "checked";
    public const string Signed = "Keyed in by ____________________  on ____________  checked by ____________________";

    public static IReadOnlyList<string> Cautions { get; } =
    [
        "Local codes, watering rules and licensed practice come first.",
        "Lock out and tag the power before you open a controller beyond its door; wiring is a licensed person's work where the code says so.",
        "Starts within the next minutes run at once: keep people and carts off the ground, or keep the box off until everything is checked.",
        "Reclaimed water: keep to the signs, setbacks and hours of your permit.",
    ];

    public static string Title(Site site, DoorCard card) => $"{site.Name}: controller {card.Chart.Controller.Id}";

    public static string Revision(DoorCard card) => $"Revision {SiteWords.Count(card.Revision)}, holds from {CodeWords.Date(card.From)}. Take older ones off the door.";

    public static string DaysOf(WaterDays days) => days switch
    {
        WaterDays.Weekdays weekdays => string.Join(", ", Enumerable.Range(1, 7).Select(d => (DayOfWeek)(d % 7)).Where(weekdays.Days.Contains).Select(d => d.ToString()[..3])),
        WaterDays.EveryNth every => $"every {SiteWords.Count(every.Days)} days, one of them {CodeWords.Date(every.From)}",
        WaterDays.OddDays => "odd days of the month",
        WaterDays.EvenDays => "even days of the month",
        _ => "every day",
    };

    public static string Name(string id, string name) => name.Length > 0 ? $"{id} {name}" : id;

    public static string Starts(DoorProgram program) => string.Join(", ", program.Starts.Select(SiteWords.Clock));

    public static string Finishes(DoorProgram program) => string.Join(", ", program.Finishes.Select(SiteWords.Clock));

    /// <summary>In the order in which they are done.</summary>
    public static IReadOnlyList<string> Steps(DoorChart chart) =>
    [
        "Write down what the box holds now, then clear every program, start and minute in it.",
        chart.Controller.ClockStaysStandard
            ? "Clock: today's date, weekday and hour in standard time, all year. Look at AM and PM."
            : "Clock: today's date, weekday and hour. Look at AM and PM.",
        "Minutes: station by station, as in the table; tick each. A station without a number in a program stays at 0 there.",
        .. chart.Programs.Select(p => $"Starts of {Name(p.Id, p.Name)}: {Starts(p)}. No other start."),
        .. chart.Programs.Select(p => $"Water days of {Name(p.Id, p.Name)}: {DaysOf(p.Days)}."),
        chart.Controller.Applies switch
        {
            PercentApplies.Program => "Percentage of every program: 100 %, or what the newest sheet says. Write it down and log it.",
            PercentApplies.Controller => "Percentage of the box: 100 %, or what the newest sheet says. Write it down and log it.",
            _ => "This box has no percentage: the minutes are set as the newest sheet says.",
        },
    ];

    public static IReadOnlyList<string> Checks(DoorChart chart) =>
    [
        "The clock shows the right weekday and hour.",
        "Every minute read back against the table; none an hour or more that is not in it.",
        .. chart.Programs.Select(p => $"{Name(p.Id, p.Name)}: {CommonWords.Count(p.Starts.Count, "start", "starts")}, {Starts(p)}; {DaysOf(p.Days)}; ends {Finishes(p)} at 100 %."),
        "The box is on, and one station runs by hand for a minute.",
    ];
}
