using System.Globalization;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Explain;

/// <summary>What reference ET a morning expects of the days to come, and from what.</summary>
internal static class ExpectedEtoSteps
{
    public static Section Of(MorningInputs inputs, AdviceContext context, DateOnly last)
    {
        var site = context.Site;
        List<Step> steps = [];
        for (var day = inputs.Date; day <= last; day = day.AddDays(1))
        {
            if (inputs.ExpectedEtoMm(day, site) is not { } eto)
            {
                continue;
            }

            if (inputs.Forecast.LastOrDefault(f => f.Date == day) is { AirTemperatureMaxC: { } highest, AirTemperatureMinC: { } lowest })
            {
                steps.AddRange(Forecast(inputs, site, day, highest, lowest, eto));
            }
            else
            {
                steps.AddRange(Recent(inputs, site, day, eto, steps.Exists(s => s.Symbol is "mean")));
            }

            if (day == inputs.Date && context.Drawn is { } today && inputs.EtoSoFar is { } soFar)
            {
                steps.AddRange(LaterLook(context, today, soFar));
            }
        }

        return new Section("Reference ET expected of the days to come", steps);
    }

    /// <summary>What was measured takes the place of what was expected until then.</summary>
    private static IEnumerable<Step> LaterLook(AdviceContext context, DrawnToday today, EtoSoFar soFar)
    {
        var (clock, date) = (context.Site.Clock, context.Date);
        var until = clock.ToLocal(soFar.Through).ToString("HH:mm", CultureInfo.InvariantCulture);
        Term measured = new("measured", today.SoFarMm), whole = new("whole", today.WholeDayMm), then = new("then", today.ShareThen), ahead = new("ahead", today.RestMm);
        yield return Step.Of("a later look of the day: expected of the whole day", "whole", "{ETo}", whole.Value, "mm", "as above", new Term("ETo", whole.Value));
        yield return Step.Given(
            $"measured from 00:00 to {until}", "measured", measured.Value, "mm", $"hours of station {soFar.Station}" + (soFar.IsSupplied ? ", its own column" : ", [ASCE05] eq. 1"));
        foreach (var step in new DrawSteps(clock, date, context.Day(date).Curve).Share($"share of the day that the draw curve has by {until}", "then", then.Value, soFar.Through))
        {
            yield return step;
        }

        yield return Step.Of("still expected of the rest of the day", "ahead", "{whole} * (1 - {then})", ahead.Value, "mm", "draw curve", whole, then);
        yield return Step.Of(
            $"reference ET of {Words.Date(date)}, measured and still expected", "ETo", "{measured} + {ahead}", today.TotalMm, "mm", "", measured, ahead);
    }

    private static IEnumerable<Step> Forecast(MorningInputs inputs, Site site, DateOnly day, double highest, double lowest, double eto)
    {
        Term max = new("Tmax", highest), min = new("Tmin", lowest);
        Term ra = new("Ra", Sun.ExtraterrestrialRadiationMJPerM2Day(site.LatitudeDeg, day.DayOfYear));
        Term plain = new("plain", HargreavesSamani.EtoMm(highest, lowest, ra.Value));
        var sums = ForecastEto.Sums(inputs.Date, inputs.Weather, site.LatitudeDeg);
        Term scale = new("scale", sums.PlainMm > 0 ? sums.MeasuredMm / sums.PlainMm : 1);
        yield return Step.Given(Words.Date(day) + ": highest temperature", "Tmax", highest, "°C", "forecast");
        yield return Step.Given("lowest temperature", "Tmin", lowest, "°C", "forecast");
        foreach (var step in SunSteps.OfDay(site.LatitudeDeg, day.DayOfYear))
        {
            yield return step;
        }

        yield return Step.Of(
            "reference ET from temperatures alone", "plain", "max(0, 0.0023 * (({Tmax} + {Tmin}) / 2 + 17.8) * sqrt({Tmax} - {Tmin}) * 0.408 * {Ra})", plain.Value, "mm", "[FAO56] eq. 52",
            max, min, ra);
        yield return sums.PlainMm > 0
            ? Step.Of(
                "what the last 30 days' reference ET was of the same equation's", "scale", "{known} / {sum}", scale.Value, "", "[FAO56] ch. 3: the equation is to be calibrated at the place",
                new("known", sums.MeasuredMm), new("sum", sums.PlainMm))
            : Step.Given("no day of the last 30 tells how to scale it", "scale", 1, "", "");
        yield return Step.Of("reference ET expected of " + Words.Date(day), "ETo", "round({plain} * {scale} * 1000000) / 1000000", eto, "mm", "", plain, scale);
    }

    private static IEnumerable<Step> Recent(MorningInputs inputs, Site site, DateOnly day, double eto, bool meanIsShown)
    {
        var known = ExpectedEto.LastKnown(inputs.Date, inputs.Weather);
        var normal = ExpectedEto.Normal(day, site.Weather.Normals);
        var name = "reference ET expected of " + Words.Date(day);
        if (known.Count == 0)
        {
            yield return Step.Given(name + ": no day is known, the month's normal", "ETo", eto, "mm", "site description");
            yield break;
        }

        Term[] days = [.. known.Select((mm, i) => new Term(FormattableString.Invariant($"e{i + 1}"), mm))];
        Term mean = new("mean", known.Average());
        if (!meanIsShown)
        {
            yield return Step.Of(
                FormattableString.Invariant($"mean reference ET of the last {known.Count} known days, newest first"), "mean", $"({string.Join(" + ", days.Select(d => "{" + d.Symbol + "}"))}) / {known.Count}",
                mean.Value, "mm", "common practice", days);
        }

        yield return normal is { } usual && day > inputs.Date
            ? Step.Of(name + ": the month's normal where that is larger", "ETo", "max({mean}, {normal})", eto, "mm", "", mean, new("normal", usual))
            : Step.Of(name, "ETo", "{mean}", eto, "mm", "", mean);
    }
}
