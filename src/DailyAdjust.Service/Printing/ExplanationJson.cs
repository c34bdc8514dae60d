using System.Text;
using System.Text.Json;
using DailyAdjust.Core.Explain;

namespace DailyAdjust.Service.Printing;

/// <summary>Steps as data: every number metric, at full precision.</summary>
internal static class ExplanationJson
{
    public static string Of(string title, IReadOnlyList<Section> sections)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("of", title);
            json.WriteStartArray("sections");
            foreach (var section in sections)
            {
                json.WriteStartObject();
                json.WriteString("title", section.Title);
                json.WriteStartArray("steps");
                foreach (var step in section.Steps)
                {
                    Write(json, step);
                }

                json.WriteEndArray();
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    private static void Write(Utf8JsonWriter json, Step step)
    {
        json.WriteStartObject();
        json.WriteString("name", step.Name);
        json.WriteString("symbol", step.Symbol);
        json.WriteString("formula", step.Formula);
        json.WriteStartObject("inputs");
        foreach (var input in step.Inputs)
        {
            json.WriteNumber(input.Symbol, input.Value);
        }

        json.WriteEndObject();
        if (step.Value is { } value)
        {
            json.WriteNumber("value", value);
        }
        else
        {
            json.WriteNull("value");
        }

        json.WriteString("unit", step.Unit);
        json.WriteString("source", step.Source);
        json.WriteEndObject();
    }
}
