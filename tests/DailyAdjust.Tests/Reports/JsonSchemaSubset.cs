using System.Text.Json;
using System.Text.RegularExpressions;

namespace DailyAdjust.Tests.Reports;

/// <summary>The part of JSON Schema that docs/advice.schema.json uses. A keyword that it does not know is an error, never a pass.</summary>
internal sealed class JsonSchemaSubset(JsonElement root)
{
    public IReadOnlyList<string> Problems(JsonElement value)
    {
        var problems = new List<string>();
        Check(value, root, "$", problems);
        return problems;
    }

    private void Check(JsonElement value, JsonElement schema, string path, List<string> problems)
    {
        foreach (var keyword in schema.EnumerateObject())
        {
            if (!Holds(value, schema, keyword, path, problems))
            {
                problems.Add($"{path}: breaks {keyword.Name} {keyword.Value}");
            }
        }
    }

    private bool Holds(JsonElement value, JsonElement schema, JsonProperty keyword, string path, List<string> problems)
    {
        var rule = keyword.Value;
        switch (keyword.Name)
        {
            case "$schema" or "title" or "description" or "$defs":
                return true;
            case "$ref":
                Check(value, Definition(rule.GetString()!), path, problems);
                return true;
            case "type":
                return rule.ValueKind == JsonValueKind.Array ? rule.EnumerateArray().Any(t => IsOf(value, t.GetString()!)) : IsOf(value, rule.GetString()!);
            case "enum":
                return rule.EnumerateArray().Any(allowed => JsonElement.DeepEquals(allowed, value));
            case "pattern":
                return value.ValueKind != JsonValueKind.String || Regex.IsMatch(value.GetString()!, rule.GetString()!, RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));
            case "minLength":
                return value.ValueKind != JsonValueKind.String || value.GetString()!.Length >= rule.GetInt32();
            case "minimum":
                return value.ValueKind != JsonValueKind.Number || value.GetDouble() >= rule.GetDouble();
            case "maximum":
                return value.ValueKind != JsonValueKind.Number || value.GetDouble() <= rule.GetDouble();
            case "required":
                return value.ValueKind != JsonValueKind.Object || rule.EnumerateArray().All(name => value.TryGetProperty(name.GetString()!, out _));
            case "items":
                CheckItems(value, rule, path, problems);
                return true;
            case "properties":
                CheckProperties(value, rule, path, problems);
                return true;
            case "additionalProperties":
                return CheckOthers(value, schema, rule, path, problems);
            default:
                throw new NotSupportedException($"The schema uses {keyword.Name}, which this check does not know.");
        }
    }

    private void CheckItems(JsonElement value, JsonElement rule, string path, List<string> problems)
    {
        if (value.ValueKind != JsonValueKind.Array)
        {
            return;
        }

        foreach (var (item, i) in value.EnumerateArray().Select((item, i) => (item, i)))
        {
            Check(item, rule, $"{path}[{i}]", problems);
        }
    }

    private void CheckProperties(JsonElement value, JsonElement rule, string path, List<string> problems)
    {
        if (value.ValueKind != JsonValueKind.Object)
        {
            return;
        }

        foreach (var property in rule.EnumerateObject())
        {
            if (value.TryGetProperty(property.Name, out var child))
            {
                Check(child, property.Value, path + "." + property.Name, problems);
            }
        }
    }

    private bool CheckOthers(JsonElement value, JsonElement schema, JsonElement rule, string path, List<string> problems)
    {
        if (value.ValueKind != JsonValueKind.Object)
        {
            return true;
        }

        var others = value.EnumerateObject().Where(p => !schema.TryGetProperty("properties", out var known) || !known.TryGetProperty(p.Name, out _)).ToList();
        if (rule.ValueKind == JsonValueKind.False)
        {
            return others.Count == 0;
        }

        foreach (var other in others)
        {
            Check(other.Value, rule, path + "." + other.Name, problems);
        }

        return true;
    }

    private JsonElement Definition(string reference)
    {
        var place = root;
        foreach (var step in reference.TrimStart('#').Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            place = place.GetProperty(step);
        }

        return place;
    }

    private static bool IsOf(JsonElement value, string type) => type switch
    {
        "object" => value.ValueKind == JsonValueKind.Object,
        "array" => value.ValueKind == JsonValueKind.Array,
        "string" => value.ValueKind == JsonValueKind.String,
        "number" => value.ValueKind == JsonValueKind.Number,
        "integer" => value.ValueKind == JsonValueKind.Number && value.GetDouble() == Math.Floor(value.GetDouble()),
        "boolean" => value.ValueKind is JsonValueKind.True or JsonValueKind.False,
        "null" => value.ValueKind == JsonValueKind.Null,
        _ => throw new NotSupportedException($"The schema uses type {type}."),
    };
}
