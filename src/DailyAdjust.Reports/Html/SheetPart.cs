using DailyAdjust.Core.Phrases;
using Microsoft.AspNetCore.Components;

namespace DailyAdjust.Reports.Html;

/// <summary>What every component of a page is: it says its phrases in the language of the page around it.</summary>
public abstract class SheetPart : ComponentBase
{
    /// <summary>Null = the page has set none: English.</summary>
    [CascadingParameter]
    public Language? Language { get; set; }

    protected string Say(Phrase phrase)
    {
        ArgumentNullException.ThrowIfNull(phrase);
        return phrase.In(Language ?? Language.English);
    }
}
