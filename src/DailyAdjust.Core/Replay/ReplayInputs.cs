using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Replay;

/// <summary>What a replay is a function of.</summary>
public sealed record ReplayInputs
{
    /// <summary>The description that all days run under.</summary>
    public required Site Site { get; init; }

    /// <summary>Consecutive days; those before <see cref="From"/> are only looked back at, those after <see cref="To"/> only looked ahead at where rain is known ahead.</summary>
    public required IReadOnlyList<WeatherDay> Weather { get; init; }

    /// <summary>The first day; the soil is then as <see cref="Site.StartSoil"/> says.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The last day, included.</summary>
    public required DateOnly To { get; init; }

    /// <summary>Visit days of every program; null = as the site sets them.</summary>
    public VisitDays? Visits { get; init; } = VisitDays.Daily;

    /// <summary>Every morning's forecast is the rain that fell later, at a chance of 100 %: what the site's forecast_rain makes of a forecast that is never wrong.</summary>
    public bool RainKnownAhead { get; init; }
}
