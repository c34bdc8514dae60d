namespace DailyAdjust.Files.Readings;

/// <summary>How much of a file's beginning was read before.</summary>
/// <param name="Bytes">So many.</param>
/// <param name="GoOnAt">The byte from which on lines are read again, below <paramref name="Bytes"/>.</param>
/// <param name="HeaderLine">The line of the header, from 1.</param>
/// <param name="Header">The header of the time column; where it stands again, another header follows, and nothing may be passed over.</param>
internal sealed record LinesKnown(long Bytes, long GoOnAt, int HeaderLine, string Header);
