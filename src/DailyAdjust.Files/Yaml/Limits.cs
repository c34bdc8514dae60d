namespace DailyAdjust.Files.Yaml;

/// <summary>The range that a value must lie in, in the kind's metric unit.</summary>
internal readonly record struct Limits(double Min, double Max, bool AboveMin = false, bool BelowMax = false)
{
    /// <summary>"Above 0" is a size that something has: what is smaller would become 0, or what is divided by it infinite.</summary>
    private const double Smallest = 1e-9;

    public bool Holds(double value) =>
        (AboveMin ? value >= Min + Smallest : value >= Min) && (BelowMax ? value < Max : value <= Max);

    /// <summary>"from 0 to 100 %" or "above 0 and at most 100 %"; limits are shown in the unit that the file used.</summary>
    public string InWords(Func<double, double> toShown, string unit)
    {
        var min = Wording.Number(toShown(Min));
        var max = Wording.Number(toShown(Max)) + (unit.Length == 0 ? "" : " " + unit);
        return (AboveMin, BelowMax) switch
        {
            (false, false) => $"from {min} to {max}",
            (true, false) => $"above {min} and at most {max}",
            (false, true) => $"at least {min} and below {max}",
            _ => $"above {min} and below {max}",
        };
    }
}
