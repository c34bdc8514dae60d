namespace DailyAdjust.Ledger;

/// <summary>
/// One writer per ledger: whoever holds <c>ledger.lock</c> beside it. The operating system lets go of it when the
/// process ends, however it ends; the file itself stays, for deleting it would let two writers in. It says who holds it.
/// </summary>
internal sealed class LedgerLock : IDisposable
{
    private const int StepMs = 50;

    private readonly FileStream _file;

    private LedgerLock(FileStream file) => _file = file;

    /// <exception cref="LedgerException">Busy after <paramref name="wait"/>; Denied, Missing, Full or Io.</exception>
    public static LedgerLock Take(string ledgerPath, TimeSpan wait)
    {
        var path = Path.ChangeExtension(ledgerPath, ".lock");
        for (var waited = TimeSpan.Zero; ; waited += TimeSpan.FromMilliseconds(StepMs))
        {
            try
            {
                return new LedgerLock(LockFile.Take(path));
            }
            catch (IOException e) when (LockFile.IsHeld(e))
            {
                if (waited >= wait)
                {
                    throw new LedgerException(
                        LedgerTrouble.Busy,
                        $"Another process ({LockFile.HolderOf(path) ?? "the service, or a command"}) is writing to the ledger {ledgerPath}: it holds {path}. Try again when it has finished.",
                        e);
                }
            }
            catch (Exception e) when (Troubles.From(e, ledgerPath) is not null)
            {
                throw Troubles.From(e, ledgerPath)!;
            }

            Thread.Sleep(StepMs);
        }
    }

    public void Dispose() => _file.Dispose();
}
