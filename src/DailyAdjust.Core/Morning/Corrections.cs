using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Morning;

/// <summary>What is known now of days that an earlier sheet rested on, and was not known, or otherwise, when it was issued.</summary>
/// <param name="Sheet">The earlier sheet's date.</param>
/// <param name="Issue">Its issue.</param>
/// <param name="Weather">Values that differ, in order of date.</param>
/// <param name="Advice">Lines that would read otherwise with what is known now; the sheet stays as it was issued.</param>
public sealed record Corrections(DateOnly Sheet, int Issue, IReadOnlyList<WeatherCorrection> Weather, IReadOnlyList<AdviceCorrection> Advice)
{
    /// <summary>Smaller differences are not told, mm: half of what an hundredth of an inch is.</summary>
    private const double LeastMm = 0.127;

    /// <summary>The values of the same days that differ.</summary>
    /// <param name="was">Days as they were known then.</param>
    /// <param name="now">Days as they are known now.</param>
    public static IReadOnlyList<WeatherCorrection> Between(IReadOnlyList<WeatherDay> was, IReadOnlyList<WeatherDay> now)
    {
        var known = now.ToDictionary(day => day.Date);
        var found = new List<WeatherCorrection>();
        foreach (var before in was)
        {
            if (!known.TryGetValue(before.Date, out var after))
            {
                continue;
            }

            if (Differs(before.EtoMm, after.EtoMm))
            {
                found.Add(new(before.Date, "", before.EtoMm, after.EtoMm));
            }

            found.AddRange(after.Rain
                .Select(gauge => (Gauge: gauge.Gauge, Was: before.Rain.FirstOrDefault(r => string.Equals(r.Gauge, gauge.Gauge, StringComparison.Ordinal))?.RainMm, Is: gauge.RainMm))
                .Where(rain => Differs(rain.Was, rain.Is))
                .Select(rain => new WeatherCorrection(before.Date, rain.Gauge, rain.Was, rain.Is)));
        }

        return found;
    }

    /// <summary>The lines of a sheet that would read otherwise.</summary>
    /// <param name="was">As issued.</param>
    /// <param name="would">The same morning computed with what is known now.</param>
    public static IReadOnlyList<AdviceCorrection> Between(IReadOnlyList<IssuedLine> was, IReadOnlyList<ProgramAdvice> would)
    {
        var now = would.ToDictionary(advice => advice.Key);
        return
        [
            .. was.Where(line => now.TryGetValue(line.Program, out var advice) && (advice.Advice != line.Advice || advice.Percent != line.Percent))
                .Select(line => new AdviceCorrection(line.Program, line.Advice, line.Percent, now[line.Program].Advice, now[line.Program].Percent)),
        ];
    }

    private static bool Differs(double? was, double? now) => was.HasValue != now.HasValue || Math.Abs((was ?? 0) - (now ?? 0)) >= LeastMm;
}

/// <summary>One value of a day that is known otherwise now.</summary>
/// <param name="Date">The day.</param>
/// <param name="Gauge">Whose rain; empty = reference ET.</param>
/// <param name="WasMm">As it was known, mm; null = it was not.</param>
/// <param name="IsMm">As it is known, mm; null = it is not any more.</param>
public sealed record WeatherCorrection(DateOnly Date, string Gauge, double? WasMm, double? IsMm);

/// <summary>One line of an earlier sheet that would read otherwise now.</summary>
public sealed record AdviceCorrection(ProgramKey Program, AdviceKind Was, double? WasPercent, AdviceKind Would, double? WouldPercent);
