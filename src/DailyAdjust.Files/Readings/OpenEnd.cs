namespace DailyAdjust.Files.Readings;

/// <summary>
/// Whether the very last number of a file whose last line is not ended is whole: 12.34 cut is 12.3, 12 or 1. It is, if the
/// column always had the same number of decimals, at least one, and this number has them too; every other is doubtful.
/// </summary>
internal sealed class OpenEnd(bool decimalComma)
{
    private const int FewestNumbers = 10;

    private int _decimals = -1;
    private int _numbers;

    /// <summary>A number in the last cell of an ended line.</summary>
    public void Add(ReadOnlySpan<char> cell)
    {
        var these = CellNumber.Decimals(cell, decimalComma);
        _decimals = _numbers == 0 || these == _decimals ? these : 0;
        _numbers++;
    }

    public bool IsWhole(ReadOnlySpan<char> cell) =>
        _numbers >= FewestNumbers && _decimals > 0 && CellNumber.Decimals(cell, decimalComma) == _decimals;
}
