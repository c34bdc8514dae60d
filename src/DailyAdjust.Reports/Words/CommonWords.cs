using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>Words that several parts of the sheet share.</summary>
internal static class CommonWords
{
    public const string Unknown = "unknown";
    public const string Off = "off";
    public const string Today = "today";
    public const string Yesterday = "yesterday";
    public const string Tomorrow = "tomorrow";
    public const string Yes = "yes";
    public const string No = "no";
    public const string Numbers = "The numbers behind the chart";

    /// <summary>"1 box", "2 boxes".</summary>
    public static string Count(int count, string one, string many) => SiteWords.Count(count) + " " + (count == 1 ? one : many);

    /// <summary>"Greens 5-7 (C2/P1)"; the address alone where it has no name.</summary>
    public static string Named(string name, string address) => name.Length == 0 ? address : $"{name} ({address})";

    /// <summary>"C2 (behind the ninth green)", or "C2" where nobody said where it stands.</summary>
    public static string Box(string controller, Site site) =>
        site.ControllerOf(controller) is { Place.Length: > 0 } known ? $"{controller} ({known.Place})" : controller;

    public static string AndMore(int count) => $"and {SiteWords.Count(count)} more in advice.json";

    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string List(IReadOnlyList<string> items) => items.Count switch
    {
        0 => "",
        1 => items[0],
        _ => string.Join(", ", items.Take(items.Count - 1)) + " and " + items[^1],
    };
}
