using DailyAdjust.Fuzz.Inputs;
using DailyAdjust.Fuzz.Targets;

namespace DailyAdjust.Fuzz;

/// <summary>One input: which target reads it, its bytes, and the chance that is left for how it is read.</summary>
internal sealed record Case(Target Target, byte[] Bytes, Random Random)
{
    /// <summary>The input of a number: of seed and number alone.</summary>
    public static Case Of(FuzzOptions options, int index)
    {
        // Neighbouring seeds give neighbouring first draws: they are mixed.
        var mixed = unchecked((((uint)options.Seed * 0x9E3779B1u) ^ ((uint)index * 0x85EBCA77u)) * 0xC2B2AE3Du);
        var random = new Random((int)((mixed ^ (mixed >> 15)) & int.MaxValue));
        var target = AllTargets.Pick(random, options.Target);
        return new(target, Recipe.Make(target, random), random);
    }

    /// <summary>Reads it. Whatever is thrown is a find.</summary>
    public void Try() => Target.Try(Bytes, Random);
}
