using System.Globalization;

namespace DailyAdjust.Fuzz.Processes;

/// <summary>Makes one input and reads it.</summary>
internal static class Reading
{
    /// <summary>What did not hold, in one line; null = all held.</summary>
    public static string? Fault(FuzzOptions options, int index)
    {
        var target = "making the input";
        try
        {
            var input = Case.Of(options, index);
            target = input.Target.Name;
            var before = GC.GetAllocatedBytesForCurrentThread();
            input.Try();
            var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
            return allocated <= Bounds.AllocatedBytes(input.Target.Expanded(input.Bytes.Length)) ? null
                : string.Create(CultureInfo.InvariantCulture, $"{target}: {allocated / 1_000_000} MB were asked for, for {input.Bytes.Length} bytes");
        }
        catch (FaultException e)
        {
            return OneLine($"{target}: {e.Message}");
        }
        catch (Exception e) // Any at all: that is what is looked for.
        {
            return OneLine($"{target}: {e.GetType().Name}: {e.Message} {string.Join(" < ", (e.StackTrace ?? "").Split('\n').Take(4).Select(l => l.Trim()))}");
        }
    }

    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
}
