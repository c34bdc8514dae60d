using System.Text;

namespace DailyAdjust.Tests.Files.Readings;

/// <summary>How files go wrong on their way: bytes, lines and ends.</summary>
internal static class Spoiling
{
    /// <summary>
    /// Never a digit, a sign, an exponent or a line end, and no blank in place of a digit: what turns one number into another
    /// cannot be seen by anybody.
    /// </summary>
    public static readonly string[] Junk =
        ["x", "\"", ",", ";", "\0", "°", "\uFFFD", "😀", "NaN", "--", "٣", "\uFEFF", "'", "(", "%", "\u001A", " ", "\t", "\u00A0"];

    /// <summary>Where in the line (0 to 1), what, and whether it takes the place of a character or stands between two.</summary>
    public static string Apply(string line, (double At, string What, bool Replaces) spoil)
    {
        var at = (int)(spoil.At * line.Length);
        return string.Concat(line.AsSpan(0, at), spoil.What, line.AsSpan(Math.Min(line.Length, at + (spoil.Replaces ? 1 : 0))));
    }

    /// <summary>Changes one byte, puts one in, takes one out, repeats all that stands before it, or takes forty out.</summary>
    /// <param name="at">0 to 1 of the bytes.</param>
    /// <param name="how">0 to 4.</param>
    public static void Byte(List<byte> bytes, double at, byte value, int how)
    {
        var index = (int)(at * (bytes.Count - 1));
        switch (how)
        {
            case 0:
                bytes[index] = value;
                break;
            case 1:
                bytes.Insert(index, value);
                break;
            case 2:
                bytes.RemoveAt(index);
                break;
            case 4:
                bytes.RemoveRange(index, Math.Min(40, bytes.Count - index));
                break;
            default:
                bytes.InsertRange(index, bytes.GetRange(0, index));
                break;
        }
    }

    /// <summary>Lines doubled, swapped, removed, spoilt with junk or in their bytes; perhaps the file is cut.</summary>
    /// <param name="onlyJunk">Nothing that can make another number of one: no byte is changed and no line is cut.</param>
    public static List<SpoiltLine> Lines(IEnumerable<string> good, int seed, bool onlyJunk)
    {
        var random = new Random(seed);
        List<SpoiltLine> lines = [.. good.Select(line => new SpoiltLine(Encoding.UTF8.GetBytes(line), IsSpoilt: false))];
        for (var changes = 1 + random.Next(5); changes > 0 && lines.Count > 0; changes--)
        {
            var (i, j) = (random.Next(lines.Count), random.Next(lines.Count));
            switch (random.Next(onlyJunk ? 5 : 8))
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
                case 3 or 4:
                    var what = Junk[random.Next(Junk.Length)];
                    var spoil = (random.NextDouble(), what, random.Next(2) == 0 && !string.IsNullOrWhiteSpace(what));
                    lines[i] = new(Encoding.UTF8.GetBytes(Apply(Encoding.UTF8.GetString(lines[i].Text), spoil)), IsSpoilt: true);
                    break;
                case 5:
                    lines[i] = new(lines[i].Text[..random.Next(lines[i].Text.Length + 1)], IsSpoilt: true);
                    break;
                default:
                    List<byte> bytes = [.. lines[i].Text];
                    if (bytes.Count > 0)
                    {
                        Byte(bytes, random.NextDouble(), random.Next(2) == 0 ? (byte)random.Next(256) : (byte)random.Next('0', '9' + 1), random.Next(3));
                    }

                    lines[i] = new([.. bytes], IsSpoilt: true);
                    break;
            }
        }

        return lines;
    }
}

/// <summary>A line without its end, and whether it is still as it was.</summary>
internal sealed record SpoiltLine(byte[] Text, bool IsSpoilt);
