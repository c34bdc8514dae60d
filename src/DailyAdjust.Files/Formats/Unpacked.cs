using System.Buffers.Binary;
using System.IO.Compression;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>
/// Reads weather files that are compressed as if they were not: gzip, or a zip archive, known by their first bytes and not by their name. Of an archive with several
/// files the one is taken that is of the format.
/// </summary>
internal static class Unpacked
{
    private const int MostEntries = 1000;
    private const int NamesTold = 10;

    /// <summary>Member header and trailer of gzip: less is none.</summary>
    private const int ShortestGzip = 18;

    /// <summary>Reads the bytes, expanded where they are compressed.</summary>
    /// <param name="file">Its name, for the problem.</param>
    /// <param name="stream">Its bytes; can seek, is left open.</param>
    /// <param name="fits">Whether the first lines of a text are of the format.</param>
    /// <param name="read">Reads the text.</param>
    /// <param name="refuse">Says why nothing could be read, or not all.</param>
    public static T Read<T>(string file, Stream stream, Func<LineReader, bool> fits, Func<Stream, T> read, Func<Problem, T> refuse)
    {
        Span<byte> head = stackalloc byte[4];
        var start = stream.Position;
        head = head[..stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false)];
        stream.Position = start;
        try
        {
            return head switch
            {
                [0x1F, 0x8B, ..] => Gzip(stream, read),
                [(byte)'P', (byte)'K', 3 or 5, 4 or 6] => Zip(stream, fits, read),
                _ => read(stream),
            };
        }
        catch (UnpackException e)
        {
            return refuse(new Problem(file, 1, 1, $"the file is compressed, but {e.Message}", "Nothing of it is used; drop the file again when it is complete, or not compressed"));
        }
    }

    private static T Gzip<T>(Stream stream, Func<Stream, T> read)
    {
        var (start, length) = (stream.Position, stream.Length - stream.Position);
        if (length < ShortestGzip)
        {
            throw new UnpackException("it is cut");
        }

        Span<byte> trailer = stackalloc byte[8];
        stream.Position = stream.Length - trailer.Length;
        stream.ReadExactly(trailer);
        stream.Position = start;
        var expected = (BinaryPrimitives.ReadUInt32LittleEndian(trailer), (long)BinaryPrimitives.ReadUInt32LittleEndian(trailer[4..]));
        using var expanded = new ExpandedStream(new GZipStream(stream, CompressionMode.Decompress, leaveOpen: true), length, expected);
        return read(expanded);
    }

    private static T Zip<T>(Stream stream, Func<LineReader, bool> fits, Func<Stream, T> read)
    {
        using var archive = Open(() => new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true));
        var entries = Open(() => archive.Entries).Where(entry => entry.Name.Length > 0 && !entry.FullName.StartsWith("__MACOSX/", StringComparison.Ordinal)).Take(MostEntries + 1).ToList();
        using var expanded = Open(Chosen(entries, fits, stream.Length), stream.Length);
        return read(expanded);
    }

    private static ZipArchiveEntry Chosen(List<ZipArchiveEntry> entries, Func<LineReader, bool> fits, long packedBytes)
    {
        if (entries.Count is 0 or > MostEntries)
        {
            throw new UnpackException(entries.Count == 0 ? "there is no file in it" : FormattableString.Invariant($"there are more than {MostEntries} files in it"));
        }

        if (entries.Count == 1)
        {
            return entries[0];
        }

        var fitting = entries.FindAll(entry => Fits(entry, fits, packedBytes));
        return fitting.Count == 1 ? fitting[0]
            : throw new UnpackException(fitting.Count == 0
                ? $"none of the files in it is of this format: {Names(entries)}"
                : $"several of the files in it are of this format: {Names(fitting)}");
    }

    /// <summary>A file that is damaged or of another kind is not the one that is looked for.</summary>
    private static bool Fits(ZipArchiveEntry entry, Func<LineReader, bool> fits, long packedBytes)
    {
        try
        {
            using var expanded = Open(entry, packedBytes);
            var text = new DecodedText(expanded);
            return text.NotText is null && fits(new LineReader(text));
        }
        catch (UnpackException)
        {
            return false;
        }
    }

    private static ExpandedStream Open(ZipArchiveEntry entry, long packedBytes) =>
        entry.IsEncrypted
            ? throw new UnpackException($"{Shown.Short(entry.FullName)} in it asks for a password")
            : new(Open(entry.Open), Math.Min(packedBytes, entry.CompressedLength), (entry.Crc32, entry.Length));

    /// <summary>What the library throws at archives that are cut or damaged; seeking to places that are not there gives an <see cref="IOException"/>.</summary>
    private static T Open<T>(Func<T> open)
    {
        try
        {
            return open();
        }
        catch (Exception e) when (e is InvalidDataException or IOException or NotSupportedException or ArgumentException or OverflowException)
        {
            throw new UnpackException("it is cut or damaged", e);
        }
    }

    private static string Names(List<ZipArchiveEntry> entries) =>
        string.Join(", ", entries.Take(NamesTold).Select(entry => Shown.Short(entry.FullName))) + (entries.Count > NamesTold ? " ..." : "");
}
