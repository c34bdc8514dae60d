namespace DailyAdjust.Core.Phrases;

/// <summary>A language that phrases can be said in.</summary>
/// <param name="Code">As pages name it (BCP 47): "en", "es".</param>
/// <param name="Translate">The template in that language of an English template; the English one where it has none. Holes keep their numbers, in any order.</param>
public sealed record Language(string Code, Func<string, string> Translate)
{
    /// <summary>Templates are written in it.</summary>
    public static Language English { get; } = new("en", template => template);
}
