namespace DailyAdjust.Fuzz.Processes;

/// <summary>What one input may take.</summary>
internal static class Bounds
{
    /// <summary>Processor time of its process, s; a shared machine makes the clock on the wall say little.</summary>
    public const int ProcessorSeconds = 10;

    /// <summary>On the clock on the wall, s: then it waits for something.</summary>
    public const int WallSeconds = 120;

    /// <summary>Of a child, bytes: above this it is out of memory.</summary>
    public const long HeapBytes = 400_000_000;

    /// <summary>Of the thread that reads, bytes: the least that a supported machine gives.</summary>
    public const int StackBytes = 1 << 20;

    /// <summary>Memory that reading an input may ask for in all, whether it is given back or not: buffers and tables, and so much for each byte of the input.</summary>
    public static long AllocatedBytes(long inputBytes) => 64_000_000 + (8_000 * inputBytes);
}
