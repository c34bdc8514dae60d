namespace DailyAdjust.Reports.Tables;

/// <summary>Rows under named columns, and the three ways in which a command prints them.</summary>
/// <param name="Columns">Names that are a contract: add at the end only.</param>
/// <param name="Rows">Each as long as the columns.</param>
public sealed record Table(IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<Cell>> Rows)
{
    /// <summary>Comma-separated, header first, every line ended by LF.</summary>
    public string ToCsv() => CsvText.Write(this);

    /// <summary>An array of objects whose keys are the column names; unknown = null.</summary>
    public string ToJson() => TableJson.Write(this);

    /// <summary>Aligned columns for a terminal.</summary>
    public string ToText() => TableText.Write(this);
}
