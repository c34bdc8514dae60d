namespace DailyAdjust.Core.Sites;

/// <summary>Stations of which no two may run at the same time: what feeds them does not carry more. They may stand on different controllers.</summary>
/// <param name="Name">What the sheet calls it.</param>
/// <param name="Stations">Two or more.</param>
public sealed record StationGroup(string Name, IReadOnlyList<StationKey> Stations);
