using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Advice;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Properties;

/// <summary>Settings that are gathered from an instant on say the same as those of the whole logbook: of invented seasons in which anybody says anything.</summary>
public class SettingsFromTests
{
    private const int Seasons = 400;
    private const int Days = 40;
    private static readonly DateOnly _first = new(2026, 6, 1);

    [Fact]
    public void Whatever_was_said_before()
    {
        var (passedOver, differences) = (0, new List<string>());
        for (var seed = 1UL; seed <= Seasons; seed++)
        {
            var dice = new Dice(seed);
            var site = Site(dice);
            SiteVersion[] versions = [new(site.Start, site), .. dice.Chance(0.3) ? [new SiteVersion(_first.AddDays(dice.Whole(1, Days)), Site(dice))] : Array.Empty<SiteVersion>()];
            List<IssuedSheet> sheets = [.. Enumerable.Range(0, Days).SelectMany(day => SheetsOf(_first.AddDays(day), site, dice))];
            List<LogEntry> log = [.. Enumerable.Range(0, dice.Whole(5, 120)).Select(_ => Entry(sheets, dice)).OrderBy(e => dice.Chance(0.8) ? e.Time.Date.DayNumber : dice.Whole(0, 800_000))];
            var from = At(_first.AddDays(dice.Whole(0, Days)), dice.Whole(0, 1439));
            var (whole, needed) = (new SettingHistory(versions, log, sheets), new SettingHistory(versions, log, sheets, from));
            var words = DialWords.Of(versions, log, sheets);
            passedOver += words.Count - NeededWords.From(words, versions, from).Count;
            foreach (var program in versions.SelectMany(v => v.Site.Controllers.SelectMany(c => c.Programs.Select(p => new ProgramKey(c.Id, p.Id)))).Distinct())
            {
                // Those of a description that is no longer in force at the first instant are not asked about from it on.
                var isCurrent = versions.Any(v => v.From > site.Clock.DateOf(from) && Has(v.Site, program)) || Has(SiteVersions.On(versions, site.Clock.DateOf(from)), program);
                differences.AddRange(Instants(from, sheets, dice).Where(at => isCurrent || at < from).Select(at => (at, Of(whole, program, at), Of(needed, program, at))).Where(x => !string.Equals(x.Item2, x.Item3, StringComparison.Ordinal))
                    .Select(x => string.Create(CultureInfo.InvariantCulture, $"seed {seed}, {program} at {x.at:u}, from {from:u}:\n  {x.Item2}\n  {x.Item3}")));
            }
        }

        Assert.True(differences.Count == 0, $"{differences.Count} differ:\n" + string.Join('\n', differences.Take(5)));
        Assert.True(passedOver > 5000, $"only {passedOver} entries were passed over");
    }

    private static IEnumerable<DateTimeOffset> Instants(DateTimeOffset from, List<IssuedSheet> sheets, Dice dice) =>
        [from, from.AddTicks(-1), .. Enumerable.Range(0, 12).Select(_ => At(_first.AddDays(dice.Whole(-1, Days + 2)), dice.Whole(0, 1439))), .. Enumerable.Range(0, 6).Select(_ => sheets[dice.Whole(0, sheets.Count - 1)].AsOf)];

    private static string Of(SettingHistory settings, ProgramKey program, DateTimeOffset at)
    {
        var answered = settings.IsAnswered(program, at);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{settings.At(program, at)} {settings.LastRunning(program, at)} off since {settings.OffSince(program, at):u} {settings.IsOffBySheet(program, at)} answered {answered} {answered || settings.IsAnswered(program, at, onItsDial: true)} number {settings.LastNumber(program):u} answer {settings.LastAnswer(program):u}");
    }

    private static bool Has(Site site, ProgramKey program) => site.ControllerOf(program.Controller)?.Programs.Any(p => string.Equals(p.Id, program.Program, StringComparison.Ordinal)) == true;

