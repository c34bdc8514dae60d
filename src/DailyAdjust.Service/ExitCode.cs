namespace DailyAdjust.Service;

/// <summary>What a command ends with.</summary>
public static class ExitCode
{
    public const int Done = 0;

    /// <summary>It could not be done: a sick disk, no site, a file that was refused.</summary>
    public const int Failed = 1;

    /// <summary>What was given cannot be used.</summary>
    public const int WrongInput = 2;
}
