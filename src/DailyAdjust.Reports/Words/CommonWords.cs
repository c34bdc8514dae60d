using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>Words that several parts of the sheet share.</summary>
internal static class CommonWords
{
    public static readonly Phrase Unknown = new("unknown");
    public static readonly Phrase Off = new("off");
    public static readonly Phrase Today = new("today");
    public static readonly Phrase Yesterday = new("yesterday");
    public static readonly Phrase Yes = new("yes");
    public static readonly Phrase No = new("no");
    public static readonly Phrase Numbers = new("The numbers behind the chart");

    /// <summary>"1 box", "2 boxes", in English.</summary>
    public static string Count(int count, string one, string many) => Phrase.Count(count, one, many).ToString();

    /// <summary>"Greens 5-7 (C2/P1)"; the address alone where it has no name.</summary>
    public static string Named(string name, string address) => name.Length == 0 ? address : $"{name} ({address})";

    /// <summary>"C2 (behind the ninth green)", or "C2" where nobody said where it stands.</summary>
    public static string Box(string controller, Site site) =>
        site.ControllerOf(controller) is { Place.Length: > 0 } known ? $"{controller} ({known.Place})" : controller;

    public static Phrase AndMore(int count) => $"and {SiteWords.Count(count)} more in advice.json";

    /// <summary>"a", "a and b", "a, b and c", in English.</summary>
    public static string List(IReadOnlyList<string> items) => Phrase.ListNames(items).ToString();
}
