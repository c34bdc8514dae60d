using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>Invented logbooks and sheets.</summary>
internal static class RandomLog
{
    public static IReadOnlyList<IssuedSheet> Sheets(Dice dice, Site site, int days) =>
    [
        .. Enumerable.Range(2, days - 2)
            .Where(_ => dice.Chance(0.3))
            .SelectMany(i => Enumerable.Range(1, dice.OneOf(1, 1, 2)).Select(issue =>
            {
                var date = site.Start.AddDays(i);
                return new IssuedSheet(date, issue, site.Clock.ToInstant(date, new(4 + (issue * 2), 0)), [.. Programs(site).Select(p => Line(dice, p))]);
            })),
    ];

    public static IReadOnlyList<LogEntry> Entries(Dice dice, Site site, int days, IReadOnlyList<IssuedSheet> sheets)
    {
        List<LogEntry> entries = [.. Enumerable.Range(0, dice.Whole(3, 22)).Select(i => Entry(dice, site, days) with { Ordinal = i })];
        foreach (var sheet in sheets.Where(_ => dice.Chance(0.7)))
        {
            entries.Add(new LogEntry
            {
                Time = Time(dice, sheet.Date.AddDays(dice.OneOf(0, 0, 1))),
                Kind = LogKind.Round,
                Where = new(PlaceKind.Site, "", ""),
                Sheet = sheet.Date,
                Issue = dice.Chance(0.5) ? sheet.Issue : null,
                Except = dice.Chance(0.4) ? [Program(dice, site)] : dice.Chance(0.2) ? [Box(dice, site)] : [],
                Ordinal = entries.Count,
            });
        }

        return entries;
    }

    private static LogEntry Entry(Dice dice, Site site, int days)
    {
        var time = Time(dice, site.Start.AddDays(dice.Whole(0, days - 1)));
        LogEntry New(LogKind kind, Place where, double? value = null, LogUnit unit = LogUnit.None) =>
            new() { Time = time, Kind = kind, Where = where, Value = value, Unit = unit };

        var station = dice.OneOf([.. site.Stations]);
        var here = new Place(PlaceKind.Station, station.Key.Controller, station.Key.Station);
        return dice.Whole(0, 12) switch
        {
            0 or 1 or 2 => New(LogKind.Setting, Program(dice, site), dice.Whole(1, 40) * 5, LogUnit.Percent),
            3 => New(LogKind.Setting, Box(dice, site), dice.Whole(1, 40) * 5, LogUnit.Percent),
            4 => New(LogKind.Off, dice.Chance(0.8) ? Program(dice, site) : Box(dice, site)),
            5 or 6 => New(LogKind.Ran, dice.OneOf(here, Program(dice, site), Box(dice, site)), dice.OneOf(0, 50, 70, 100, 110), LogUnit.Percent),
            7 => New(LogKind.Run, here, dice.Whole(2, 60), LogUnit.Minutes),
            8 => New(LogKind.Run, Program(dice, site), dice.OneOf(30, 50, 100, 120), LogUnit.Percent),
            9 => New(LogKind.Hose, here, dice.Between(0.5, 9, 1), LogUnit.Mm),
            10 when station.GroundM2 is not null => New(LogKind.Hose, here, dice.Whole(100, 9000), LogUnit.Litres),
            11 => New(LogKind.Probe, here, dice.Between(2, 40, 1), LogUnit.Percent),
            12 => New(LogKind.Probe, new(PlaceKind.Area, station.Area.Name, ""), dice.Between(5, 35, 1), LogUnit.Percent),
            _ => New(LogKind.Syringe, here, 1, LogUnit.Mm),
        };
    }

    private static LogTime Time(Dice dice, DateOnly date) =>
        new(date, dice.Chance(0.15) ? null : new TimeOnly(dice.Whole(0, 23), dice.Whole(0, 59)));

    private static IEnumerable<ProgramKey> Programs(Site site) =>
        site.Controllers.SelectMany(c => c.Programs.Select(p => new ProgramKey(c.Id, p.Id)));

    private static Place Program(Dice dice, Site site)
    {
        var key = dice.OneOf([.. Programs(site)]);
        return new(PlaceKind.Program, key.Controller, key.Program);
    }

    private static Place Box(Dice dice, Site site) => new(PlaceKind.Controller, dice.OneOf([.. site.Controllers]).Id, "");

    private static IssuedLine Line(Dice dice, ProgramKey program)
    {
        double number = dice.Whole(1, 30) * 5;
        return dice.Whole(0, 5) switch
        {
            0 => new(program, AdviceKind.Set, number, true),
            1 => new(program, AdviceKind.Resume, number, true),
            2 => new(program, AdviceKind.Skip, null, true),
            3 => new(program, AdviceKind.Off, null, true),
            4 => new(program, AdviceKind.KeepOff, 0, false),
            _ => new(program, AdviceKind.Leave, number, false),
        };
    }
}
