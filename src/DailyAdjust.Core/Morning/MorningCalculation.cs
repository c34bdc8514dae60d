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
    public const int Version = 14;

    /// <summary>One morning.</summary>
    /// <param name="inputs">Nothing in them is later than their as-of instant.</param>
    /// <exception cref="ArgumentException">Weather days that do not follow one another.</exception>
    public static MorningSheet Run(MorningInputs inputs)
    {
        var judged = Judge(inputs);
        return SheetOf(inputs, judged.Logged, judged.Settled, judged.DriestMm, judged.IfDone);
    }

    /// <summary>What going to each box would be worth.</summary>
    /// <param name="inputs">Those of the morning's sheet.</param>
    public static VisitsToday Visits(MorningInputs inputs)
    {
        var logged = Reckon(inputs, inputs.Log);
        var (worth, orders) = logged.Advisor.Visits();
        var unanswered = new Unanswered(logged.Context, inputs.Sheets);
        return new VisitsToday(logged.Context.Site, inputs.Date, logged.Trouble?.Why, BoxVisit.InOrder(logged.Context.Site, worth, orders))
        {
            UnansweredRounds = [.. logged.Context.Programs.SelectMany(p => unanswered.LinesOf(p.Key)).Select(l => l.Round).Distinct().OrderBy(r => r.Date).ThenBy(r => r.Issue)],
        };
    }

    /// <summary>What is settled for every program, before the numbers are cut to fit the night.</summary>
    internal static JudgedMorning Judge(MorningInputs inputs)
    {
        var logged = Reckon(inputs, inputs.Log);
        var judged = logged.Advisor.Judge();
        var unanswered = new Unanswered(logged.Context, inputs.Sheets);
        var open = judged.ToDictionary(j => j.Case.Program.Key, j => unanswered.LinesOf(j.Case.Program.Key));
        if (open.Values.All(lines => lines.Count == 0))
        {
            return new JudgedMorning(logged, [.. judged.Select(j => new Settled(j, j.Decision, null))], logged.Context.DepletionMm);
        }

        // Nobody answered an earlier sheet: the same morning is reckoned a second time as if its changes had been made.
        List<OpenLine> asked = [.. open.Values.SelectMany(lines => lines)];
        var done = Reckon(inputs, Unanswered.AsIfDone(logged.Context.Site, inputs.Log, asked), (logged, asked.Min(line => line.Sheet)));
        var settled = judged.Zip(done.Advisor.Judge(), (asLogged, ifDone) => open[asLogged.Case.Program.Key] is { Count: > 0 } lines
            ? Settle(logged.Context, new OpenQuestion(lines, asLogged, ifDone))
            : new Settled(asLogged, asLogged.Decision, null));
        return new JudgedMorning(logged, [.. settled], Drier(logged.Context.DepletionMm, done.Context.DepletionMm)) { IfDone = done.Context };
    }

    private static Settled Settle(AdviceContext context, OpenQuestion question)
    {
        var (rests, decision) = question.Decide(context);
        return new Settled(rests, decision, question);
    }

    /// <summary>The drier of two possibilities, zone by zone: it sends the hose.</summary>
    private static Dictionary<StationKey, double> Drier(IReadOnlyDictionary<StationKey, double> one, IReadOnlyDictionary<StationKey, double> other) =>
        one.ToDictionary(zone => zone.Key, zone => Math.Max(zone.Value, other[zone.Key]));

    /// <summary>What the ground holds by one logbook, and who judges by it; where that one supposes answers to sheets from a date on, what is noted in the logbook as it is goes on to hold.</summary>
    private static Reckoning Reckon(MorningInputs inputs, IReadOnlyList<LogEntry> log, (Reckoning Logged, DateOnly From)? supposed = null)
    {
        var site = SiteVersions.On(inputs.Versions, inputs.Date);
        var layout = supposed?.Logged.Context.Layout ?? SiteLayout.Of(new SitePlan(site));
        var days = new BalanceInputs
        {
            Versions = inputs.Versions,
            Weather = [.. inputs.Weather.TakeWhile(w => w.EtoMm is not null)],
            Log = log,
            Sheets = inputs.Sheets,
            StartState = inputs.StartState,
            Before = inputs.Before,
            ListFrom = inputs.Date.AddDays(-GroundPart.ChartDays),
            TracesFrom = inputs.Date.AddDays(-LookBack.DaysShown),
            Plan = layout.Plan,
        };
        var settings = new SettingHistory(inputs.Versions, log, inputs.Sheets, SettingsFrom(site, inputs.Date, days.StartsFrom));
        days = days with { Settings = settings };
        var balance = supposed is { } s ? Balance.RunFrom(days, s.Logged.Balance, s.From) : Balance.Run(days);
        var trouble = SoundAdvice.Of(inputs, site);
        var context = new AdviceContext(
            site, inputs.Date, inputs.AsOf, settings, log, SoilMorning.DepletionMm(site, balance.End), inputs.RainSinceMidnight,
            day => inputs.ExpectedEtoMm(day, site) ?? 0, [.. inputs.Before, .. inputs.Weather], NightCautionPart.Orders(inputs, site), layout)
        {
            Forecast = inputs.Forecast,
            Drawn = SecondLookPart.Drawn(inputs, site),
            LoggedFaults = supposed?.Logged.Context.Faults,
        };
        var known = new GroundKnowledge(balance.Traces, inputs.Weather);
        var unknownRain = new UnknownRainCheck(context, inputs.Weather, known);
        var assumedSoil = new AssumedSoilCheck(context, known, log);
        var advisor = new ProgramAdvisor(context, RecentRains.Of(inputs), new Doubts(unknownRain.RestsOnIt, assumedSoil.RestsOnIt), trouble?.Why);
        return new Reckoning(days, balance, trouble, context, known, unknownRain, assumedSoil, advisor);
    }

    /// <summary>The sheet tells of the year's settings.</summary>
    private static DateTimeOffset? SettingsFrom(Site site, DateOnly date, DateTimeOffset? balance) =>
        site.Clock.DayStart(new DateOnly(date.Year, 1, 1)) is var year && balance < year ? balance : year;

    private static MorningSheet SheetOf(
        MorningInputs inputs, Reckoning reckoning, IReadOnlyList<Settled> settled, IReadOnlyDictionary<StationKey, double> driestMm, AdviceContext? ifDone)
    {
        var (days, balance, trouble, context, known, unknownRain, assumedSoil, _) = reckoning;
        var (advised, fit) = FittedAdvice.Of(context, settled, days.Log);
        var programs = SharedDial.Mark(context.Site, [.. advised.Select(a => FinishTimes.FillIn(context, a, fit))]);
        var byHand = RunByHandPart.Of(context, days.Log, programs);
        var water = WaterPart.Of(context, inputs, days, balance.Litres);
        var driest = GroundPart.Driest(context, programs, driestMm, ifDone?.DepletionMm, known, new BeforeHose(context, byHand, unknownRain));
        var exceptions = ExceptionsPart.Of(context, ifDone, inputs, days.Log);
        return new MorningSheet
        {
            Site = context.Site,
            Date = inputs.Date,
            AsOf = inputs.AsOf,
            Freshness = FreshnessPart.Of(inputs, context, programs, trouble, unknownRain.Asked(inputs.Date)) with
            {
                AssumedSoil = assumedSoil.Zones,
                PassedOverRounds = Unanswered.PassedOver(context, inputs.Sheets, days.Log),
            },
            Programs = programs,
            Overnight = OvernightPart.Of(inputs, context.Site),
            DueRuns = [.. OvernightPart.DueRuns(context, days.Log).Where(r => !exceptions.Shut.Any(box => box.Starts.Any(s => s.Program == r.Program && s.At == r.Start)))],
            Driest = driest,
            Wettest = GroundPart.Wettest(context, balance.Days, driest),
            StandingOrders = StandingOrdersPart.Of(context, days.Log),
            Exceptions = exceptions,
            RunByHand = byHand,
            BoxesToVerify = BoxCheckPart.ToVerify(context, days.Log),
            SettingsNotUsed = ImpossibleSettings.Open(inputs.Versions, days.Log, context.Settings),
            ClockChange = BoxCheckPart.Clocks(context, days.Log),
            Fit = fit,
            Areas = GroundPart.Areas(context, balance.Days),
            Outlook = OutlookPart.Of(context, days, trouble is null),
            IfVisited = reckoning.Advisor.IfVisited(),
            Water = water,
            Season = ProgramSeason.Of(context, programs.Select(p => p.Key), water.SeasonFrom),
            Ground = FoundInGround.Of(context, balance.Days, known, inputs.Log, inputs.Sheets, inputs.Versions),
            Pointers = GroundPart.Pointers(programs),
            Corrections = inputs.Corrections,
            Forecast = ForecastPart.Of(inputs, context.Site),
            SecondLook = SecondLookPart.Of(inputs, context),
        };
    }

    /// <summary>What one logbook gives.</summary>
    internal sealed record Reckoning(
        BalanceInputs Days, BalanceResult Balance, Trouble? Trouble, AdviceContext Context, GroundKnowledge Known, UnknownRainCheck UnknownRain, AssumedSoilCheck AssumedSoil, ProgramAdvisor Advisor);

    /// <summary>A morning judged.</summary>
    /// <param name="Logged">By the logbook as it is.</param>
    /// <param name="Settled">Every program, in walking order.</param>
    /// <param name="DriestMm">The drier of two possibilities, zone by zone.</param>
    internal sealed record JudgedMorning(Reckoning Logged, IReadOnlyList<Settled> Settled, IReadOnlyDictionary<StationKey, double> DriestMm)
    {
        /// <summary>The morning as if unanswered rounds had been done; null = everything is answered.</summary>
        public AdviceContext? IfDone { get; init; }
    }
}
