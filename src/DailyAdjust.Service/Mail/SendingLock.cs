using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Mail;

/// <summary>
/// Only one process sends the mail of a site: whoever holds <c>outbox.lock</c>. The operating system lets go of it when the process ends, so a message that
/// is found handed over while the lock is free was left so by a crash.
/// </summary>
internal sealed class SendingLock : IDisposable
{
    private readonly FileStream _file;

    private SendingLock(FileStream file) => _file = file;

    /// <returns>Null = somebody else sends.</returns>
    public static SendingLock? Take(SiteFolder folder)
    {
        try
        {
            return new(new FileStream(Path.Combine(folder.Path, "outbox.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException held) when (held.GetType() == typeof(IOException) && File.Exists(Path.Combine(folder.Path, "outbox.lock")))
        {
            return null;
        }
    }

    public void Dispose() => _file.Dispose();
}
