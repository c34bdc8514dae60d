using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

namespace DailyAdjust.Reports.Html;

/// <summary>report.html: one file, no script, no outside address, rendered from the components of this folder.</summary>
internal static class HtmlReport
{
    public static string Write(SheetView view)
    {
        using var services = new ServiceCollection().BuildServiceProvider();
        using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        var parameters = ParameterView.FromDictionary(new Dictionary<string, object?>(StringComparer.Ordinal) { [nameof(SheetPage.View)] = view });

        // No component waits for anything, so the task is finished when it comes back.
        var page = renderer.Dispatcher.InvokeAsync(async () =>
        {
            var root = await renderer.RenderComponentAsync<SheetPage>(parameters);
            return root.ToHtmlString();
        }).GetAwaiter().GetResult();
        return "<!doctype html>\n" + page.ReplaceLineEndings("\n").TrimEnd() + "\n";
    }
}
