using DailyAdjust.Ledger;

namespace DailyAdjust.Tests.Ledger;

/// <summary>A folder of its own for one test, with a ledger in it.</summary>
internal sealed class LedgerFolder : IDisposable
{
    public static readonly DateTimeOffset Noon = new(2026, 6, 8, 12, 0, 0, TimeSpan.Zero);

    public string Folder { get; } = Directory.CreateTempSubdirectory("ledger-").FullName;

    public string Ledger => Path.Combine(Folder, "ledger.db");

    public SiteLedger Write() => SiteLedger.Open(Ledger, LedgerMode.Write, TimeSpan.Zero);

    public SiteLedger Read() => SiteLedger.Open(Ledger, LedgerMode.Read, TimeSpan.Zero);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
