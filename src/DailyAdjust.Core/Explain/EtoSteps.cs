using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Explain;

/// <summary>How a day's reference ET came about.</summary>
public static class EtoSteps
{
    /// <summary>From the readings to the day's reference ET.</summary>
    /// <param name="inputs">Of that day alone, with the 45 days before it.</param>
    /// <param name="day">The day as the balance has it.</param>
    public static IReadOnlyList<Section> Of(WeatherDayInputs inputs, WeatherDay day)
    {
        var (station, eto) = WeatherDays.OriginOf(inputs) ?? default;
        var steps = new List<Step>();
        steps.AddRange(day.Estimated.Select(e => Step.Said("estimated: " + e)));
        var result = Step.Given("reference ET of the day", "ETo", day.EtoMm, "mm", Basis(day));
        if (eto is { Hours.Count: > 0 } hourly)
        {
            var site = SiteVersions.On(inputs.Versions, inputs.From);
            List<Section> sections = [new Section("Readings", steps)];
            var largest = hourly.Hours.MaxBy(h => ReferenceEtHourly.EtoMm(h.Air)).Begin;
            sections.AddRange(hourly.Hours.Select(h => new Section(
                string.Create(CultureInfo.InvariantCulture, $"Hour from {site.Clock.ToLocal(h.Begin):HH:mm}"), HourSteps.Of(site, station!.Window.Source, h, hourly.Humidity))
            {
                Brief = ["T", "Rs", "u2", "ea", "Rn", "ETh"],
                IsExample = h.Begin == largest,
            }));
            sections.Add(new Section("Reference ET of the day", [SumOf(hourly)]));
            return sections;
        }

        if (eto?.Day is { } air)
        {
            steps.AddRange(DailySteps.Of(air, SiteVersions.On(inputs.Versions, inputs.From).LatitudeDeg, day.Date.DayOfYear));
            return [new Section("Reference ET", steps)];
        }

        if (eto is { Basis: EtoBasis.TemperatureOnly } && station is not null)
        {
            steps.AddRange(SunSteps.OfDay(station.Window.Site.LatitudeDeg, day.Date.DayOfYear));
            double highest = station.Inputs.AirTemperatureMaxC, lowest = station.Inputs.AirTemperatureMinC;
            steps.Add(Step.Of(
                "reference ET from temperatures alone", "ETo", "max(0, 0.0023 * (({Tmax} + {Tmin}) / 2 + 17.8) * sqrt({Tmax} - {Tmin}) * 0.408 * {Ra})", eto.Mm, "mm", "[FAO56] eq. 52, p. 64",
                new("Tmax", highest), new("Tmin", lowest), new("Ra", steps[^1].Value!.Value)));
            return [new Section("Reference ET", steps)];
        }

        return [new Section("Reference ET", [.. steps, result])];
    }

    private static Step SumOf(KnownEto eto)
    {
        Term[] hours = [.. eto.Hours.Select((h, i) => new Term(string.Create(CultureInfo.InvariantCulture, $"h{i + 1:00}"), ReferenceEtHourly.EtoMm(h.Air)))];
        return Step.Of("reference ET: the sum of the hours, never below 0", "ETo", $"max(0, {string.Join(" + ", hours.Select(h => "{" + h.Symbol + "}"))})", eto.Mm, "mm", "[ASCE05] eq. 1", hours);
    }

    private static string Basis(WeatherDay day) => day.Basis switch
    {
        EtoBasis.Supplied => "the station's own column",
        EtoBasis.Expected => "expected: no station knew enough",
        _ => "as stored",
    };
}
