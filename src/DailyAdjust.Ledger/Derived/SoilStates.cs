using DailyAdjust.Core.Irrigation;
using DailyAdjust.Ledger.Json;

namespace DailyAdjust.Ledger.Derived;

/// <summary>A soil state and the hash of what it was computed from.</summary>
public sealed record StoredSoilState(SoilState State, string InputsHash);

/// <summary>Depletion at 00:00 of some days: where a balance may begin instead of at the site's start.</summary>
public sealed class SoilStates
{
    private readonly LedgerDb _db;

    internal SoilStates(LedgerDb db) => _db = db;

    /// <summary>Keeps a state in place of an earlier one of its date.</summary>
    public void Put(SoilState state, string inputsHash) => _db.InOneStep(() => _db.Execute(
        """
        INSERT INTO state (day, inputs, body) VALUES ($day, $inputs, $body)
        ON CONFLICT (day) DO UPDATE SET inputs = excluded.inputs, body = excluded.body
        """,
        ("$day", Formats.OfDay(state.Date)),
        ("$inputs", inputsHash),
        ("$body", SoilStateJson.Write(state))));

    /// <summary>Null = not kept.</summary>
    public StoredSoilState? Get(DateOnly day) => NewestUpTo(day) is { } stored && stored.State.Date == day ? stored : null;

    /// <summary>The newest state of this date or an earlier one; null = the balance has to begin at the site's start.</summary>
    public StoredSoilState? NewestUpTo(DateOnly day) => _db.First(
        "SELECT body, inputs FROM state WHERE day <= $day ORDER BY day DESC LIMIT 1",
        r => new StoredSoilState(SoilStateJson.Read(r.GetString(0)), r.GetString(1)),
        ("$day", Formats.OfDay(day)));

    /// <summary>Forgets the states after a date; that date's own rests on earlier days alone and stays.</summary>
    internal void ForgetAfter(DateOnly day) => _db.InOneStep(() =>
        _db.Execute("DELETE FROM state WHERE day > $day", ("$day", Formats.OfDay(day))));
}
