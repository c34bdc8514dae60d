using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>Reference ET of a day as one station knows it.</summary>
/// <param name="Mm">0 or more.</param>
/// <param name="Basis">How it is known.</param>
/// <param name="Estimated">Inputs that were estimated or interpolated, ordinal order.</param>
internal sealed record KnownEto(double Mm, EtoBasis Basis, IReadOnlyList<string> Estimated)
{
    /// <summary>What went into the daily equation; null = another way was taken.</summary>
    public DailyAir? Day { get; init; }

    /// <summary>The quantity that vapour pressure came from; null = the lowest temperature stood in for the dew point, or none was needed.</summary>
    public WeatherQuantity? Humidity { get; init; }

    /// <summary>What went into the hourly equation; empty = another way was taken.</summary>
    public IReadOnlyList<HourOfDay> Hours { get; init; } = [];
}

/// <summary>
/// One station's way to a day's reference ET: its own column if the site says so, the hourly equation, the daily equation;
/// with estimates in the order of [FAO56] ch. 3, p. 58-64.
/// </summary>
internal sealed class StationEto
{
    /// <summary>Where wind is unknown. Source: [FAO56] p. 63.</summary>
    public const double UnknownWindMPerS = 2;

    private readonly StationWindow _window;
    private DaySaturation? _saturation;

    public StationEto(StationWindow window)
    {
        _window = window;
        Inputs = window.Source.IsDaily ? DayInputs.OfDaily(window) : DayInputs.OfIntervals(window);
    }

    public StationWindow Window => _window;

    public DayInputs Inputs { get; }

    private DaySaturation Saturation => _saturation ??= DaySaturation.Of(Inputs.AirTemperatureMaxC, Inputs.AirTemperatureMinC);

    private double Ra => Sun.ExtraterrestrialRadiationMJPerM2Day(_window.Site.LatitudeDeg, _window.Day.Date.DayOfYear);

    /// <summary>From inputs that the station measured, all of them; null = something is missing.</summary>
    public KnownEto? Complete()
    {
        if (_window.Source.UseSuppliedEto && Inputs.ReferenceEtMm.IsKnown)
        {
            return new(Math.Max(0, Inputs.ReferenceEtMm.Value), EtoBasis.Supplied, Notes([], WeatherQuantity.ReferenceEt));
        }

        if (!_window.Source.IsDaily && HourlySum.Of(_window) is { } hourly)
        {
            return new(Math.Max(0, hourly.Mm), EtoBasis.Hourly, Notes([], InputsWith(hourly.Humidity))) { Hours = hourly.Reckoned, Humidity = hourly.Humidity };
        }

        return Inputs.KnowsTemperature && VapourPressure() is { } air && !double.IsNaN(Inputs.WindSpeedMPerS) && Inputs.SolarRadiationMJPerM2.IsKnown
            ? Daily(DayAir(air.KPa, Wind(), Inputs.SolarRadiationMJPerM2.Value), EtoBasis.Daily, Notes([], InputsWith(air.From)))
            : null;
    }

    /// <summary>What is measured of a running day, hour by hour from 00:00 until the first hour that is not known; null = not even that one, or the station reports once a day.</summary>
    public EtoSoFar? SoFar()
    {
        if (_window.Source.IsDaily)
        {
            return null;
        }

        var known = _window.Source.UseSuppliedEto ? HourlySum.OfSupplied(_window) : HourlySum.SoFar(_window);
        return known.Hours == 0
            ? null
            : new(Math.Round(Math.Max(0, known.Mm), 6, MidpointRounding.AwayFromZero), known.Through, _window.Source.Id, _window.Source.UseSuppliedEto);
    }

    /// <summary>With what is missing estimated; null = not even the temperatures are known.</summary>
    public KnownEto? WithEstimates()
    {
        if (!Inputs.KnowsTemperature)
        {
            return null;
        }

        var air = VapourPressure();
        var windKnown = !double.IsNaN(Inputs.WindSpeedMPerS);
        var solar = Inputs.SolarRadiationMJPerM2;
        var sunshine = Inputs.SunshineH;
        if (air is null && !windKnown && !solar.IsKnown && !sunshine.IsKnown)
        {
            var mm = HargreavesSamani.EtoMm(Inputs.AirTemperatureMaxC, Inputs.AirTemperatureMinC, Ra);
            return new(mm, EtoBasis.TemperatureOnly, Notes(["reference_et: from temperatures alone (Hargreaves-Samani)"], WeatherQuantity.AirTemperature));
        }

        List<string> notes = [];
        List<WeatherQuantity> used = [WeatherQuantity.AirTemperature];
        double solarMJPerM2;
        if (solar.IsKnown)
        {
            solarMJPerM2 = solar.Value;
            used.Add(WeatherQuantity.SolarRadiation);
        }
        else if (sunshine.IsKnown)
        {
            solarMJPerM2 = Radiation.SolarFromSunshineMJPerM2(
                Math.Min(24, sunshine.Value), Sun.DaylightHours(_window.Site.LatitudeDeg, _window.Day.Date.DayOfYear), Ra);
            notes.Add("solar_radiation: from sunshine");
            used.Add(WeatherQuantity.Sunshine);
        }
        else
        {
            var coefficient = _window.Source.Coastal ? Radiation.CoastalCoefficient : Radiation.InteriorCoefficient;
            solarMJPerM2 = Radiation.SolarFromTemperatureRangeMJPerM2Day(
                Inputs.AirTemperatureMaxC, Inputs.AirTemperatureMinC, coefficient, Ra, _window.Site.ElevationM);
            notes.Add("solar_radiation: from the range of temperature");
        }

        if (air is null)
        {
            notes.Add("relative_humidity: dew point taken as the lowest temperature");
        }
        else
        {
            used.Add(air.Value.From);
        }

        if (windKnown)
        {
            used.Add(WeatherQuantity.WindSpeed);
        }
        else
        {
            notes.Add(string.Create(CultureInfo.InvariantCulture, $"wind_speed: taken as {UnknownWindMPerS} m/s"));
        }

        var vapour = air?.KPa ?? Atmosphere.VapourPressureFromDewPointKPa(Inputs.AirTemperatureMinC);
        return Daily(DayAir(vapour, windKnown ? Wind() : UnknownWindMPerS, solarMJPerM2), EtoBasis.PartEstimated, Notes(notes, [.. used]));
    }

