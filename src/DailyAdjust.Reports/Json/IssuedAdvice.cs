using System.Globalization;
using System.Text.Json;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Json;

/// <summary>
/// What a sheet said, read back from its advice.json: nothing is calculated again, so it is what was issued, whatever the program does today. A sheet of an
/// earlier program may lack keys; what it did not say is empty.
/// </summary>
internal sealed class IssuedAdvice
{
    private static readonly Dictionary<string, AdviceKind> Kinds = Enum.GetValues<AdviceKind>().ToDictionary(AdviceCode.Of, StringComparer.Ordinal);

    private readonly AdviceDocument _document;

    private IssuedAdvice(ReadOnlySpan<byte> adviceJson, Site site)
    {
        _document = AdviceJson.Read(adviceJson);
        Programs = SharedDial.Mark(site, [.. _document.Programs.Select(p => Program(p, site))]);
        Freshness = Fresh(_document.Freshness, Programs);
        Exceptions = IssuedActs.Exceptions(_document.Exceptions, site.Clock);
        StartBoxes = StartChanges.Boxes(site, Programs, Exceptions);
        AsOf = _document.AsOf is { } asOf ? DateTimeOffset.Parse(asOf, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal) : site.Clock.DayStart(Day(_document.Date));
        var midnight = CodeWords.Date(Day(_document.Date).AddDays(1)) + "T00:00";
        ByHand = Or(_document.RunByHand?.Groups) is { Count: > 0 } groups ? (Clock(groups[0].From), Clock(groups[^1].To)) : null;
        StationsByHand = _document.RunByHand is { } list
            ? list.Groups.SelectMany(g => g.Boxes).Concat(list.NotBeforePlay).Sum(b => b.Stations.Count) + list.BeyondPump.Count
            : 0;
        HandRuns = [.. Or(_document.Exceptions?.HandRuns).Where(order => order.Begins is null && (order.Late || string.CompareOrdinal(order.Due, midnight) <= 0))];

        // What is said of an order later needs its time: a bad one is found here.
        _ = HandRuns.Sum(order => Day(order.Due).DayNumber + Clock(order.Due).Length);
    }

    /// <param name="adviceJson">UTF-8.</param>
    /// <param name="site">The description that the sheet was made by.</param>
    /// <exception cref="JsonException">The file is no advice.json, or says what none can say: a code or a date that there is not.</exception>
    public static IssuedAdvice Read(ReadOnlySpan<byte> adviceJson, Site site)
    {
        try
        {
            return new IssuedAdvice(adviceJson, site);
        }
        catch (Exception bad) when (bad is KeyNotFoundException or FormatException or ArgumentException or NullReferenceException)
        {
            throw new JsonException(bad.Message, bad);
        }
    }

    /// <summary>The same; null and why, where the file is none.</summary>
    public static IssuedAdvice? TryRead(ReadOnlySpan<byte> adviceJson, Site site, out string trouble)
    {
        try
        {
            trouble = "";
            return Read(adviceJson, site);
        }
        catch (JsonException bad)
        {
            trouble = $"its newest advice.json is damaged ({bad.Message.TrimEnd('.')})";
            return null;
        }
    }

    /// <summary>By controller in walking order, with what a round needs of them.</summary>
    public IReadOnlyList<ProgramAdvice> Programs { get; }

    /// <summary>What of its exceptions somebody carries out at a box.</summary>
    public SheetExceptions Exceptions { get; }

    /// <summary>When it was said, UTC.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>What waits for an answer, and whether there is sound advice.</summary>
    public Freshness Freshness { get; }

    public IReadOnlyList<string> Notices => Or(_document.Notices);

    /// <summary>A look after the day's round was to be done.</summary>
    public bool IsAfterRound => _document.SecondLook?.AfterRound ?? false;

    /// <summary>Orders for water by hand that have begun, due by the sheet's date.</summary>
    public IReadOnlyList<HandRunJson> HandRuns { get; }

    /// <summary>When the list of what to run by hand now begins and ends, on the site's clock; null = nothing of it can be run now.</summary>
    public (string From, string To)? ByHand { get; }

    /// <summary>Stations that missed the night's water and cannot wait.</summary>
    public int StationsByHand { get; }

