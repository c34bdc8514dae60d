using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Index;

/// <summary>Something that stands at the top of a site's sheet.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Text">A sentence; what is to be typed is marked in it.</param>
public sealed record Warning(Phrase Title, Phrase Text);
