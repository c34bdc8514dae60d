using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace DailyAdjust.BrowserTests;

/// <summary>On which printed page something stands: a link to a place makes the browser write into the PDF where that place is.</summary>
internal static class Printed
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    /// <summary>Marks the beginning and the end of every element that is printed, and of every heading's first words after it; gives them by number with what they are.</summary>
    private const string Mark = """
        selector => {
          const shown = e => e.getClientRects().length > 0, links = document.createElement('p'), found = [];
          const mark = (e, end) => {
            const place = document.createElement('span'), link = document.createElement('a');
            place.style.cssText = 'display: block; width: 1px; height: 1px; margin-bottom: -1px';
            place.id = 'mark-' + links.childElementCount;
            link.href = '#' + place.id;
            link.textContent = '.';
            end ? e.append(place) : e.prepend(place);
            links.append(link);
          };
          for (const e of [...document.querySelectorAll(selector)].filter(shown)) {
            let last = e;
            if (/^H\d$/.test(e.tagName)) {
              for (last = e.nextElementSibling; last && !shown(last);) last = last.nextElementSibling;
              last = [...last?.querySelectorAll('th, td, figcaption, li') ?? []].find(shown) ?? last;
            }
            if (!last) continue;
            found.push(e.tagName + '.' + e.className + ' ' + e.textContent.trim().slice(0, 60));
            mark(e, false);
            mark(last, last === e);
          }
          document.body.append(links);
          return found;
        }
        """;

    /// <summary>Of every element that is printed and fits the selector: the page on which it begins, and that on which it ends (of a heading: on which what it heads begins). From 1.</summary>
    public static async Task<IReadOnlyList<(string What, int From, int To)>> PlacesAsync(IPage page, string selector, string paper)
    {
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        var found = await page.EvaluateAsync<string[]>(Mark, selector);
        var pdf = Encoding.Latin1.GetString(await page.PdfAsync(new() { Format = paper }));
        var pages = Regex.Matches(pdf, @"(?<id>\d+) 0 obj\s*<<\s*/Type /Page\b", RegexOptions.ExplicitCapture, Patience).Select(m => m.Groups["id"].Value).ToList();
        var places = Regex.Matches(pdf, @"/mark-(?<mark>\d+) \[(?<page>\d+) 0 R /XYZ", RegexOptions.ExplicitCapture, Patience)
            .ToDictionary(m => int.Parse(m.Groups["mark"].Value, CultureInfo.InvariantCulture), m => pages.IndexOf(m.Groups["page"].Value) + 1);
        return [.. found.Select((what, i) => (what, places[2 * i], places[(2 * i) + 1]))];
    }
}
