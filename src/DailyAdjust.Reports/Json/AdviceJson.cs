using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using DailyAdjust.Reports.Tables;

namespace DailyAdjust.Reports.Json;

/// <summary>Writes advice.json, and reads it back: indented, LF, no culture, keys in the order of the contract.</summary>
internal static class AdviceJson
{
    private static readonly AdviceJsonContext Context = new(new JsonSerializerOptions
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = TableJson.Encoder,
    });

    /// <summary>How a document is written.</summary>
    public static JsonTypeInfo<AdviceDocument> Contract => Context.AdviceDocument;

    public static string Write(SheetView view) => JsonSerializer.Serialize(AdviceDocumentBuilder.Build(view), Contract) + "\n";

    /// <summary>A sheet's advice.json read back; keys that were not there yet when it was written are null.</summary>
    /// <exception cref="JsonException">It is none.</exception>
    public static AdviceDocument Read(ReadOnlySpan<byte> utf8) =>
        JsonSerializer.Deserialize(utf8, Contract) ?? throw new JsonException("advice.json is empty.");
}

[JsonSerializable(typeof(AdviceDocument))]
internal sealed partial class AdviceJsonContext : JsonSerializerContext;
