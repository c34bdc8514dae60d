namespace DailyAdjust.Ledger;

/// <summary>
/// A ledger lies on a disk of this machine. On one that other machines share, locks and the shared memory of SQLite's log do not hold, so two programs could
/// write at once and neither would know.
/// Source: https://www.sqlite.org/wal.html, "All processes using a database must be on the same host computer".
/// </summary>
internal static class LocalDisk
{
    /// <summary>NTFS and exFAT of a local disk: .NET takes every "fuse" for a network.</summary>
    private const string LocalBlockDevice = "fuseblk";

    /// <summary>Disks of other machines that .NET does not tell as such.</summary>
    private static readonly HashSet<string> _shared = new(StringComparer.Ordinal)
    {
        "smb3", "davfs", "vboxsf", "fuse.sshfs", "fuse.rclone", "fuse.s3fs", "fuse.davfs", "fuse.davfs2", "fuse.smbnetfs", "fuse.gvfsd-fuse",
        "fuse.glusterfs", "fuse.ceph-fuse", "fuse.curlftpfs", "fuse.nfs", "fuse.vmhgfs-fuse", "fuse.juicefs", "fuse.gcsfuse", "fuse.blobfuse2",
    };

    /// <exception cref="LedgerException">Denied: it is no disk of this machine.</exception>
    public static void Require(string ledgerPath)
    {
        if (SharedKind(ledgerPath) is { } kind)
        {
            throw new LedgerException(
                LedgerTrouble.Denied,
                $"The ledger {ledgerPath} lies on a network disk ({kind}), where two programs cannot be kept apart. "
                    + "Put the home folder on a disk of this computer; files may be fetched from a share, and backups may go to one.");
        }
    }

    private static string? SharedKind(string ledgerPath)
    {
        try
        {
            var real = new FileInfo(ledgerPath).ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? ledgerPath;
            if (OperatingSystem.IsWindows() && real.StartsWith(@"\\", StringComparison.Ordinal))
            {
                return "a share";
            }

            var disk = new DriveInfo(OperatingSystem.IsWindows() ? Path.GetPathRoot(real)! : Path.GetDirectoryName(real)!);
            var kind = disk.DriveFormat;
            return (disk.DriveType == DriveType.Network && kind is not LocalBlockDevice) || _shared.Contains(kind) ? kind : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            // No such folder, no right to it: opening the ledger says so.
            return null;
        }
    }
}