    public IReadOnlyList<BoxToVerifyJson> BoxesToVerify => Or(_document.BoxesToVerify);

    /// <summary>Boxes whose clock is to be moved.</summary>
    public IReadOnlyList<string> ClocksToMove => Or(_document.ClockChange?.Controllers);

    /// <summary>Boxes with starts or stations to take out, put back or key in, in walking order.</summary>
    public IReadOnlyList<string> StartBoxes { get; }

    /// <summary>The date of a local time as advice.json writes it.</summary>
    public static DateOnly Day(string text) => DateOnly.ParseExact(text.AsSpan(0, 10), "yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The time of day of a local time as advice.json writes it.</summary>
    public static string Clock(string text) => text[11..];

    private static IReadOnlyList<T> Or<T>(IReadOnlyList<T>? list) => list ?? [];

    private static ProgramAdvice Program(ProgramJson p, Site site) => new()
    {
        Key = new ProgramKey(p.Controller, p.Program),
        Name = p.Name ?? "",
        Present = new Setting(p.Setting),
        Confirmed = p.Confirmed,
        Advice = Kinds[p.Advice],
        Percent = p.Percent,
        Reason = Phrase.Verbatim(p.Reason),
        MayBeOn = p.NeedsVisit,
        PauseDays = p.PauseDays,
        Condition = IssuedActs.Condition(p, site.Clock),
        TakenOut = IssuedActs.TakenOut(p.TakenOut, site.Clock),
        StationsOut = IssuedActs.StationsOut(p, site.Clock),
        InPlace = p.StartsInPlace is { } split ? new StartsInPlace(split.Starts, split.ApartMinutes, split.ThatFit, split.NextOwnMinutes) : null,
        StopRule = p.StopRule is { } rule ? new StopRule(rule.Gauge, rule.RainMm, IssuedActs.Instant(rule.Before, site.Clock)) { AlsoAt = Or(rule.AlsoAt) } : null,
        MinutesOnly = site.ControllerOf(p.Controller)?.Applies == PercentApplies.None,
        DialShowsChange = site.ControllerOf(p.Controller)?.ShowsChange ?? false,
        NewMinutes = [.. Or(p.NewMinutes).Select(m => new StationMinutes(new StationKey(p.Controller, m.Station), m.From, m.To))],
        Zones = [.. Or(p.Zones).Select(z => new ZoneAdvice
        {
            Station = new StationKey(p.Controller, z.Station), Name = z.Name ?? "", Area = z.Area ?? "", DepletionMm = z.DepletionMm, AllowableMm = z.AllowableMm,
        })],
        Unanswered = p.Unanswered is { } u
            ? new UnansweredAdvice(new OpenRound(Day(u.Sheet), null), Kinds[u.Advice], u.Percent, Then(u.IfDone), Then(u.AsLogged)) { PauseDays = u.PauseDays }
            : null,
    };

    private static AlternativeAdvice Then(AlternativeJson then) => new(Kinds[then.Advice], then.Percent);

    private static Freshness Fresh(FreshnessJson f, IReadOnlyList<ProgramAdvice> programs)
    {
        var names = programs.SelectMany(p => p.Zones).Where(z => z.Name.Length > 0).GroupBy(z => z.Station).ToDictionary(z => z.Key, z => z.First().Name);
        return new()
        {
            NoAdvice = f.NoAdvice is { } why ? Phrase.Verbatim(why) : null,
            NoAdviceSince = f.NoAdviceSince is { } since ? Day(since) : null,
            UnknownRain = [.. Or(f.UnknownRain).Select(r => new UnknownRain(r.Gauge, Day(r.Date), r.MeasuredPartMm))],
            UnansweredRounds = [.. Or(f.UnansweredRounds).Select(d => new OpenRound(Day(d), null))],
            NeverConfirmed = [.. Or(f.NeverConfirmed).Select(p => new ProgramKey(p.Controller, p.Program))],
            AssumedSoil = [.. Or(f.AssumedSoil).Select(z => Assumed(new StationKey(z.Controller, z.Station), Day(z.Since)))],
        };

        AssumedZone Assumed(StationKey station, DateOnly since) => new(station, names.GetValueOrDefault(station, station.ToString()), since);
    }
}
