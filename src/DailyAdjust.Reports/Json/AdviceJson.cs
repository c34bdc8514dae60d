using System.Text.Json;
using System.Text.Json.Serialization;
using DailyAdjust.Reports.Tables;

namespace DailyAdjust.Reports.Json;

/// <summary>Writes advice.json: indented, LF, no culture, keys in the order of the contract.</summary>
internal static class AdviceJson
{
    private static readonly AdviceJsonContext Context = new(new JsonSerializerOptions
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = TableJson.Encoder,
    });

    public static string Write(SheetView view) =>
        JsonSerializer.Serialize(AdviceDocumentBuilder.Build(view), Context.AdviceDocument) + "\n";
}

[JsonSerializable(typeof(AdviceDocument))]
internal sealed partial class AdviceJsonContext : JsonSerializerContext;
