namespace DailyAdjust.Ledger;

/// <summary>Version 4: the water of every day, so that a sheet's year needs not be run again.</summary>
internal static class SchemaVersion4
{
    public const string Sql = """
        CREATE TABLE day_litres (
            day TEXT PRIMARY KEY,
            inputs TEXT NOT NULL,                          -- hash of what it was computed from
            litres REAL NOT NULL                           -- estimated, of all stations
        ) STRICT;
        """;
}
