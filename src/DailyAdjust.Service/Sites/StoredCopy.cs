using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Sites;

/// <summary>A stored file's bytes as a file for a while: several readers may read it beside the ledger, and none of it lies in memory.</summary>
internal static class StoredCopy
{
    private const int BlockSize = 1 << 16;

    /// <exception cref="IOException">There is no room for it.</exception>
    public static IncomingFile Of(OpenSite site, long seq)
    {
        var path = Path.Combine(site.Folder.Path, FormattableString.Invariant($".reading-{seq}.tmp"));
        var handle = File.OpenHandle(path, FileMode.Create, FileAccess.ReadWrite, FileShare.Delete, FileOptions.DeleteOnClose);
        try
        {
            if (!OperatingSystem.IsWindows())
            {
                // Without a name from here on: nothing is left behind if the program is killed.
                File.Delete(path);
            }

            using var bytes = site.Ledger.Files.OpenRead(seq);
            var block = new byte[BlockSize];
            var at = 0L;
            while (bytes.Read(block) is var count && count > 0)
            {
                RandomAccess.Write(handle, block.AsSpan(0, count), at);
                at += count;
            }

            return new IncomingFile(handle);
        }
        catch
        {
            handle.Dispose();
            throw;
        }
    }
}
