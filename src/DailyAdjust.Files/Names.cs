using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files;

/// <summary>Ids and names that other files refer to.</summary>
internal static class Names
{
    private const int Longest = 64;

    /// <summary>Ids stand in addresses (C1/P2) and in lists parted by blanks.</summary>
    public static bool IsId(string id) => id.Length is > 0 and <= Longest && !id.Any(c => char.IsWhiteSpace(c) || char.IsControl(c) || c is '/' or ':' or ',' or ';' or '"');

    public static void Check(string id, YamlNode at, string what, ProblemList problems)
    {
        if (id.Length > 0 && !IsId(id))
        {
            problems.Error(at.Line, at.Column, $"{what}: {Wording.Quote(id)} cannot be an id", "use letters, digits, - and _, without blanks, at most 64");
        }
        else if (id.Equals("site", StringComparison.OrdinalIgnoreCase) || id.Equals("pump", StringComparison.OrdinalIgnoreCase))
        {
            problems.Error(at.Line, at.Column, $"{what}: {Wording.Quote(id)} has a meaning of its own in the logbook", "choose another id");
        }
    }

    /// <summary>The known name that this one means; upper and lower case make no difference.</summary>
    public static string? Find(IEnumerable<string> known, string name) =>
        known.FirstOrDefault(k => string.Equals(k, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>Reports ids that differ from an earlier one in nothing but upper and lower case.</summary>
    public static void CheckUnique(IEnumerable<(string Id, YamlNode At)> ids, string what, ProblemList problems)
    {
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (id, at) in ids.Where(i => i.Id.Length > 0 && !seen.Add(i.Id)))
        {
            problems.Error(at.Line, at.Column, $"{what} {Wording.Quote(id)} stands there twice", "give each its own; upper and lower case make no difference");
        }
    }
}
