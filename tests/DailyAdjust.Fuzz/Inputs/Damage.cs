using System.Text;
using System.Text.RegularExpressions;
using DailyAdjust.Fuzz.Targets;
using DailyAdjust.Tests.Files.Readings;

namespace DailyAdjust.Fuzz.Inputs;

/// <summary>One kind of damage, done once, somewhere.</summary>
internal static partial class Damage
{
    private static readonly string[] Openings = ["{", "[", "{a: ", "- ", "? ", "[{", "\"", "(", "!!x ", "&a ", "{\"a\":", "[[", "| ", "> ", "'"];

    /// <param name="text">Latin-1: a character is a byte.</param>
    /// <param name="other">Another good file.</param>
    public static string Of(string text, Target target, Func<string> other, Random random) => random.Next(24) switch
    {
        0 or 1 or 2 => Bytes(text, random),
        3 or 4 or 5 => Lines(text, random),
        6 or 7 or 8 => Word(text, Any(target, random), random),
        9 or 10 or 11 => Number(text, random),
        12 or 13 => Put(text, At(text, random), 0, Any(target, random)),
        14 => Put(text, At(text, random), 0, Junk(random)),
        15 => Splice(text, other(), random),
        16 => Repeat(text, random),
        17 => Put(text, At(text, random), 0, new string((char)random.Next(1, 256), Large(random, 70_000))),
        18 => Nest(text, random),
        19 => Put(text, At(text, random), random.Next(4), new string('\0', random.Next(1, 5))),
        20 => Ends(text, random),
        21 => random.Next(2) == 0 ? text[..At(text, random)] : text[At(text, random)..],
        22 => Swap(text, random),
        _ => Put(text, At(text, random), random.Next(200), ""),
    };

    private static int At(string text, Random random) => random.Next(text.Length + 1);

    private static string Put(string text, int at, int cut, string what) => string.Concat(text.AsSpan(0, at), what, text.AsSpan(Math.Min(text.Length, at + cut)));

    private static string Any(Target target, Random random) => random.Next(4) == 0 ? Numbers.Extreme(random) : target.Words[random.Next(target.Words.Count)];

    private static string Junk(Random random) => Encoding.Latin1.GetString(Encoding.UTF8.GetBytes(Spoiling.Junk[random.Next(Spoiling.Junk.Length)]));

    /// <summary>Small sizes often, large ones seldom.</summary>
    private static int Large(Random random, int most) => (int)Math.Pow(most, random.NextDouble());

    private static string Bytes(string text, Random random)
    {
        List<byte> bytes = [.. Encoding.Latin1.GetBytes(text)];
        if (bytes.Count > 0 && bytes.Count < 100_000)
        {
            Spoiling.Byte(bytes, random.NextDouble(), (byte)random.Next(256), random.Next(8) == 0 ? 3 : random.Next(5) % 3);
        }

        return Encoding.Latin1.GetString([.. bytes]);
    }

    private static string Lines(string text, Random random)
    {
        List<string> lines = [.. text.Split('\n')];
        var (i, j) = (random.Next(lines.Count), random.Next(lines.Count));
        switch (random.Next(4))
        {
            case 0:
                lines.Insert(j, lines[i]);
                break;
            case 1:
                (lines[i], lines[j]) = (lines[j], lines[i]);
                break;
            case 2:
                lines.RemoveAt(i);
                break;
            default:
                lines.InsertRange(j, Enumerable.Repeat(lines[i], Math.Min(Large(random, 2000), 1 + (100_000 / Math.Max(1, lines[i].Length)))));
                break;
        }

        return string.Join('\n', lines);
    }

    private static string Word(string text, string what, Random random) =>
        Words().Matches(text, At(text, random)).FirstOrDefault() is { } word ? Put(text, word.Index, word.Length, what) : text + what;

    private static string Number(string text, Random random) =>
        Digits().Matches(text, At(text, random)).FirstOrDefault() is { } number ? Put(text, number.Index, number.Length, Numbers.Extreme(random)) : text;

    private static string Splice(string text, string other, Random random) => string.Concat(text.AsSpan(0, At(text, random)), other.AsSpan(At(other, random)));

    private static string Repeat(string text, Random random)
    {
        var from = At(text, random);
        var block = text[from..Math.Min(text.Length, from + Large(random, 4000))];
        return Put(text, from, 0, string.Concat(Enumerable.Repeat(block, Math.Min(Large(random, 3000), 1 + (100_000 / Math.Max(1, block.Length))))));
    }

    private static string Nest(string text, Random random)
    {
        var opening = Openings[random.Next(Openings.Length)];
        return Put(text, At(text, random), random.Next(2) * 1000, string.Concat(Enumerable.Repeat(opening, Large(random, 20_000))));
    }

    private static string Ends(string text, Random random) => random.Next(4) switch
    {
        0 => text.Replace("\n", "\r\n", StringComparison.Ordinal),
        1 => text.Replace("\n", "\r", StringComparison.Ordinal),
        2 => text.Replace(',', ';').Replace('.', ','),
        _ => text.Replace(",", ", ", StringComparison.Ordinal).Replace("\n", "\n\n", StringComparison.Ordinal),
    };

    /// <summary>Two words change places.</summary>
    private static string Swap(string text, Random random)
    {
        var words = Words().Matches(text);
        if (words.Count < 2)
        {
            return text;
        }

        var (a, b) = (words[random.Next(words.Count)], words[random.Next(words.Count)]);
        var (first, second) = a.Index <= b.Index ? (a, b) : (b, a);
        return first.Index == second.Index ? text
            : string.Concat(text.AsSpan(0, first.Index), second.Value, text.AsSpan(first.Index + first.Length, second.Index - first.Index - first.Length))
                + first.Value + text[(second.Index + second.Length)..];
    }

    [GeneratedRegex("[^,;\\t|\\r\\n:{}\\[\\]\" ]+", RegexOptions.CultureInvariant, 10_000)]
    private static partial Regex Words();

    [GeneratedRegex("[0-9]+([.][0-9]+)?", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Digits();
}
