namespace DailyAdjust.Core.Sites;

/// <summary>What the people of a site read their sheet in.</summary>
public enum SheetLanguage
{
    English,
    Spanish,
}
