using System.Buffers;
using System.Numerics;
using System.Text;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>
/// A day's readings as bytes: the same readings give the same bytes on any machine, and come back bit for bit.
/// </summary>
/// <remarks>
/// Layout 1: the byte 1; the count; a 16-bit little-endian mask of the values that any reading has; then the begins
/// (UTC ticks, as change of the change from row to row) and the lengths (ticks, as change); then, value by value of the mask, each
/// reading's 64 bits combined with the one before it by exclusive or: one byte that says how many zero bytes lead (high half)
/// and trail (low half), and the bytes between them. Counts and changes are 7-bit groups, the lowest first; changes fold the sign into the lowest bit.
/// Layout 2 is the byte 2 and the same, and after it the marks: their count, and of each the row, the quantity, the kind and the raw text (its length in
/// bytes, then UTF-8). A block without marks is written in layout 1.
/// </remarks>
public static class ReadingBlock
{
    private const byte Layout = 1;
    private const byte LayoutWithMarks = 2;
    private const int LongestRaw = 200;

    private static readonly Func<Reading, double>[] Values =
    [
        r => r.AirTemperatureC, r => r.AirTemperatureMaxC, r => r.AirTemperatureMinC,
        r => r.RelativeHumidityPercent, r => r.RelativeHumidityMaxPercent, r => r.RelativeHumidityMinPercent,
        r => r.DewPointC, r => r.WindSpeedMPerS, r => r.SolarRadiationMJPerM2, r => r.SunshineH, r => r.RainMm, r => r.ReferenceEtMm,
        r => r.RainChancePercent, r => r.RainCounterMm,
    ];

    /// <summary>The readings as bytes, in the order given.</summary>
    public static byte[] Write(IReadOnlyList<Reading> readings)
    {
        var columns = ArrayPool<double>.Shared.Rent(Values.Length * readings.Count);
        try
        {
            return Pack(readings, columns);
        }
        finally
        {
            ArrayPool<double>.Shared.Return(columns);
        }
    }

    /// <param name="readings">In the order given.</param>
    /// <param name="columns">Room for all of their values, one quantity after another.</param>
    private static byte[] Pack(IReadOnlyList<Reading> readings, Span<double> columns)
    {
        var count = readings.Count;
        var mask = 0;
        var marked = false;
        for (var row = 0; row < count; row++)
        {
            var reading = readings[row];
            marked |= reading.Marks.Count > 0;
            for (var v = 0; v < Values.Length; v++)
            {
                var value = Values[v](reading);
                columns[(v * count) + row] = value;
                mask |= double.IsNaN(value) ? 0 : 1 << v;
            }
        }

        using var bytes = new BlockWriter(16 + (count * (4 + (9 * BitOperations.PopCount((uint)mask)))));
        bytes.Add(marked ? LayoutWithMarks : Layout);
        bytes.AddUnsigned((ulong)count);
        bytes.Add((byte)mask);
        bytes.Add((byte)(mask >> 8));
        var (begin, step, length) = (0L, 0L, 0L);
        foreach (var reading in readings)
        {
            var nextStep = reading.Begin.UtcTicks - begin;
            var nextLength = reading.End.UtcTicks - reading.Begin.UtcTicks;
            bytes.AddSigned(nextStep - step);
            bytes.AddSigned(nextLength - length);
            (begin, step, length) = (reading.Begin.UtcTicks, nextStep, nextLength);
        }

        for (var v = 0; v < Values.Length; v++)
        {
            if ((mask & (1 << v)) != 0)
            {
                bytes.AddColumn(columns.Slice(v * count, count));
            }
        }

        if (marked)
        {
            WriteMarks(bytes, readings);
        }

        return bytes.ToArray();
    }

