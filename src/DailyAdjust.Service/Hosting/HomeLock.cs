using DailyAdjust.Ledger;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Hosting;

/// <summary>
/// One service per home, and none while a ledger is being replaced: whoever holds <c>serve.lock</c> in the home. Commands need it not; they and the service take turns at
/// each ledger's own lock.
/// </summary>
internal static class HomeLock
{
    /// <returns>To be closed in the end; null = the lock cannot be taken or made on this disk, and <paramref name="why"/> says so. Then nothing else can be written either.</returns>
    /// <param name="home">The home; its folder is there.</param>
    /// <param name="held">What to say when another process holds it, after who does.</param>
    /// <param name="why">Null = it was taken.</param>
    /// <exception cref="IOException">Another process holds it.</exception>
    public static FileStream? Take(HomeFolder home, string held, out string? why)
    {
        why = null;
        try
        {
            return LockFile.Take(home.LockFile);
        }
        catch (IOException e) when (LockFile.IsHeld(e))
        {
            throw new IOException($"The service runs on {home.Path} already ({LockFile.HolderOf(home.LockFile) ?? "another process"}). {held}", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            why = e.Message;
            return null;
        }
    }
}
