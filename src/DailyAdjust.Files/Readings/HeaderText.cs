using System.Text;

namespace DailyAdjust.Files.Readings;

/// <summary>Column headers as files spell them: upper or lower case, with any degree sign or none, ² or 2, make no difference.</summary>
/// <param name="cells">Of the header's line.</param>
internal sealed class HeaderText(IReadOnlyList<string> cells)
{
    public const int Absent = -1;
    public const int Twice = -2;

    private List<string>? _plain;

    /// <summary>Which cell is the wanted column, from 0; one spelled exactly so comes before one that only means the same.</summary>
    /// <returns>The index, <see cref="Absent"/> or <see cref="Twice"/>.</returns>
    public int Find(string wanted)
    {
        var exact = Find(cells, cell => cell.AsSpan().Trim().Equals(wanted.AsSpan().Trim(), StringComparison.OrdinalIgnoreCase));
        if (exact != Absent)
        {
            return exact;
        }

        var plain = Plain(wanted);
        return Find(_plain ??= [.. cells.Select(Plain)], cell => string.Equals(cell, plain, StringComparison.Ordinal));
    }

    /// <summary>The same of one column alone.</summary>
    public static int Find(IReadOnlyList<string> cells, string wanted) => new HeaderText(cells).Find(wanted);

    private static int Find(IReadOnlyList<string> cells, Func<string, bool> means)
    {
        var found = Absent;
        for (var i = 0; i < cells.Count; i++)
        {
            if (means(cells[i]))
            {
                found = found == Absent ? i : Twice;
            }
        }

        return found;
    }

    private static string Plain(string header)
    {
        var plain = new StringBuilder(header.Length);
        foreach (var c in header.Trim())
        {
            switch (c)
            {
                // Â: what a spreadsheet makes of ° and ² when it saves UTF-8 a second time. U+FFFD: what was no character.
                case '°' or 'º' or '˚' or 'Â' or '\uFFFD' or '\uFEFF':
                    break;
                case '²':
                    plain.Append('2');
                    break;
                case '³':
                    plain.Append('3');
                    break;
                default:
                    if (!char.IsWhiteSpace(c))
                    {
                        plain.Append(char.ToLowerInvariant(c));
                    }
                    else if (plain.Length > 0 && plain[^1] != ' ')
                    {
                        plain.Append(' ');
                    }

                    break;
            }
        }

        return plain.ToString().TrimEnd();
    }
}
