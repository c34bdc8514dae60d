namespace DailyAdjust.Reports;

/// <summary>A name as one word of a command line: as it stands where every shell takes it so, else in quotation marks.</summary>
public static class ShellWord
{
    /// <summary>Beside letters and digits.</summary>
    private const string Plain = "-_./:,@%+=";

    /// <summary>What a shell still reads between quotation marks.</summary>
    private const string ReadInQuotes = "\"$`!";

    /// <param name="name">Of a site, a place, a folder.</param>
    public static string Of(string name)
    {
        if (name.Length > 0 && name.All(c => char.IsLetterOrDigit(c) || Plain.Contains(c, StringComparison.Ordinal)))
        {
            return name;
        }

        return name.AsSpan().IndexOfAny(ReadInQuotes) < 0 ? $"\"{name}\"" : $"'{name.Replace("'", "'\\''", StringComparison.Ordinal)}'";
    }
}
