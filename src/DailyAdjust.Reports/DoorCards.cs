using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Html;
using DailyAdjust.Reports.Text;

namespace DailyAdjust.Reports;

/// <summary>The charts for the controllers' doors. Pure: the same cards give the same bytes.</summary>
public static class DoorCards
{
    public const string HtmlFile = "door-card.html";

    /// <summary>One page that prints in black and white, a controller a page.</summary>
    public static string Html(Site site, IReadOnlyList<DoorCard> cards) => HtmlReport.Write<DoorCardPage>(new(StringComparer.Ordinal)
    {
        [nameof(DoorCardPage.Site)] = site,
        [nameof(DoorCardPage.Cards)] = cards,
    });

    /// <summary>The same for a terminal.</summary>
    public static string Text(Site site, IReadOnlyList<DoorCard> cards) => DoorCardText.Write(site, cards);
}
