using System.IO.Compression;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>Compressed files as they arrive.</summary>
internal static class Packing
{
    public static byte[] Gzip(byte[] bytes)
    {
        using var into = new MemoryStream();
        using (var gzip = new GZipStream(into, CompressionLevel.Optimal, leaveOpen: true))
        {
            gzip.Write(bytes);
        }

        return into.ToArray();
    }

    public static byte[] Zip(params (string Name, byte[] Bytes)[] files) => Zip(CompressionLevel.Optimal, files);

    public static byte[] Zip(CompressionLevel level, params (string Name, byte[] Bytes)[] files)
    {
        using var into = new MemoryStream();
        using (var archive = new ZipArchive(into, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, bytes) in files)
            {
                using var entry = archive.CreateEntry(name, level).Open();
                entry.Write(bytes);
            }
        }

        return into.ToArray();
    }
}
