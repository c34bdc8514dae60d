namespace DailyAdjust.Tests.Plain;

/// <summary>Seeded chance: the same seed throws the same site on every machine (splitmix64).</summary>
internal sealed class Dice(ulong seed)
{
    private ulong _state = seed;

    public bool Chance(double probability) => Unit() < probability;

    /// <summary>A number from 0 to below 1.</summary>
    public double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Both ends included.</summary>
    public int Whole(int from, int to) => from + (int)(Next() % (ulong)(to - from + 1));

    /// <summary>A number with a few decimals, as people write them.</summary>
    public double Between(double from, double to, int decimals = 2) => Math.Round(from + (Unit() * (to - from)), decimals);

    public T OneOf<T>(params T[] choices) => choices[Whole(0, choices.Length - 1)];

    private ulong Next()
    {
        _state += 0x9E3779B97F4A7C15;
        var z = _state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
