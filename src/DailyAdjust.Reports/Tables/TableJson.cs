using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Unicode;

namespace DailyAdjust.Reports.Tables;

/// <summary>A table as an array of objects, numbers bare, unknown as null.</summary>
internal static class TableJson
{
    public static JavaScriptEncoder Encoder { get; } = JavaScriptEncoder.Create(UnicodeRanges.All);

    public static string Write(Table table)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = Encoder }))
        {
            json.WriteStartArray();
            foreach (var row in table.Rows)
            {
                json.WriteStartObject();
                for (var i = 0; i < table.Columns.Count; i++)
                {
                    json.WritePropertyName(table.Columns[i]);
                    WriteCell(json, row[i]);
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    private static void WriteCell(Utf8JsonWriter json, Cell cell)
    {
        if (!cell.IsNumber)
        {
            json.WriteStringValue(cell.Written);
        }
        else if (cell.Written.Length == 0)
        {
            json.WriteNullValue();
        }
        else
        {
            json.WriteRawValue(cell.Written);
        }
    }
}
