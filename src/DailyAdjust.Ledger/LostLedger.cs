namespace DailyAdjust.Ledger;

/// <summary>A ledger that was there and is not any more: nobody begins an empty one in its place, whose sheets would take the numbers of those that were issued and whose copies would push the good ones out.</summary>
internal static class LostLedger
{
    /// <param name="path">Of ledger.db, which has no file or an empty one.</param>
    /// <exception cref="LedgerException">Lost: beside it lies what only its own work leaves there.</exception>
    public static void Refuse(string path)
    {
        if (File.Exists(path) && new FileInfo(path).Length > 0)
        {
            return;
        }

        LedgerRestore.RequireNoneCutShort(path);
        var folder = Path.GetDirectoryName(path)!;
        if (Troubles.Translated(path, () => Holds(SiteLedger.BackupsOf(path)) || Holds(Path.Combine(folder, "reports"))))
        {
            throw new LedgerException(
                LedgerTrouble.Lost,
                $"The ledger {path} is {(File.Exists(path) ? "empty" : "gone")}, but backups or reports of it lie there: somebody took it away, or the disk lost it. No empty one is begun in its place. "
                    + $"Put it back, or restore a backup: `dailyadjust restore` lists them. Only to begin the course anew, move backups and reports out of {folder} first.");
        }
    }

    private static bool Holds(string folder) => Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any(e => !Path.GetFileName(e).StartsWith('.'));
}
