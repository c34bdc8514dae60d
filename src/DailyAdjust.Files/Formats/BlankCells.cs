namespace DailyAdjust.Files.Formats;

/// <summary>The cells of a line that runs of blanks part.</summary>
internal sealed class BlankCells(int most)
{
    private readonly Range[] _cells = new Range[most + 1];
    private string _line = "";

    /// <summary>One more than the most where the line has more.</summary>
    public int Count { get; private set; }

    public ReadOnlySpan<char> this[int index] => _line.AsSpan(_cells[index]);

    /// <summary>Takes a line's cells.</summary>
    public void Split(ReadOnlySpan<char> line)
    {
        _line = line.ToString();
        Count = line.Split(_cells, ' ', StringSplitOptions.RemoveEmptyEntries);
    }

    /// <summary>The first cell that does not end where its column does; -1 = all do. A cell that was split, and one that was joined, leave the count as it was.</summary>
    /// <param name="ends">The last character of every column, from 1.</param>
    public int FirstOutOfColumn(ReadOnlySpan<int> ends)
    {
        for (var i = 0; i < ends.Length; i++)
        {
            if (_cells[i].End.Value != ends[i])
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>The character that a cell begins at, from 1; behind the line where there is no such cell.</summary>
    public int Column(int index) => index < Count ? _cells[index].Start.Value + 1 : _line.Length + 1;
}
