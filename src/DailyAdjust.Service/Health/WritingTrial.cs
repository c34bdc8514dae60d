namespace DailyAdjust.Service.Health;

/// <summary>Whether a folder can be written: by writing, since rights, mounts and quotas each say it in their own way.</summary>
internal static class WritingTrial
{
    private static readonly byte[] Something = new byte[4096];

    /// <summary>Null = a file can be written there; it is gone again.</summary>
    public static string? WhatIsWrong(string folder)
    {
        var path = Path.Combine(folder, FormattableString.Invariant($".trial.{Environment.ProcessId}.tmp"));
        try
        {
            using var file = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0, FileOptions.DeleteOnClose);
            file.Write(Something);
            return null;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return $"{folder} cannot be written ({failure.Message.TrimEnd('.')}).";
        }
    }
}
