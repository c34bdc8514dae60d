using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Explain;

/// <summary>From a start and its setting to the net depth in the root zone.</summary>
internal static class WateringSteps
{
    /// <summary>What one start brings a zone.</summary>
    /// <param name="day">The day.</param>
    /// <param name="start">Of a program that waters the zone.</param>
    /// <param name="zone">The zone.</param>
    /// <param name="symbol">Of the net depth, as the equations that take it in write it.</param>
    /// <param name="at">The start in words.</param>
    public static IEnumerable<Step> Of(DayOfSite day, DayStart start, ZonePlan zone, string symbol, string at)
    {
        if (start.Setting.IsOff)
        {
            yield return Step.Said(at + ": off");
            yield break;
        }

        var baseMinutes = zone.Station.BaseMinutes[start.Program.Key.Program];
        var ran = new Term("ran", day.MinutesRun(start, zone, baseMinutes));
        if (start.GrowIn is not null)
        {
            yield return Step.Given(at + ": minutes of the grow-in", "ran", ran.Value, "min", "logbook (grow-in, ran)");
        }
        else
        {
            var due = new Term("due", RunMinutes.At(start.Program.Controller, baseMinutes, start.Setting.Percent));
            yield return Minutes(at + ": minutes of the station", due, start.Program.Controller, baseMinutes, new("setting", start.Setting.Percent));
            yield return due.Value > 0
                ? Step.Of("minutes that ran", "ran", "{due} * {percent} / 100", ran.Value, "min", "logbook (ran) or rain switch; 100 where nothing says otherwise", due, new("percent", 100 * ran.Value / due.Value))
                : Step.Given("minutes that ran", "ran", ran.Value, "min", "");
        }

        yield return Net(zone, ran, symbol, "net depth");
    }

    /// <summary>Minutes of a station at a percentage, to the controller's step.</summary>
    public static Step Minutes(string name, Term minutes, Controller controller, double baseMinutes, Term percent)
    {
        var round = controller.Rounding switch { MinutesRounding.Down => "floor", MinutesRounding.Up => "ceil", _ => "round" };
        return Step.Of(
            name, minutes.Symbol, $"{round}({{base}} * {{{percent.Symbol}}} / 100 / {{step}}) * {{step}}", minutes.Value, "min", "controller; round = nearest, halves up",
            new("base", baseMinutes), percent, new("step", controller.MinutesStep));
    }

    /// <summary>Application efficiency: given, or from distribution uniformity.</summary>
    public static IEnumerable<Step> Efficiency(Station station)
    {
        var (own, ofArea) = (station.DistributionUniformity, station.Area.DistributionUniformity);
        if ((own ?? ofArea) is not { } uniformity)
        {
            yield return Step.Given("application efficiency", "eff", station.Efficiency, "", "site description, area");
            yield break;
        }

        Term du = new("DU", uniformity);
        yield return Step.Given("lower-quarter distribution uniformity", "DU", du.Value, "", own is null ? "site description, area" : "site description, this station");
        yield return Step.Of("application efficiency", "eff", "0.4 + 0.6 * {DU}", station.Efficiency, "", "landscape irrigation handbooks, from memory", du);
    }

    /// <summary>Net depth of minutes that run.</summary>
    public static Step Net(ZonePlan zone, Term minutes, string symbol, string name)
    {
        var (station, net, m) = (zone.Station, zone.Net.DepthMm(minutes.Value), "{" + minutes.Symbol + "}");
        Term rate = new("rate", station.Rate.MmPerHour), efficiency = new("eff", station.Efficiency);
        if (zone.Net.RunoffMm(minutes.Value) <= 0 || station.Area.Soil.IntakeRate is not { } intake)
        {
            return Step.Of(name, symbol, m + " / 60 * {rate} * {eff}", net, "mm", "common practice", minutes, rate, efficiency);
        }

        Term longest = new("cycle", NetIrrigation.LongestCycleMinutes(rate.Value, intake.MmPerHour, station.Area.Soil.SurfaceStorage.Mm));
        return Step.Of(
            name + "; beyond the longest cycle only what the ground takes in", symbol, $"({{cycle}} * {{rate}} + ({m} - {{cycle}}) * {{intake}}) / 60 * {{eff}}", net, "mm", "common practice",
            minutes, rate, efficiency, longest, new("intake", intake.MmPerHour));
    }
}
