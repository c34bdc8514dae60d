namespace DailyAdjust.Service.Health;

/// <summary>How a thing stands, the worst last.</summary>
public enum Standing
{
    Well,

    /// <summary>Somebody should look at it in the next days; tomorrow's sheet does not hang on it.</summary>
    Look,

    /// <summary>A sheet is wrong, missing or unprotected, or soon will be.</summary>
    Alarm,
}

/// <summary>One line of the doctor.</summary>
/// <param name="Standing">How it stands.</param>
/// <param name="Place">The site's name; empty = the whole installation.</param>
/// <param name="Subject">One or two words: "weather", "sheet", "backup".</param>
/// <param name="Sentence">What was found, and what to do where something is wrong.</param>
public sealed record Finding(Standing Standing, string Place, string Subject, string Sentence)
{
    public static Finding Well(string place, string subject, string sentence) => new(Standing.Well, place, subject, sentence);

    public static Finding Look(string place, string subject, string sentence) => new(Standing.Look, place, subject, sentence);

    public static Finding Alarm(string place, string subject, string sentence) => new(Standing.Alarm, place, subject, sentence);
}
