using System.Globalization;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Logbook;

/// <summary>"2026-06-08 done", "2026-06-08/2 done except C3/P1 C1": a round that was walked, and what on it was not done.</summary>
internal static class RoundText
{
    private static readonly char[] Blanks = [' ', '\t', ',', ';'];

    public static (DateOnly Sheet, int? Issue, IReadOnlyList<Place> Except)? Read(string text, Site site, out (string What, string Hint) fault)
    {
        var words = text.Split(Blanks, StringSplitOptions.RemoveEmptyEntries);
        fault = ($"{Wording.Quote(text)} does not say which round was done", "write the sheet's date: 2026-06-08 done, or 2026-06-08 done except C3/P1 C1; `log round` takes the path of a filled-in round.csv too");
        if (words.Length < 2 || !TryReadSheet(words[0], out var sheet, out var issue) || !Is(words[1], "done") || (words.Length > 2 && !Is(words[2], "except")) || words.Length == 3)
        {
            return null;
        }

        var except = new List<Place>();
        foreach (var word in words.Skip(3).Where(w => !Is(w, "and")))
        {
            if (PlaceText.Find(word, site) is not { Kind: PlaceKind.Program or PlaceKind.Controller } place)
            {
                fault = ($"except {Wording.Quote(word)}: there is no such program or controller", PlaceText.Hint(word, site, PlaceKind.Program, PlaceKind.Controller));
                return null;
            }

            except.Add(place);
        }

        return (sheet, issue, except);
    }

    /// <summary>A sheet's id: its date, and its issue behind a slash where it is told.</summary>
    public static bool TryReadSheet(string text, out DateOnly sheet, out int? issue)
    {
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        issue = null;
        if (slash >= 0)
        {
            if (!int.TryParse(text.AsSpan(slash + 1).Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number < 1)
            {
                sheet = default;
                return false;
            }

            issue = number;
        }

        return LogTimeText.TryParseDate(slash < 0 ? text : text[..slash], out sheet);
    }

    private static bool Is(string text, string word) => string.Equals(text, word, StringComparison.OrdinalIgnoreCase);
}
