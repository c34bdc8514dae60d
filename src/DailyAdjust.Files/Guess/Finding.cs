namespace DailyAdjust.Files.Guess;

/// <summary>One thing that was made out about a file.</summary>
/// <param name="Key">As site.yaml calls it: "interval", "pattern", "columns.rain".</param>
/// <param name="Value">As site.yaml writes it, or in plain words.</param>
/// <param name="IsSure">The file itself proves it; otherwise a person has to look.</param>
/// <param name="Why">What it was made out from; for an unsure one also what else it could be. Without a full stop.</param>
public sealed record Finding(string Key, string Value, bool IsSure, string Why);

/// <summary>A column that the proposal does not use.</summary>
/// <param name="Header">As the file spells it.</param>
/// <param name="Why">Without a full stop.</param>
public sealed record LeftColumn(string Header, string Why);
