namespace DailyAdjust.Ledger.Inputs;

/// <summary>Numbers what arrives.</summary>
internal sealed class InputOrder(LedgerDb db)
{
    public const string File = "file";
    public const string Log = "log";
    public const string Site = "site";

    /// <summary>The number of the next input, taken within the caller's step.</summary>
    public long Next(string kind, DateTimeOffset at) => db.Number(
        "INSERT INTO input (kind, at) VALUES ($kind, $at) RETURNING seq", ("$kind", kind), ("$at", Formats.OfInstant(at)));
}
