namespace DailyAdjust.Fuzz.Checks;

/// <summary>What must hold.</summary>
internal static class Hold
{
    /// <exception cref="FaultException">It does not.</exception>
    public static void That(bool holds, string what)
    {
        if (!holds)
        {
            throw new FaultException(what);
        }
    }

    /// <exception cref="FaultException">It does not.</exception>
    public static void That(bool holds, FormattableString what)
    {
        if (!holds)
        {
            throw new FaultException(FormattableString.Invariant(what));
        }
    }

    /// <summary>A value that was read is a number within its range.</summary>
    /// <exception cref="FaultException">It is not.</exception>
    public static void Within(double? value, double least, double most, string what) =>
        That(value is null || (value >= least && value <= most), $"{what} is {value}, and lies between {least} and {most}");

    /// <summary>Two readings of the same bytes are the same.</summary>
    /// <exception cref="FaultException">They are not.</exception>
    public static void Same(object? once, object? again) => That(Fingerprint.Of(once) == Fingerprint.Of(again), "read twice, and two things came of it");
}
