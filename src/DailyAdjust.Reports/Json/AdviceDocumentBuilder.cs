using System.Globalization;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Words;
using static DailyAdjust.Reports.Json.JsonWriting;

namespace DailyAdjust.Reports.Json;

/// <summary>Turns a morning sheet into the plain data of advice.json.</summary>
internal static class AdviceDocumentBuilder
{
    public static AdviceDocument Build(SheetView view)
    {
        var sheet = view.Sheet;
        var clock = sheet.Site.Clock;
        return new AdviceDocument(
            view.Issue.SiteId,
            CodeWords.Date(sheet.Date),
            view.Issue.Number,
            Freshness(sheet.Freshness, clock),
            [.. sheet.Programs.Select(p => Program(sheet.Date, p, clock))],
            Fit(sheet.Fit, sheet.Site, clock),
            view.Issue.Number,
            view.Issue.Replaces,
            sheet.Site.Name,
            clock.ZoneId,
            sheet.AsOf.ToUniversalTime().ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
            view.Issue.Notices,
            ForecastJson.Of(sheet.Forecast, clock),
            CorrectionsJson.Of(sheet.Corrections),
            [.. sheet.IfVisited.Select(w => new VisitWorthJson(
                w.Program.Controller, w.Program.Program, CodeWords.Date(w.NextVisit), AdviceCode.Of(w.Advice), Number(w.Percent), Number(w.WastedMm), Number(w.WastedL), w.ZonesBeyond, w.DaysBeyond, Number(w.BeyondMm), w.IsAlert))],
            ExceptionsJson.Standing(sheet),
            ExceptionsJson.Of(sheet.Exceptions, clock, sheet.Date),
            GroundJson.Of(sheet),
            SecondLookJson.Of(sheet.SecondLook, clock),
            RunByHandJson.Of(sheet.RunByHand, clock),
            BoxToVerifyJson.Of(sheet.BoxesToVerify, clock),
            ClockChangeJson.Of(sheet.ClockChange, clock),
            SettingNotUsedJson.Of(sheet.SettingsNotUsed));
    }

    private static FreshnessJson Freshness(Freshness f, SiteClock clock) => new(
        Local(f.WeatherThrough, clock),
        f.Station,
        f.NoAdvice?.ToString(),
        Date(f.NoAdviceSince),
        [.. f.Assumed.Concat(f.SetAside).Concat(f.Doubts).Select(p => p.ToString())],
        [.. f.UnknownRain.Select(r => new UnknownRainJson(r.Gauge, CodeWords.Date(r.Date), Number(r.MeasuredPartMm)))],
        [.. f.UnansweredRounds.Select(r => r.Date).Distinct().Select(CodeWords.Date)],
        [.. f.NeverConfirmed.Select(p => new ProgramKeyJson(p.Controller, p.Program))],
        Number(f.ExpectedEtoMm),
        [.. f.AssumedSoil.Select(z => new AssumedSoilJson(z.Station.Controller, z.Station.Station, CodeWords.Date(z.Since)))],
        f.PassedOverRounds.Count == 0 ? null : [.. f.PassedOverRounds.Select(CodeWords.Date)]);

    private static ProgramJson Program(DateOnly date, ProgramAdvice p, SiteClock clock)
    {
        var row = AdviceRow.Of(date, clock, p);
        return new ProgramJson(
            p.Key.Controller,
            p.Key.Program,
            Number(row.SettingPercent),
            AdviceCode.Of(row.Advice),
            Number(row.Percent),
            Number(row.ExactPercent),
            Local(p.NextStart, clock),
            Local(p.Finishes, clock),
            row.Reason,
            [.. p.Zones.Select(Zone)],
            p.Name,
            p.Confirmed,
            p.NeedsVisit,
            [.. p.Chain.Select(Link)],
            Date(p.LookAgain),
            Date(p.OffUntil),
            p.After is { } after ? new AfterJson(CodeWords.Date(after.On), Number(after.Percent)) : null,
            p.StopRule is { } rule ? new StopRuleJson(rule.Gauge, Number(rule.RainMm), Local(rule.Before, clock), rule.AlsoAt.Count > 0 ? rule.AlsoAt : null) : null,
            p.Shortfall is { } cut ? new ShortfallJson(Number(cut.DepthMm), Number(cut.Minutes)) : null,
            [.. p.NewMinutes.Select(m => new NewMinutesJson(m.Station.Station, Number(m.From), Number(m.To)))],
            p.Unanswered is { } u ? Unanswered(u) : null,
            p.PauseDays,
            Local(p.PausedUntil, clock),
            ExceptionsJson.TakenOut(p, clock),
            ExceptionsJson.StationsOut(p, clock),
            ExceptionsJson.Fault(p, clock),
            Local(p.GrowInBegins, clock),
            p.InPlace is { } split ? new StartsInPlaceJson(split.Starts, split.ApartMinutes, split.ThatFit, split.NextOwnMinutes) : null);
    }