    private static Site Site(Dice dice)
    {
        var course = SmallCourse.OneStation(0).Site;
        return course with
        {
            Start = _first,
            Controllers =
            [
                .. Enumerable.Range(1, 2).Select(box => SmallCourse.Box with
                {
                    Id = "C" + box.ToString(CultureInfo.InvariantCulture),
                    Applies = dice.OneOf(PercentApplies.Program, PercentApplies.Controller),
                    Programs = [.. Enumerable.Range(1, dice.Whole(1, 3)).Select(p => SmallCourse.EveryNight("P" + p.ToString(CultureInfo.InvariantCulture), "22:00"))],
                }),
            ],
        };
    }

    private static IEnumerable<IssuedSheet> SheetsOf(DateOnly date, Site site, Dice dice) => Enumerable.Range(1, dice.OneOf(0, 1, 1, 1, 2)).Select(issue => new IssuedSheet(
        date, issue, At(date, issue == 1 ? 300 : dice.Whole(300, 1000)), [.. site.Controllers.SelectMany(c => c.Programs.Select(p => Line(new ProgramKey(c.Id, p.Id), dice)))]));

    private static IssuedLine Line(ProgramKey program, Dice dice) => dice.Whole(0, 5) switch
    {
        0 => new(program, AdviceKind.Skip, null, Asks: true),
        1 => new(program, AdviceKind.Skip, null, Asks: true, dice.Whole(1, 3)),
        2 => new(program, AdviceKind.Leave, 90, Asks: false),
        3 => new(program, AdviceKind.Resume, dice.Whole(1, 20) * 10, Asks: true),
        4 => new(program, AdviceKind.AsSet, null, Asks: false),
        _ => new(program, AdviceKind.Set, dice.Whole(1, 20) * 10, Asks: true),
    };

    private static LogEntry Entry(List<IssuedSheet> sheets, Dice dice)
    {
        var time = new LogTime(_first.AddDays(dice.Whole(0, Days)), dice.Chance(0.2) ? null : new TimeOnly(dice.Whole(0, 23), dice.Whole(0, 59)));
        var program = new Place(PlaceKind.Program, "C" + dice.OneOf("1", "2"), "P" + dice.OneOf("1", "2", "3"));
        var where = dice.Whole(0, 4) switch { 0 => new Place(PlaceKind.Site, "", ""), 1 => new Place(PlaceKind.Controller, program.Name, ""), _ => program };
        var answered = dice.Chance(0.5) ? sheets[dice.Whole(0, sheets.Count - 1)] : null;
        var entry = new LogEntry { Time = time, Kind = LogKind.Setting, Where = where, Sheet = answered?.Date, Issue = answered?.Issue };
        return dice.Whole(0, 9) switch
        {
            0 => entry with { Kind = LogKind.Off },
            1 => entry with { Kind = LogKind.Pause, Value = dice.Whole(1, 4) * 1440, Unit = LogUnit.Minutes },
            2 => entry with { Where = program, Text = LogEntry.NotTurned },
            3 => entry with { Value = 0, Unit = LogUnit.Percent, Until = dice.Chance(0.5) ? new LogTime(time.Date.AddDays(2), null) : null },
            4 => entry with { Value = 900, Unit = LogUnit.Percent },
            5 or 6 or 7 => entry with
            {
                Kind = LogKind.Round,
                Where = new Place(PlaceKind.Site, "", ""),
                Sheet = (answered ?? sheets[dice.Whole(0, sheets.Count - 1)]).Date,
                Issue = dice.Chance(0.5) ? null : answered?.Issue,
                Except = dice.Chance(0.3) ? [program] : [],
            },
            _ => entry with { Value = dice.Whole(1, 20) * 10, Unit = LogUnit.Percent, Text = dice.Chance(0.1) ? LogEntry.Found : "" },
        };
    }

    private static DateTimeOffset At(DateOnly date, int minute) => new(date.ToDateTime(TimeOnly.MinValue).AddMinutes(minute), TimeSpan.Zero);
}
