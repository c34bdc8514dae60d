using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

namespace DailyAdjust.Reports.Html;

/// <summary>report.html: one file, no script, no outside address, rendered from the components of this folder.</summary>
internal static partial class HtmlReport
{
    /// <summary>No page takes a second; a text that somebody wrote to hold it up is given that long.</summary>
    private const int MostMilliseconds = 30_000;

    public static string Write(SheetView view) =>
        Write<SheetPage>(new Dictionary<string, object?>(StringComparer.Ordinal) { [nameof(SheetPage.View)] = view });

    /// <summary>Any whole page.</summary>
    public static string Write<TPage>(Dictionary<string, object?> parameters)
        where TPage : IComponent
    {
        using var services = new ServiceCollection().BuildServiceProvider();
        using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);

        // No component waits for anything, so the task is finished when it comes back.
        var page = renderer.Dispatcher.InvokeAsync(async () =>
        {
            var root = await renderer.RenderComponentAsync<TPage>(ParameterView.FromDictionary(parameters));
            return root.ToHtmlString();
        }).GetAwaiter().GetResult();
        page = Indent().Replace(page.ReplaceLineEndings("\n"), "\n");
        var plain = Written().Replace(page.TrimEnd(), sign => ((char)Convert.ToInt32(sign.Groups["code"].Value, 16)).ToString());
        return "<!doctype html>\n" + NumberAndUnit().Replace(plain, Together) + "\n";
    }

    private static string Together(Match match) => match.Groups["typed"].Success ? match.Value : match.Result("${before}${number}\u00A0${unit}${after}");

    /// <summary>A number and its unit stay on one line, in our sentences and in the reasons that come with the advice. Not in what is typed as it stands.</summary>
    [GeneratedRegex(
        "(?<typed><code>[^<]*</code>)|(?<before>[ >(])(?<number>[0-9][0-9.,]*) (?<unit>%|in|pulg|mm|gal|Mgal|L|m³|min|gpm|L/min|h)(?<after>[ <.,;:)])",
        RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant,
        MostMilliseconds)]
    private static partial Regex NumberAndUnit();

    /// <summary>Signs that stand in every line of a round: as themselves they take a third of the room that their codes do.</summary>
    [GeneratedRegex("&#x(?<code>A0|B0|B3|B7|2192);", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, MostMilliseconds)]
    private static partial Regex Written();

    [GeneratedRegex("\n +", RegexOptions.CultureInvariant, MostMilliseconds)]
    private static partial Regex Indent();
}