    /// <summary>The readings of a block that <see cref="Write"/> made.</summary>
    /// <exception cref="InvalidDataException">The bytes are not such a block: they were damaged.</exception>
    public static IReadOnlyList<Reading> Read(ReadOnlySpan<byte> block)
    {
        var layout = Next(ref block);
        if (layout is not (Layout or LayoutWithMarks))
        {
            throw new InvalidDataException(FormattableString.Invariant($"readings in layout {layout}, which this version does not know"));
        }

        var count = ReadUnsigned(ref block);
        var mask = Next(ref block) | (Next(ref block) << 8);
        if (count > (ulong)block.Length || mask >> Values.Length != 0)
        {
            throw Damaged();
        }

        var times = new (DateTimeOffset Begin, DateTimeOffset End)[count];
        var (begin, step, length) = (0L, 0L, 0L);
        for (var i = 0; i < times.Length; i++)
        {
            step += ReadSigned(ref block);
            length += ReadSigned(ref block);
            begin += step;
            times[i] = (Instant(begin), Instant(begin + length));
        }

        var columns = new double[Values.Length][];
        for (var v = 0; v < Values.Length; v++)
        {
            columns[v] = (mask & (1 << v)) != 0 ? ReadColumn(ref block, times.Length) : [];
        }

        var marks = layout == LayoutWithMarks ? ReadMarks(ref block, times.Length) : [];
        if (!block.IsEmpty)
        {
            throw Damaged();
        }

        return [.. times.Select((time, i) => new Reading
        {
            Begin = time.Begin,
            End = time.End,
            AirTemperatureC = At(columns[0], i),
            AirTemperatureMaxC = At(columns[1], i),
            AirTemperatureMinC = At(columns[2], i),
            RelativeHumidityPercent = At(columns[3], i),
            RelativeHumidityMaxPercent = At(columns[4], i),
            RelativeHumidityMinPercent = At(columns[5], i),
            DewPointC = At(columns[6], i),
            WindSpeedMPerS = At(columns[7], i),
            SolarRadiationMJPerM2 = At(columns[8], i),
            SunshineH = At(columns[9], i),
            RainMm = At(columns[10], i),
            ReferenceEtMm = At(columns[11], i),
            RainChancePercent = At(columns[12], i),
            RainCounterMm = At(columns[13], i),
            Marks = marks.TryGetValue(i, out var ofRow) ? (IReadOnlyList<ValueMark>)ofRow : [],
        })];
    }

    private static void WriteMarks(BlockWriter bytes, IReadOnlyList<Reading> readings)
    {
        bytes.AddUnsigned((ulong)readings.Sum(r => r.Marks.Count));
        for (var row = 0; row < readings.Count; row++)
        {
            foreach (var mark in readings[row].Marks)
            {
                var raw = Encoding.UTF8.GetBytes(mark.Raw.Length <= LongestRaw ? mark.Raw : mark.Raw[..LongestRaw]);
                bytes.AddUnsigned((ulong)row);
                bytes.Add((byte)mark.Quantity);
                bytes.Add((byte)mark.Kind);
                bytes.AddUnsigned((ulong)raw.Length);
                bytes.Add(raw);
            }
        }
    }

    private static Dictionary<int, List<ValueMark>> ReadMarks(ref ReadOnlySpan<byte> block, int rows)
    {
        var marks = new Dictionary<int, List<ValueMark>>();
        for (var left = ReadUnsigned(ref block); left > 0; left--)
        {
            var row = ReadUnsigned(ref block);
            var (quantity, kind, length) = ((WeatherQuantity)Next(ref block), (MarkKind)Next(ref block), ReadUnsigned(ref block));
            if (row >= (ulong)rows || length > (ulong)block.Length || !Enum.IsDefined(quantity) || !Enum.IsDefined(kind))
            {
                throw Damaged();
            }

            if (!marks.TryGetValue((int)row, out var ofRow))
            {
                marks.Add((int)row, ofRow = []);
            }

            ofRow.Add(new ValueMark(quantity, kind, Encoding.UTF8.GetString(block[..(int)length])));
            block = block[(int)length..];
        }

        return marks;
    }

    private static double At(double[] column, int row) => column.Length == 0 ? double.NaN : column[row];

    private static double[] ReadColumn(ref ReadOnlySpan<byte> block, int count)
    {
        var column = new double[count];
        var before = 0UL;
        for (var row = 0; row < count; row++)
        {
            var zeros = Next(ref block);
            var (leading, trailing) = (zeros >> 4, zeros & 15);
            if (leading + trailing > 8)
            {
                throw Damaged();
            }

            var difference = 0UL;
            for (var i = leading; i < 8 - trailing; i++)
            {
                difference = (difference << 8) | Next(ref block);
            }

            // A shift by 64 would be a shift by 0; it only arises where the difference is 0 already.
            before ^= difference << (8 * (trailing & 7));
            column[row] = BitConverter.UInt64BitsToDouble(before);
        }

        return column;
    }

    private static long ReadSigned(ref ReadOnlySpan<byte> block)
    {
        var folded = ReadUnsigned(ref block);
        return (long)(folded >> 1) ^ -(long)(folded & 1);
    }

    private static ulong ReadUnsigned(ref ReadOnlySpan<byte> block)
    {
        var value = 0UL;
        for (var shift = 0; shift < 64; shift += 7)
        {
            var next = Next(ref block);
            value |= (ulong)(next & 0x7F) << shift;
            if (next < 0x80)
            {
                return value;
            }
        }

        throw Damaged();
    }

    private static byte Next(ref ReadOnlySpan<byte> block)
    {
        if (block.IsEmpty)
        {
            throw Damaged();
        }

        var next = block[0];
        block = block[1..];
        return next;
    }

    private static DateTimeOffset Instant(long ticks) =>
        ticks >= 0 && ticks <= DateTimeOffset.MaxValue.UtcTicks ? new DateTimeOffset(ticks, TimeSpan.Zero) : throw Damaged();

    private static InvalidDataException Damaged() => new("these bytes are not a block of readings");
}
