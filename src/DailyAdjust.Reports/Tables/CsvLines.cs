namespace DailyAdjust.Reports.Tables;

/// <summary>Lines of CSV as characters, cell by cell, without a text of its own for each; its memory serves again. As <see cref="CsvText"/> writes them.</summary>
public sealed class CsvLines
{
    private char[] _characters = new char[1 << 12];
    private int _count;

    /// <summary>Forgets all lines.</summary>
    public void Clear() => _count = 0;

    /// <summary>A cell of text; what would begin a formula is guarded.</summary>
    public void Text(string text)
    {
        var cell = CsvText.Quoted(CsvText.Guarded(text));
        Need(cell.Length + 1);
        cell.CopyTo(_characters.AsSpan(_count));
        _count += cell.Length;
        _characters[_count++] = ',';
    }

    /// <summary>A number with a fixed count of decimals; null or not a number = empty.</summary>
    public void Fixed(double? value, int decimals)
    {
        Need(FixedDecimals.Longest + 1);
        if (value is { } number && double.IsFinite(number))
        {
            var written = FixedDecimals.Write(number, decimals, _characters.AsSpan(_count));
            _count += written;
            if (written == 0)
            {
                var text = Plain.Fixed(number, decimals);
                Need(text.Length + 1);
                text.CopyTo(_characters.AsSpan(_count));
                _count += text.Length;
            }
        }

        _characters[_count++] = ',';
    }

    /// <summary>Ends a line of at least one cell.</summary>
    public void End() => _characters[_count - 1] = '\n';

    public void WriteTo(TextWriter writer) => writer.Write(_characters, 0, _count);

    private void Need(int more)
    {
        if (_count + more > _characters.Length)
        {
            Array.Resize(ref _characters, Math.Max(2 * _characters.Length, _count + more));
        }
    }
}
