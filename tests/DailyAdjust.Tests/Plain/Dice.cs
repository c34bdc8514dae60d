namespace DailyAdjust.Tests.Plain;

/// <summary>Seeded chance: the same seed throws the same site on every machine (splitmix64).</summary>
/// <param name="seed">Any number.</param>
/// <param name="isCoarse">Numbers are round, and spans of minutes quarters of an hour: what meets, meets exactly.</param>
internal sealed class Dice(ulong seed, bool isCoarse = false)
{
    private ulong _state = seed;

    public bool Chance(double probability) => Unit() < probability;

    /// <summary>A number from 0 to below 1.</summary>
    public double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Both ends included.</summary>
    public int Whole(int from, int to)
    {
        var beyond = (int)(Next() % (ulong)(to - from + 1));
        return from + (isCoarse && to - from >= 50 ? beyond / 15 * 15 : beyond);
    }

    /// <summary>A number with a few decimals, as people write them.</summary>
    public double Between(double from, double to, int decimals = 2)
    {
        var exact = from + (Unit() * (to - from));
        return isCoarse ? Math.Clamp(Math.Round(exact, to - from >= 4 ? 0 : 1), from, to) : Math.Round(exact, decimals);
    }

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
