namespace DailyAdjust.Files.Readings;

/// <summary>
/// A date pattern of which every part has its fixed number of digits, such as yyyy-MM-dd HH:mm, read without the general parser: files of
/// years have a million times of one pattern. Reads exactly what the general parser reads for it.
/// </summary>
internal sealed class FixedPattern
{
    private static readonly string[] Parts = ["yyyy", "MM", "dd", "HH", "mm", "ss"];

    private readonly string _pattern;
    private readonly int[] _at = new int[Parts.Length];

    private FixedPattern(string pattern) => _pattern = pattern;

    /// <summary>Null where the pattern has anything else in it than those parts, each once, and signs between them.</summary>
    public static FixedPattern? Of(string pattern)
    {
        var found = new FixedPattern(pattern);
        var letters = 0;
        for (var part = 0; part < Parts.Length; part++)
        {
            var at = pattern.IndexOf(Parts[part], StringComparison.Ordinal);
            found._at[part] = at;
            letters += at >= 0 ? Parts[part].Length : 0;
        }

        // "/" and ":" are the separators of a culture, and of the invariant one they are themselves.
        var others = pattern.Where(c => !char.IsAsciiLetter(c));
        return found._at.AsSpan(0, 3).Contains(-1)
            || pattern.Count(char.IsAsciiLetter) != letters
            || !others.All(c => c is '-' or '/' or '.' or ':' or ' ')
            ? null
            : found;
    }

    public bool TryParse(ReadOnlySpan<char> text, out DateTime stamp)
    {
        stamp = default;
        if (text.Length != _pattern.Length)
        {
            return false;
        }

        for (var i = 0; i < text.Length; i++)
        {
            var isDigit = char.IsAsciiLetter(_pattern[i]);
            if (isDigit ? !char.IsAsciiDigit(text[i]) : text[i] != _pattern[i])
            {
                return false;
            }
        }

        var (year, month, day) = (Number(text, 0), Number(text, 1), Number(text, 2));
        var (hour, minute, second) = (Number(text, 3), Number(text, 4), Number(text, 5));
        if (year < 1 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month) || hour > 23 || minute > 59 || second > 59)
        {
            return false;
        }

        stamp = new DateTime(year, month, day, hour, minute, second, DateTimeKind.Unspecified);
        return true;
    }

    private int Number(ReadOnlySpan<char> text, int part)
    {
        var number = 0;
        if (_at[part] >= 0)
        {
            foreach (var digit in text.Slice(_at[part], Parts[part].Length))
            {
                number = (number * 10) + (digit - '0');
            }
        }

        return number;
    }
}
