using System.Globalization;
using System.Text;

namespace DailyAdjust.Files.Guess;

/// <summary>The words of a header: lower case, without accents, parted where signs or capital letters part them.</summary>
internal sealed class HeaderWords
{
    private readonly string[] _words;

    /// <param name="header">As the file spells it; what stands in brackets is left out.</param>
    public HeaderWords(string header)
    {
        var (name, brackets) = Brackets(header);
        (Name, InBrackets) = (name, brackets);
        _words = Plain(name).Split(' ', StringSplitOptions.RemoveEmptyEntries);
    }

    /// <summary>Without what stands in brackets.</summary>
    public string Name { get; }

    /// <summary>What stands in the last brackets; null = there are none.</summary>
    public string? InBrackets { get; }

    public int Count => _words.Length;

    /// <summary>The words with one blank between them.</summary>
    public string Text => string.Join(' ', _words);

    /// <summary>Ends with a number as second ones do: Temp 2, but not W/m2.</summary>
    public bool IsNumbered => _words is [.., var before, [>= '2' and <= '9']] && before is not ("m" or "cm");

    /// <summary>Any of these: up to three letters a word of its own, four the beginning of one, longer ones anywhere in one (German puts words together).</summary>
    public bool HasAny(params ReadOnlySpan<string> wanted)
    {
        foreach (var word in wanted)
        {
            foreach (var mine in _words)
            {
                if (Means(mine, word))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static bool Means(string word, string wanted) => wanted.Length switch
    {
        <= 3 => string.Equals(word, wanted, StringComparison.Ordinal),
        4 => word.StartsWith(wanted, StringComparison.Ordinal),
        _ => word.Contains(wanted, StringComparison.Ordinal),
    };

    private static (string Name, string? Inside) Brackets(string header)
    {
        var close = header.LastIndexOfAny([')', ']']);
        var open = close < 0 ? -1 : header.LastIndexOf(header[close] == ')' ? '(' : '[', close);
        return open < 0 ? (header.Trim(), null) : ((header[..open] + " " + header[(close + 1)..]).Trim(), header[(open + 1)..close].Trim());
    }

    private static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length + 8);
        var before = '\0';
        foreach (var c in text.Normalize(NormalizationForm.FormD))
        {
            if (CharUnicodeInfo.GetUnicodeCategory(c) == UnicodeCategory.NonSpacingMark)
            {
                continue;
            }

            // AirTemp is two words, and so are Temp2 and RH2m; ET0 and PM10 come apart and are asked for in pieces.
            var hump = (char.IsUpper(c) && char.IsLower(before)) || (char.IsAsciiDigit(c) && char.IsLetter(before)) || (char.IsLetter(c) && char.IsAsciiDigit(before));
            plain.Append(hump ? " " : "");
            plain.Append(c == 'ß' ? "ss" : char.IsLetterOrDigit(c) ? char.ToLowerInvariant(c).ToString() : " ");
            before = c;
        }

        return plain.ToString();
    }
}
