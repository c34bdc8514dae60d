namespace DailyAdjust.Service.Home;

/// <summary>Calls into a file system that may never answer (a share that went away): after a while nobody waits any more.</summary>
internal static class Patient
{
    /// <param name="call">Runs on a thread of its own, and keeps it until the file system answers.</param>
    /// <param name="patience">How long is waited.</param>
    /// <exception cref="IOException">No answer by then.</exception>
    public static T Call<T>(Func<T> call, TimeSpan patience)
    {
        var answer = Task.Factory.StartNew(call, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        return Task.WhenAny(answer, Task.Delay(patience)).GetAwaiter().GetResult() == answer
            ? answer.GetAwaiter().GetResult()
            : throw new IOException("The folder does not answer.");
    }
}