    private static WeatherQuantity[] InputsWith(WeatherQuantity humidity) =>
        [WeatherQuantity.AirTemperature, humidity, WeatherQuantity.SolarRadiation, WeatherQuantity.WindSpeed];

    private double Wind() => Atmosphere.WindSpeed2mMPerS(Inputs.WindSpeedMPerS, _window.Source.WindHeightM);

    private static KnownEto Daily(DailyAir day, EtoBasis basis, IReadOnlyList<string> notes) => new(ReferenceEtDaily.EtoMm(day), basis, notes) { Day = day };

    private DailyAir DayAir(double vapourPressureKPa, double wind2mMPerS, double solarMJPerM2) => new()
    {
        AirTemperatureMaxC = Inputs.AirTemperatureMaxC,
        AirTemperatureMinC = Inputs.AirTemperatureMinC,
        VapourPressureKPa = vapourPressureKPa,
        WindSpeed2mMPerS = wind2mMPerS,
        SolarRadiationMJPerM2Day = solarMJPerM2,
        ExtraterrestrialRadiationMJPerM2Day = Ra,
        ElevationM = _window.Site.ElevationM,
        Saturation = Saturation,
    };

    /// <summary>The first that is known of: extremes of humidity, dew point, mean humidity. Source: [FAO56] ch. 3, p. 37-39.</summary>
    private (double KPa, WeatherQuantity From)? VapourPressure()
    {
        var (max, min) = (Inputs.AirTemperatureMaxC, Inputs.AirTemperatureMinC);
        if (!double.IsNaN(Inputs.RelativeHumidityMaxPercent) && !double.IsNaN(Inputs.RelativeHumidityMinPercent))
        {
            return (Saturation.VapourPressureKPa(Inputs.RelativeHumidityMaxPercent, Inputs.RelativeHumidityMinPercent), WeatherQuantity.RelativeHumidity);
        }

        if (!double.IsNaN(Inputs.DewPointC))
        {
            return (Atmosphere.VapourPressureFromDewPointKPa(Inputs.DewPointC), WeatherQuantity.DewPoint);
        }

        return double.IsNaN(Inputs.RelativeHumidityMeanPercent)
            ? null
            : (Atmosphere.VapourPressureFromMeanHumidityKPa(max, min, Inputs.RelativeHumidityMeanPercent), WeatherQuantity.RelativeHumidity);
    }

    private List<string> Notes(List<string> notes, params IReadOnlyList<WeatherQuantity> used)
    {
        foreach (var quantity in used)
        {
            var interpolated = _window.Source.IsDaily ? TimeSpan.Zero : _window.Interpolated(quantity);
            if (interpolated > TimeSpan.Zero)
            {
                notes.Add($"{QuantityName.Of(quantity)}: {Text(interpolated)} interpolated");
            }

            var missing = quantity switch
            {
                WeatherQuantity.SolarRadiation => Inputs.SolarRadiationMJPerM2.Missing,
                WeatherQuantity.Sunshine => Inputs.SunshineH.Missing,
                WeatherQuantity.ReferenceEt => Inputs.ReferenceEtMm.Missing,
                _ => TimeSpan.Zero,
            };
            if (missing > TimeSpan.Zero)
            {
                notes.Add($"{QuantityName.Of(quantity)}: {Text(missing)} of daylight missing, made up for");
            }
        }

        if (_window.WetHumidities > 0 && used.Contains(WeatherQuantity.RelativeHumidity))
        {
            notes.Add(string.Create(CultureInfo.InvariantCulture, $"relative_humidity: above 100 % counted as 100 % ({_window.WetHumidities} readings)"));
        }

        notes.Sort(StringComparer.Ordinal);
        return notes;
    }

    private static string Text(TimeSpan time)
    {
        var minutes = (long)Math.Round(time.TotalMinutes, MidpointRounding.AwayFromZero);
        return minutes % 60 == 0
            ? string.Create(CultureInfo.InvariantCulture, $"{minutes / 60} h")
            : string.Create(CultureInfo.InvariantCulture, $"{minutes} min");
    }
}
