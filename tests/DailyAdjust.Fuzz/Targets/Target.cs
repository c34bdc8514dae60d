using System.Text;
using System.Text.RegularExpressions;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>Something that reads bytes from outside, good files of it, and what must hold whatever it reads.</summary>
/// <param name="name">As --target writes it.</param>
/// <param name="weight">How often it is chosen beside the others.</param>
/// <param name="good">Files without faults.</param>
internal abstract partial class Target(string name, int weight, IReadOnlyList<byte[]> good)
{
    private static readonly string[] Signs = [",", ";", "\t", "|", "\n", "\r\n", "\r", " ", ": ", ":", "- ", "{", "}", "[", "]", "\"", "/", "-", "#", "%"];

    public string Name => name;

    public int Weight => weight;

    public IReadOnlyList<byte[]> Good => good;

    /// <summary>The words of its good files, and the signs between them; Latin-1 stands for bytes.</summary>
    public IReadOnlyList<string> Words { get; } =
    [
        .. good.SelectMany(file => Word().Split(Encoding.Latin1.GetString(file))).Where(word => word.Length is > 0 and < 100).Distinct(StringComparer.Ordinal).Take(3000),
        .. Signs,
    ];

    /// <summary>What a row of a made file is joined with, and a line ends with.</summary>
    public virtual IReadOnlyList<string> Separators => [",", ",", ";", "\t"];

    /// <summary>Reads it.</summary>
    /// <exception cref="FaultException">Something does not hold.</exception>
    public abstract void Try(byte[] bytes, Random random);

    /// <summary>What an input of so many bytes may expand to, bytes.</summary>
    public virtual long Expanded(long bytes) => bytes;

    protected static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    [GeneratedRegex("[,;\\t|\\r\\n{}\\[\\]\"]+|(?<=:) ", RegexOptions.CultureInvariant, 10_000)]
    private static partial Regex Word();
}
