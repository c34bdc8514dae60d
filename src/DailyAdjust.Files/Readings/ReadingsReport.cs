using DailyAdjust.Core.Weather;

namespace DailyAdjust.Files.Readings;

/// <summary>One station's readings of one site-local calendar day (the day in which the interval begins), one per interval, ascending.</summary>
public sealed record ReadingDay(DateOnly Date, IReadOnlyList<Reading> Readings);

/// <summary>
/// What became of one weather file. A row is a line below the header that is not blank and does not repeat the header;
/// every row is counted once, so that the three counts are all of them.
/// </summary>
public sealed record ReadingsReport
{
    /// <summary>The file's name.</summary>
    public required string File { get; init; }

    /// <summary>Rows of which every value is a number or marked as missing.</summary>
    public int RowsRead { get; init; }

    /// <summary>Rows with a value that is no number, the rest of which counts; and rows at a time that the site's clock skipped.</summary>
    public int RowsSetAside { get; init; }

    /// <summary>Rows that do not count at all: no time, too few or too many cells, cut.</summary>
    public int RowsRefused { get; init; }

    /// <summary>Values that are no number, of all rows.</summary>
    public int ValuesSetAside { get; init; }

    /// <summary>Nothing of the file was used: it is no text, or its columns are not certain. The problems say why.</summary>
    public bool FileRefused { get; init; }

    /// <summary>Begin of the first and end of the last reading, UTC; null = there is none.</summary>
    public DateTimeOffset? Begin { get; init; }

    public DateTimeOffset? End { get; init; }

    /// <summary>Forecasts: when the file says that it was made, UTC; null = it does not say.</summary>
    public DateTimeOffset? Issued { get; init; }

    /// <summary>In order of line; a few of each sort, and how many more there were.</summary>
    public required IReadOnlyList<Problem> Problems { get; init; }
}
