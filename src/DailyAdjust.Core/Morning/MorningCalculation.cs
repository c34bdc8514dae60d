using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>
/// The product as one pure function: weather, logbook and site in, the morning's sheet out. The same inputs give the same sheet on
/// any machine.
/// </summary>
public static class MorningCalculation
{
    /// <summary>Raised when the same inputs would give another result; part of every sheet's record.</summary>
    public const int Version = 2;

    /// <summary>One morning.</summary>
    /// <param name="inputs">Nothing in them is later than their as-of instant.</param>
    /// <exception cref="ArgumentException">Weather days that do not follow one another.</exception>
    public static MorningSheet Run(MorningInputs inputs)
    {
        var asLogged = Reckon(inputs, inputs.Log);
        var sheet = SheetOf(inputs, asLogged);
        if (!sheet.Programs.Any(p => p.Unanswered is not null))
        {
            return sheet;
        }

        // Nobody answered an earlier sheet: the same morning had its changes been made shows the other possibility.
        var ifDone = Reckon(inputs, Unanswered.AsIfDone(sheet.Site, inputs.Log, inputs.Sheets, asLogged.Context.Settings, inputs.Date)).Advised;
        return sheet with
        {
            Programs = [.. sheet.Programs.Zip(ifDone, (program, done) => program.Unanswered is { } unanswered
                ? program with { Unanswered = unanswered with { IfDone = new AlternativeAdvice(done.Advice, done.Percent) } }
                : program)],
        };
    }

    /// <summary>What the ground holds and what to do, by one logbook.</summary>
    private static Reckoning Reckon(MorningInputs inputs, IReadOnlyList<LogEntry> log)
    {
        var site = SiteVersions.On(inputs.Versions, inputs.Date);
        var days = new BalanceInputs
        {
            Versions = inputs.Versions,
            Weather = [.. inputs.Weather.TakeWhile(w => w.EtoMm is not null)],
            Log = log,
            Sheets = inputs.Sheets,
            StartState = inputs.StartState,
        };
        var balance = Balance.Run(days);
        var trouble = SoundAdvice.Of(inputs, site);
        var context = new AdviceContext(
            site, inputs.Date, inputs.AsOf, new SettingHistory(inputs.Versions, log, inputs.Sheets), log, SoilMorning.DepletionMm(site, balance.End), inputs.RainSinceMidnight,
            day => inputs.ExpectedEtoMm(day, site) ?? 0)
        {
            Forecast = inputs.Forecast,
        };
        var unknownRain = new UnknownRainCheck(context, inputs.Weather, balance.Days);
        var advisor = new ProgramAdvisor(context, inputs.Sheets, RecentRains.Of(inputs), unknownRain.RestsOnIt, trouble?.Why);
        return new Reckoning(days, balance, trouble, context, unknownRain, advisor.All());
    }

    private static MorningSheet SheetOf(MorningInputs inputs, Reckoning reckoning)
    {
        var (days, balance, trouble, context, unknownRain, advised) = reckoning;
        var fit = NightFitCalculation.Of(context, advised, days.Log);
        var programs = advised.Select(a => FinishTimes.FillIn(context, a, fit)).ToList();
        return new MorningSheet
        {
            Site = context.Site,
            Date = inputs.Date,
            AsOf = inputs.AsOf,
            Freshness = FreshnessPart.Of(inputs, context, programs, trouble, unknownRain.Asked(inputs.Date)),
            Programs = programs,
            Overnight = OvernightPart.Of(inputs, context.Site),
            DueRuns = OvernightPart.DueRuns(context, days.Log),
            Driest = GroundPart.Driest(context, programs),
            Wettest = GroundPart.Wettest(context, balance.Days),
            StandingOrders = StandingOrdersPart.Of(context, days.Log),
            Fit = fit,
            Areas = GroundPart.Areas(context, balance.Days),
            Outlook = OutlookPart.Of(context, days, trouble is null),
            Water = WaterPart.Of(context, balance.Days, days.Log),
            Pointers = GroundPart.Pointers(programs),
            Corrections = inputs.Corrections,
            Forecast = ForecastPart.Of(inputs, context.Site),
        };
    }

    private sealed record Reckoning(
        BalanceInputs Days, BalanceResult Balance, Trouble? Trouble, AdviceContext Context, UnknownRainCheck UnknownRain, IReadOnlyList<ProgramAdvice> Advised);
}
