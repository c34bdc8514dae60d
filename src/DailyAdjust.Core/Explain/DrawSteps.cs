using System.Globalization;
using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Explain;

/// <summary>How much of a day's demand the draw curve has by an instant.</summary>
internal sealed class DrawSteps(SiteClock clock, DateOnly date, DrawCurve curve)
{
    private readonly DateTimeOffset _begin = clock.DayStart(date);
    private bool _sunIsGiven;

    private Term Rise => new("rise", (curve.Sunrise - _begin).TotalHours);

    private Term Set => new("set", (curve.Sunset - _begin).TotalHours);

    /// <summary>The share at an instant after sunrise; sunrise and sunset before the first that needs them.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="symbol">As the equations that take it write it.</param>
    /// <param name="share">Above 0 to 1.</param>
    /// <param name="at">UTC.</param>
    public IEnumerable<Step> Share(string name, string symbol, double share, DateTimeOffset at)
    {
        if (share >= 1)
        {
            yield return Step.Given(name + ": the sun is down", symbol, 1, "", "common practice");
            yield break;
        }

        if (!_sunIsGiven)
        {
            const string source = "[FAO56] eqs 24, 25, 31-33";
            yield return Step.Given($"sunrise, {Clock(curve.Sunrise)}", "rise", Rise.Value, "h since 00:00", source);
            yield return Step.Given($"sunset, {Clock(curve.Sunset)}", "set", Set.Value, "h since 00:00", source);
            _sunIsGiven = true;
        }

        yield return Step.Of(
            name, symbol, "(1 - cos(pi * ({t} - {rise}) / ({set} - {rise}))) / 2", share, "", "common practice", new("t", (at - _begin).TotalHours), Rise, Set);
    }

    private string Clock(DateTimeOffset sun) => clock.ToLocal(sun).ToString("HH:mm:ss", CultureInfo.InvariantCulture);
}
