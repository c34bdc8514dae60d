using System.Text;
using DailyAdjust.Fuzz.Targets;

namespace DailyAdjust.Fuzz.Inputs;

/// <summary>A small text that no good file is like: rows of a target's words, or brackets and keys of them.</summary>
internal static class MadeText
{
    public static string Of(Target target, Random random) => random.Next(3) switch
    {
        0 => Rows(target, random),
        1 => Nested(target, random, depth: 0, new StringBuilder()).ToString(),
        _ => string.Concat(Enumerable.Range(0, random.Next(1, 60)).Select(_ => Word(target, random))),
    };

    private static string Rows(Target target, Random random)
    {
        var separator = target.Separators[random.Next(target.Separators.Count)];
        var width = random.Next(1, 14);
        return string.Join(random.Next(6) == 0 ? "\r\n" : "\n", Enumerable.Range(0, random.Next(1, 12)).Select(_ =>
            string.Join(separator, Enumerable.Range(0, random.Next(15) == 0 ? random.Next(40) : width).Select(_ => Word(target, random)))));
    }

    private static StringBuilder Nested(Target target, Random random, int depth, StringBuilder text)
    {
        if (depth > 8 || text.Length > 4000)
        {
            return text.Append(Word(target, random));
        }

        switch (random.Next(5))
        {
            case 0 or 1:
                text.Append('{');
                for (var left = random.Next(6); left > 0; left--)
                {
                    text.Append('"').Append(Word(target, random)).Append("\": ");
                    Nested(target, random, depth + 1, text).Append(left > 1 ? ", " : "");
                }

                return text.Append('}');
            case 2:
                text.Append('[');
                for (var left = random.Next(6); left > 0; left--)
                {
                    Nested(target, random, depth + 1, text).Append(left > 1 ? ", " : "");
                }

                return text.Append(']');
            case 3:
                for (var left = random.Next(6); left > 0; left--)
                {
                    text.Append('\n').Append(' ', 2 * depth).Append(random.Next(4) == 0 ? "- " : "").Append(Word(target, random)).Append(": ");
                    Nested(target, random, depth + 1, text);
                }

                return text;
            default:
                return text.Append(Word(target, random));
        }
    }

    private static string Word(Target target, Random random) => random.Next(8) == 0 ? Numbers.Extreme(random) : target.Words[random.Next(target.Words.Count)];
}
