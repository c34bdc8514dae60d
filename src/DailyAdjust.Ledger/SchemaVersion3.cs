namespace DailyAdjust.Ledger;

/// <summary>Version 3: what the next sheet has to say.</summary>
internal static class SchemaVersion3
{
    public const string Sql = """
        CREATE TABLE notice (
            id INTEGER PRIMARY KEY,                        -- the order in which they are said
            text TEXT NOT NULL UNIQUE
        ) STRICT;
        """;
}
