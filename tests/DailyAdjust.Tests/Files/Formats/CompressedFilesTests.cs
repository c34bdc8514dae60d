using System.IO.Compression;
using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>A compressed file is read as if it were not, or refused with its reason.</summary>
[Trait("Promise", "11")]
public sealed class CompressedFilesTests
{
    private static readonly byte[] Month = Bytes(GhcnText.Month("TMAX", "202606", new() { [1] = "289  7" }) + "\n");

    private static readonly byte[] Station = Bytes(StationFile.PlainHeader + "2026-06-01 01:00,20.0,1.0,0.00\n");

    private static readonly WeatherSource Ghcn = FormatFile.Source("ghcn-daily");

    [Fact]
    public void GzipAndZipAreReadByWhatTheyAre()
    {
        Assert.Equal(28.9, Assert.Single(FormatFile.Read(Ghcn, Packing.Gzip(Month)).Readings).AirTemperatureMaxC);
        Assert.Equal(28.9, Assert.Single(FormatFile.Read(Ghcn, Packing.Zip(("station.dly", Month))).Readings).AirTemperatureMaxC);
        Assert.Equal(20, Assert.Single(FormatFile.Read(StationFile.Plain, Packing.Gzip(Station)).Readings).AirTemperatureC);
        Assert.Equal(20, Assert.Single(FormatFile.Read(StationFile.Plain, Packing.Zip(("a.csv", Station))).Readings).AirTemperatureC);
    }

    [Fact]
    public void OfSeveralFilesTheOneOfTheFormatIsTaken()
    {
        var read = FormatFile.Read(Ghcn, Packing.Zip(("readme.txt", Bytes("About these data\n")), ("folder/", []), ("__MACOSX/x.dly", Month), ("data/x.dly", Month), ("map.png", [0x89, 0x50, 0, 0])));

        Assert.Equal((1, 0, 0), read.Counts);
        Assert.Equal(20, Assert.Single(FormatFile.Read(StationFile.Plain, Packing.Zip(("x.dly", Month), ("a.csv", Station))).Readings).AirTemperatureC);
    }

    public static TheoryData<byte[], string> Refused() => new()
    {
        { Packing.Zip(("a.dly", Month), ("b.dly", Month)), "several of the files in it are of this format: a.dly, b.dly" },
        { Packing.Zip(("a.txt", Station), ("b.txt", Station)), "none of the files in it is of this format: a.txt, b.txt" },
        { Packing.Zip(), "there is no file in it" },
        { Packing.Gzip(Month)[..^1], "its contents do not fit its check sum: it is cut or damaged" },
        { Packing.Gzip(Month)[..^9], "its contents do not fit its check sum: it is cut or damaged" },
        { Packing.Gzip(Month)[..12], "it is cut" },
        { Packing.Zip(("a.dly", Month))[..^9], "it is cut or damaged" },
        { Changed(Packing.Gzip(Month), 40), "it is damaged" },
        { Changed(Stored(Month), 60), "its contents do not fit its check sum: it is cut or damaged" },
        { Packing.Gzip(Blanks(30_000_000)), "it expands to more than 20 MB, which no weather file does" },
        { Packing.Zip(("a.dly", Blanks(30_000_000))), "it expands to more than 20 MB, which no weather file does" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void WhatCannotBeReadToItsEndIsRefused(byte[] bytes, string why)
    {
        var read = FormatFile.Read(Ghcn, bytes);

        Assert.True(read.Report.FileRefused);
        Assert.Equal((0, 0, 0), read.Counts);
        var told = Assert.Single(read.Told());
        Assert.StartsWith("the file is compressed, but " + why, told.What, StringComparison.Ordinal);
    }

    [Fact]
    public void AnArchiveInAnArchiveIsNotOpened() =>
        Assert.Equal("the file is compressed", Assert.Single(FormatFile.Read(Ghcn, Packing.Zip(("a.gz", Packing.Gzip(Month)))).Told()).What);

    [Fact]
    public void ADamagedArchiveNeverThrowsAndNeverGivesAnotherNumber()
    {
        foreach (var good in new[] { Packing.Gzip(Month), Packing.Zip(("a.dly", Month)), Packing.Zip(("a.txt", Station), ("b.dly", Month)), Stored(Month) })
        {
            for (var at = 0; at < good.Length; at++)
            {
                foreach (var bytes in new[] { good[..at], Changed(good, at) })
                {
                    var read = FormatFile.Read(Ghcn, bytes);
                    Assert.True(read.Report.FileRefused || read.Readings is [{ AirTemperatureMaxC: 28.9 }] || read.Report.RowsRefused > 0, $"{at} of {good.Length}");
                    Assert.True(read.Report.FileRefused || read.Readings.All(r => r.AirTemperatureMaxC.Equals(28.9)));
                }
            }
        }
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    private static byte[] Blanks(int count)
    {
        var blanks = new byte[count];
        Array.Fill(blanks, (byte)' ');
        return blanks;
    }

    private static byte[] Changed(byte[] bytes, int at)
    {
        byte[] changed = [.. bytes];
        changed[at] ^= 0x55;
        return changed;
    }

    private static byte[] Stored(byte[] bytes) => Packing.Zip(CompressionLevel.NoCompression, ("a.dly", bytes));
}