    private static ZoneJson Zone(ZoneAdvice z) => new(
        z.Station.Station, Number(z.Percent), Number(z.DepletionMm), Number(z.AllowableMm), z.CanWait, z.SetAside,
        z.Name, z.Area, z.Due, Number(z.ShortMm), Number(z.DrainsMm));

    private static ReasonJson Link(Reason reason)
    {
        var data = new SortedDictionary<string, double?>(StringComparer.Ordinal);
        foreach (var (name, value) in reason.Data)
        {
            data[name] = double.IsFinite(value) ? Number(value) : null;
        }

        return new ReasonJson(reason.Code, reason.Words.ToString(), data);
    }

    private static UnansweredJson Unanswered(UnansweredAdvice u) => new(
        CodeWords.Date(u.Sheet),
        AdviceCode.Of(u.Kind),
        Number(u.Percent),
        Alternative(u.IfDone),
        Alternative(u.AsLogged),
        u.PauseDays);

    private static AlternativeJson Alternative(AlternativeAdvice then) => new(AdviceCode.Of(then.Kind), Number(then.Percent));

    private static FitJson Fit(NightFit fit, Site site, SiteClock clock) => new(
        [.. fit.Overlaps.Select(o => new OverlapJson(o.Controller, o.First, o.Second, CodeWords.Date(o.Date), Number(o.Minutes), Number(o.LargestPercent)))],
        [.. fit.Window.Select(w => new WindowJson(w.Controller, w.Program, CodeWords.Date(w.Date), Local(w.Finishes, clock), w.IsGrowIn))],
        [.. fit.Pump.Select(p => new PumpJson(Local(p.From, clock), Local(p.To, clock), Number(p.FlowLPerMin), Number(p.CapacityLPerMin)))],
        [.. fit.Runs.Select(r => new RunJson(r.Program.Controller, r.Program.Program, CodeWords.Date(r.Date), Local(r.Begins, clock), Local(r.Finishes, clock)))],
        [.. fit.Cuts.Select(c => new CutJson(
            c.Program.Controller, c.Program.Program, Number(c.FromPercent), Number(c.ToPercent), Number(c.Short?.DepthMm), Number(c.Short?.Minutes), c.StartThatFits?.ToString("HH:mm", CultureInfo.InvariantCulture)))],
        site.NotTogether.Count == 0 ? null : [.. fit.Clashes.Select(c => new NotTogetherJson(
            c.Group, c.First.ToString(), c.Second.ToString(), CodeWords.Date(c.Date), Local(c.From, clock), Local(c.To, clock)))],
        fit.Moves.Count == 0 ? null : [.. fit.Moves.Select(m => new StartThatFitsJson(m.Program.Controller, m.Program.Program, SiteWords.Clock(m.To), SiteWords.Clock(m.From)))],
        fit.Reaching.Count == 0 ? null : [.. fit.Reaching.Select(r => new ReachingJson(
            r.Program.Controller, r.Program.Program, Local(r.Start.At, clock), Local(r.From, clock), Local(r.To, clock), Number(r.EarlierBy?.TotalMinutes), r.Why.ToString(), [.. r.Stations.Select(s => s.Station)]))],
        fit.NoStartFits.Count + fit.NotLookedFor.Count == 0 ? null :
        [
            .. fit.NoStartFits.Select(k => new NoStartFitsJson(k.Controller, k.Program, LookedFor: true)), .. fit.NotLookedFor.Select(k => new NoStartFitsJson(k.Controller, k.Program, LookedFor: false)),
        ],
        fit.BeyondPump.Count == 0 ? null : [.. fit.BeyondPump.Select(b => new BeyondPumpJson(b.Program.Controller, b.Program.Program, b.Station.Station, Number(b.FlowLPerMin), Number(b.CapacityLPerMin)))]);
}
