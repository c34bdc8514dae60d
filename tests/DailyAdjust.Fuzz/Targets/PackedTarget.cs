using DailyAdjust.Fuzz.Checks;
using DailyAdjust.Tests.Files.Formats;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>Compressed weather files: damaged before they were packed, after it, or packed to explode.</summary>
internal sealed class PackedTarget() : Target("packed", 8, [.. GoodFiles.ByLines.Where(f => f.Source is not null).SelectMany(f => Packed(f.Name, Bytes(string.Join('\n', f.Header.Concat(f.Rows)) + "\n")))])
{
    private static readonly GoodFile[] Files = [.. GoodFiles.ByLines.Where(f => f.Source is not null)];

    /// <summary>A bomb costs a hundred others: seldom.</summary>
    private const int OneBombIn = 400;

    /// <summary>Of a bomb, what is read before it is known for one.</summary>
    public override long Expanded(long bytes) => Math.Max(bytes, 300_000);

    public override void Try(byte[] bytes, Random random)
    {
        var file = Files[random.Next(Files.Length)];
        var packed = random.Next(OneBombIn) == 0 ? Bomb(random)
            : random.Next(3) == 0 ? Packed("damaged before", bytes)[random.Next(3)]
            : bytes;
        var clock = WeatherFile.Clock(random);
        var read = WeatherFile.Read(file.Source, packed, clock);
        Hold.Same(read, WeatherFile.Read(file.Source, packed, clock));
        WeatherFile.Check(read, text: null, clock);
    }

    private static byte[][] Packed(string name, byte[] plain) =>
        [Packing.Gzip(plain), Packing.Zip((name, plain)), Packing.Zip(("readme.txt", Bytes("about\n")), ("data/" + name, plain), ("../" + name, plain))];

    private static byte[] Bomb(Random random)
    {
        var blank = new byte[random.Next(1_000_000, 24_000_000)];
        Array.Fill(blank, (byte)"\n 0,\0"[random.Next(5)]);
        return random.Next(2) == 0 ? Packing.Gzip(blank) : Packing.Zip(("a.csv", blank), ("b.csv", blank));
    }
}
