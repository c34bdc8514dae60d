namespace DailyAdjust.Ledger;

/// <summary>
/// One writer per ledger: whoever holds <c>ledger.lock</c> beside it. The operating system lets go of it when the
/// process ends, however it ends; the file itself stays, for deleting it would let two writers in.
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
                return new LedgerLock(new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
            }
            catch (IOException e) when (IsHeld(e))
            {
                if (waited >= wait)
                {
                    throw new LedgerException(
                        LedgerTrouble.Busy,
                        $"Another process (the service, or a command) is writing to the ledger {ledgerPath}: it holds {path}. Try again when it has finished.",
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

    // EWOULDBLOCK is 11 on Linux and 35 on macOS; a sharing violation is 32 and a lock violation 33 on Windows.
    private static bool IsHeld(IOException e) =>
        e.GetType() == typeof(IOException) && (e.HResult & 0xFFFF) is 11 or 35 or 32 or 33;
}
