using System.Text;
using DailyAdjust.Fuzz.Targets;

namespace DailyAdjust.Fuzz.Inputs;

/// <summary>How an input is made: a good file that goes through a few kinds of damage, or one put together from its words.</summary>
internal static class Recipe
{
    /// <summary>Bytes; longer ones are cut, so that a million of them end.</summary>
    private const int Longest = 300_000;

    public static byte[] Make(Target target, Random random)
    {
        var text = random.Next(12) switch
        {
            0 => MadeText.Of(target, random),
            1 => MadeText.Of(target, random) + Good(target, random),
            _ => Good(target, random),
        };

        // Most take one, some take many; one in some tens stays whole.
        for (var left = (int)Math.Ceiling(-Math.Log(1 - random.NextDouble()) * 2.5) - (random.Next(30) == 0 ? 100 : 0); left > 0 && text.Length <= Longest; left--)
        {
            text = Damage.Of(text, target, () => Good(target, random), random);
        }

        return Encoded(text.Length <= Longest ? text : text[..Longest], random);
    }

    /// <summary>Latin-1, so that a character is a byte.</summary>
    private static string Good(Target target, Random random) => Encoding.Latin1.GetString(target.Good[random.Next(target.Good.Count)]);

    private static byte[] Encoded(string text, Random random)
    {
        var bytes = Encoding.Latin1.GetBytes(text);
        return random.Next(60) switch
        {
            0 => [0xEF, 0xBB, 0xBF, .. bytes],
            1 => [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(Encoding.UTF8.GetString(bytes))],
            2 => [0xFE, 0xFF, .. Encoding.BigEndianUnicode.GetBytes(Encoding.UTF8.GetString(bytes))],
            3 => Encoding.Unicode.GetBytes(text),
            4 => Encoding.Latin1.GetBytes(Encoding.UTF8.GetString(bytes)),
            5 => Encoding.UTF8.GetBytes(text),
            6 => Encoding.UTF32.GetBytes(text),
            _ => bytes,
        };
    }
}
