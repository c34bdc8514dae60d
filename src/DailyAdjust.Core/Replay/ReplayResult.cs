using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Replay;

/// <summary>Ways to water, in the order in which they are reported.</summary>
public enum ReplayPolicy
{
    /// <summary>What our sheets say, carried out on visit days.</summary>
    Advice,

    /// <summary>Every program at 100 %, whatever the weather.</summary>
    Fixed,

    /// <summary>Every station gets at every start the least that keeps it within its allowable depletion, all weather to come known.</summary>
    Perfect,

    /// <summary>Every visit sets what fills the ground to field capacity: our sheets with nothing left empty, and every change made.</summary>
    Refill,
}

/// <summary>What came of the same days, watered in several ways.</summary>
public sealed record ReplayResult(DateOnly From, DateOnly To, IReadOnlyList<PolicyResult> Policies)
{
    public PolicyResult Of(ReplayPolicy policy) => Policies.First(p => p.Policy == policy);
}

/// <summary>One way to water.</summary>
/// <param name="Policy">Which.</param>
/// <param name="Figures">Of the stations, weighted by ground watered (by station if any station lacks it).</param>
/// <param name="Visits">Walks to a controller on which something was changed.</param>
/// <param name="Changes">Programs that were changed, switched off or on again, one by one.</param>
/// <param name="Stations">In the order of stations.csv.</param>
/// <param name="Areas">In the order of site.yaml; those that have stations.</param>
/// <param name="Programs">By controller, in its order.</param>
public sealed record PolicyResult(
    ReplayPolicy Policy,
    ReplayFigures Figures,
    int Visits,
    int Changes,
    IReadOnlyList<StationResult> Stations,
    IReadOnlyList<AreaResult> Areas,
    IReadOnlyList<ProgramResult> Programs);

/// <summary>One station.</summary>
public sealed record StationResult(Station Station, ReplayFigures Figures);

/// <summary>One area: its stations weighted by ground.</summary>
public sealed record AreaResult(string Area, ReplayFigures Figures);

/// <summary>One program.</summary>
/// <param name="Program">Which.</param>
/// <param name="Changes">How often it was changed, switched off or on again.</param>
/// <param name="Mornings">Visit days with a start to decide about.</param>
public sealed record ProgramResult(ProgramKey Program, int Changes, int Mornings);

/// <summary>What a replay counts. Depths in mm.</summary>
public sealed record ReplayFigures
{
    /// <summary>Share of the demand that irrigation and rain met, percent; see <see cref="ProtocolBalance"/>.</summary>
    public required double AdequacyPercent { get; init; }

    /// <summary>Share of the irrigation that ran off or found the ground full, percent; see <see cref="ProtocolBalance"/>.</summary>
    public required double ExcessPercent { get; init; }

    /// <summary>Gross: minutes × precipitation rate.</summary>
    public required double WaterMm { get; init; }

    /// <summary>What of it reached the root zone, before anything drained.</summary>
    public required double NetMm { get; init; }

    /// <summary>Rain and irrigation that drained.</summary>
    public required double DrainageMm { get; init; }

    /// <summary>Irrigation that ran off, gross.</summary>
    public required double RunoffMm { get; init; }

    /// <summary>Rain that ran off.</summary>
    public required double RainRunoffMm { get; init; }

    /// <summary>Days on which depletion went beyond the allowable at any time.</summary>
    public required double StressDays { get; init; }

    /// <summary>What turf drew.</summary>
    public required double EtcMm { get; init; }

    /// <summary>The mean of several, weighted; the weights need not add up to 1.</summary>
    internal static ReplayFigures Mean(IReadOnlyList<(ReplayFigures Figures, double Weight)> of)
    {
        var whole = of.Sum(x => x.Weight);
        double Of(Func<ReplayFigures, double> value) => of.Sum(x => value(x.Figures) * x.Weight) / whole;
        return new ReplayFigures
        {
            AdequacyPercent = Of(f => f.AdequacyPercent),
            ExcessPercent = Of(f => f.ExcessPercent),
            WaterMm = Of(f => f.WaterMm),
            NetMm = Of(f => f.NetMm),
            DrainageMm = Of(f => f.DrainageMm),
            RunoffMm = Of(f => f.RunoffMm),
            RainRunoffMm = Of(f => f.RainRunoffMm),
            StressDays = Of(f => f.StressDays),
            EtcMm = Of(f => f.EtcMm),
        };
    }
}
