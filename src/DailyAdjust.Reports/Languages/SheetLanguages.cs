using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Languages;

/// <summary>The languages of the sheet, each from its catalogue.</summary>
public static class SheetLanguages
{
    private static readonly Lazy<Language> Spanish = new(() => Catalogue.Read("es").AsLanguage());

    public static Language Of(SheetLanguage language) => language switch
    {
        SheetLanguage.English => Language.English,
        SheetLanguage.Spanish => Spanish.Value,
        _ => throw new ArgumentOutOfRangeException(nameof(language), language, "Not a language of the sheet."),
    };
}
