namespace DailyAdjust.Ledger.Derived;

/// <summary>A day's water and the hash of what it was computed from.</summary>
/// <param name="Day">The date.</param>
/// <param name="Litres">Estimated, of all stations, L.</param>
/// <param name="InputsHash">The caller's.</param>
public sealed record StoredLitres(DateOnly Day, double Litres, string InputsHash);

/// <summary>Estimated water of finished days. A ledger that no newer program has written to yet has none.</summary>
public sealed class DayLitres
{
    private readonly LedgerDb _db;

    internal DayLitres(LedgerDb db) => _db = db;

    /// <summary>Keeps a day in place of an earlier one of its date.</summary>
    public void Put(StoredLitres day) => _db.InOneStep(() => _db.Execute(
        """
        INSERT INTO day_litres (day, inputs, litres) VALUES ($day, $inputs, $litres)
        ON CONFLICT (day) DO UPDATE SET inputs = excluded.inputs, litres = excluded.litres
        """,
        ("$day", Formats.OfDay(day.Day)),
        ("$inputs", day.InputsHash),
        ("$litres", day.Litres)));

    /// <summary>In order of date, both ends included; days that are not kept are left out.</summary>
    public IReadOnlyList<StoredLitres> Between(DateOnly first, DateOnly last) => !_db.HasTable("day_litres") ? [] : _db.Query(
        "SELECT day, litres, inputs FROM day_litres WHERE day BETWEEN $first AND $last ORDER BY day",
        r => new StoredLitres(Formats.ToDay(r.GetString(0)), r.GetDouble(1), r.GetString(2)),
        ("$first", Formats.OfDay(first)),
        ("$last", Formats.OfDay(last)));

    /// <summary>Forgets the days from a date on.</summary>
    internal void ForgetFrom(DateOnly day) => _db.InOneStep(() =>
        _db.Execute("DELETE FROM day_litres WHERE day >= $day", ("$day", Formats.OfDay(day))));
}
