namespace DailyAdjust.Ledger.Records;

/// <summary>
/// Sentences that the next sheet has to say (a file that was refused, work that was held back). They wait here, so that no crash loses one, and go in the step that fixes the sheet
/// which says them.
/// </summary>
public sealed class Notices
{
    private readonly LedgerDb _db;

    internal Notices(LedgerDb db) => _db = db;

    /// <summary>In the order in which they came. A ledger that no newer program has written to yet has none.</summary>
    public IReadOnlyList<string> Waiting => _db.HasTable("notice") ? _db.Query("SELECT text FROM notice ORDER BY id", r => r.GetString(0)) : [];

    /// <summary>Adds what does not wait there already.</summary>
    public void Add(params IReadOnlyList<string> sentences) => _db.InOneStep(() =>
    {
        foreach (var sentence in sentences)
        {
            _db.Execute("INSERT INTO notice (text) VALUES ($text) ON CONFLICT DO NOTHING", ("$text", sentence));
        }

        return 0;
    });

    /// <summary>They were said.</summary>
    public void Clear() => _db.InOneStep(() => _db.Execute("DELETE FROM notice"));
}
