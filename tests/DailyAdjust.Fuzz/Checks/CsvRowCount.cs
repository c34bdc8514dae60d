namespace DailyAdjust.Fuzz.Checks;

/// <summary>Rows of a CSV file that people keep, counted by other means than its reader's.</summary>
internal static class CsvRowCount
{
    /// <summary>Rows that are not empty, the header among them; a line end between quotation marks ends none.</summary>
    /// <param name="text">The whole file.</param>
    /// <param name="delimiter">Of its cells.</param>
    public static int Of(string text, char delimiter)
    {
        var (rows, begin, quoted) = (0, 0, false);
        for (var i = 0; i <= text.Length; i++)
        {
            if (i < text.Length && text[i] == '"')
            {
                quoted = !quoted;
            }

            if (i == text.Length || (!quoted && text[i] is '\n' or '\r'))
            {
                rows += Says(text[begin..i], delimiter) ? 1 : 0;
                begin = i + 1;
            }
        }

        return rows;
    }

    /// <summary>Whether any cell holds something; quotation marks around nothing are nothing.</summary>
    private static bool Says(string row, char delimiter)
    {
        var (begin, quoted) = (0, false);
        for (var i = 0; i <= row.Length; i++)
        {
            if (i < row.Length && row[i] == '"')
            {
                quoted = !quoted;
            }

            if (i == row.Length || (!quoted && row[i] == delimiter))
            {
                var bare = row[begin..i].Trim();
                bare = bare.Length >= 2 && bare[0] == '"' && bare[^1] == '"' ? bare[1..^1].Trim() : bare;
                if (bare.Length > 0)
                {
                    return true;
                }

                begin = i + 1;
            }
        }

        return false;
    }
}
