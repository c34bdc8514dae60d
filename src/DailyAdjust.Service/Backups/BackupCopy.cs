using System.Security.Cryptography;
using DailyAdjust.Ledger;

namespace DailyAdjust.Service.Backups;

/// <summary>Copies a file to another disk: under another name until it is read back and found the same.</summary>
internal static class BackupCopy
{
    /// <exception cref="IOException">It could not be written, or reads back as something else; nothing is left of it.</exception>
    public static void Make(string from, string to)
    {
        var part = to + ".part";
        try
        {
            using (var source = File.OpenRead(from))
            using (var target = new FileStream(part, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                source.CopyTo(target);
                OnDisk.SyncFile(target);
            }

            if (!ShaOf(from).AsSpan().SequenceEqual(ShaOf(part)))
            {
                throw new IOException($"{part} does not read back as it was written. Look after that disk.");
            }

            File.Move(part, to, overwrite: true);
            OnDisk.SyncFolder(Path.GetDirectoryName(to)!);
        }
        finally
        {
            File.Delete(part);
        }
    }

    private static byte[] ShaOf(string path)
    {
        using var file = File.OpenRead(path);
        return SHA256.HashData(file);
    }
}
