using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace DailyAdjust.Ledger.Json;

/// <summary>
/// The JSON that stands in the ledger: members in a fixed order, doubles in their shortest exact form, an unknown
/// member is an error. What is written once stays readable: add members, never rename one.
/// </summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(LogEntryDto))]
[JsonSerializable(typeof(WeatherDayDto))]
[JsonSerializable(typeof(SoilStateDto))]
[JsonSerializable(typeof(List<IssuedLineDto>))]
internal sealed partial class LedgerJson : JsonSerializerContext
{
    /// <summary>With letters as they are, so that a note can be read in the sqlite3 shell.</summary>
    public static LedgerJson Readable => ReadableHolder.Instance;

    // In a class of its own: the generated Default must be there before it.
    private static class ReadableHolder
    {
        public static readonly LedgerJson Instance = new(new JsonSerializerOptions(Default.Options) { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
    }
}
