using System.Buffers.Binary;

namespace DailyAdjust.Core.Weather;

/// <summary>
/// One day of one forecast as bytes: when it was made (UTC ticks, 64 bits, little-endian), then its readings as <see cref="ReadingBlock"/> writes them.
/// </summary>
public static class ForecastBlock
{
    private const int IssuedLength = 8;

    public static byte[] Write(IssuedForecast forecast)
    {
        var readings = ReadingBlock.Write(forecast.Readings);
        var block = new byte[IssuedLength + readings.Length];
        BinaryPrimitives.WriteInt64LittleEndian(block, forecast.Issued.UtcTicks);
        readings.CopyTo(block, IssuedLength);
        return block;
    }

    /// <exception cref="InvalidDataException">The bytes are not such a block: they were damaged.</exception>
    public static IssuedForecast Read(ReadOnlySpan<byte> block)
    {
        if (block.Length < IssuedLength
            || BinaryPrimitives.ReadInt64LittleEndian(block) is var ticks && (ticks < 0 || ticks > DateTimeOffset.MaxValue.UtcTicks))
        {
            throw new InvalidDataException("these bytes are not a block of a forecast");
        }

        return new(new DateTimeOffset(ticks, TimeSpan.Zero), ReadingBlock.Read(block[IssuedLength..]));
    }
}
