using System.Globalization;
using System.Text;
using System.Text.Json;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>A text of the document and where it stands, bytes.</summary>
internal sealed record PlacedText(string Text, int Offset);

/// <summary>What a layer says of one interval.</summary>
/// <param name="Offset">Where the value begins, bytes.</param>
/// <param name="ValidTime">"start/duration"; null = it has none.</param>
/// <param name="Value">NaN where it is missing or no number.</param>
/// <param name="NoNumber">The value as it stands, where it is neither a number nor missing.</param>
internal sealed record LayerValue(int Offset, string? ValidTime, double Value, string? NoNumber);

/// <summary>One layer of the document.</summary>
/// <param name="Name">Its key.</param>
/// <param name="Offset">Where it begins, bytes.</param>
/// <param name="Unit">As published ("wmoUnit:degC"); null = none is given.</param>
/// <param name="Values">In the order of the file.</param>
internal sealed record GridpointLayer(string Name, int Offset, string? Unit, IReadOnlyList<LayerValue> Values);

/// <summary>What is read of a gridpoint forecast.</summary>
internal sealed record GridpointDocument(PlacedText? UpdateTime, IReadOnlyList<GridpointLayer> Layers);

/// <summary>Why a document cannot be read, and where (from 1).</summary>
internal readonly record struct JsonFault(string What, int Line, int Column);

/// <summary>
/// Reads the layers out of the JSON. They stand in "properties", or at the top where the file was fetched as plain linked data; what else
/// there is is passed over.
/// </summary>
internal ref struct GridpointJson
{
    private const int Deepest = 32;

    private readonly List<GridpointLayer> _layers = [];
    private PlacedText? _updateTime;
    private Utf8JsonReader _reader;

    private GridpointJson(ReadOnlySpan<byte> json) => _reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = Deepest });

    /// <summary>Null = it is no JSON, is cut, or nests deeper than a forecast does.</summary>
    public static GridpointDocument? Parse(ReadOnlySpan<byte> json, out JsonFault fault)
    {
        fault = default;
        try
        {
            var parser = new GridpointJson(json);
            parser.Document();
            return new(parser._updateTime, parser._layers);
        }
        catch (JsonException e)
        {
            var (line, column) = Place(json, e.LineNumber ?? 0, e.BytePositionInLine ?? 0);
            fault = new("the file is no JSON from here on, or it was cut", line, column);
            return null;
        }
    }

    /// <summary>The parser counts bytes, people count characters; both from 1.</summary>
    private static (int Line, int Column) Place(ReadOnlySpan<byte> json, long linesBefore, long bytesInLine)
    {
        for (var line = 0; line < linesBefore; line++)
        {
            json = json[(json.IndexOf((byte)'\n') + 1)..];
        }

        return ((int)linesBefore + 1, Encoding.UTF8.GetCharCount(json[..(int)Math.Min(bytesInLine, json.Length)]) + 1);
    }

    private void Document()
    {
        _reader.Read();
        if (_reader.TokenType == JsonTokenType.StartObject)
        {
            Members(top: true);
        }
        else
        {
            _reader.Skip();
        }

        while (_reader.Read())
        {
            // Anything behind the end throws.
        }
    }

    private void Members(bool top)
    {
        while (_reader.Read() && _reader.TokenType == JsonTokenType.PropertyName)
        {
            var name = Text();
            _reader.Read();
            var isObject = _reader.TokenType == JsonTokenType.StartObject;
            if (top && isObject && string.Equals(name, "properties", StringComparison.Ordinal))
            {
                Members(top: false);
            }
            else if (isObject && GridpointLayers.ByName.ContainsKey(name))
            {
                _layers.Add(Layer(name));
            }
            else if (_reader.TokenType == JsonTokenType.String && string.Equals(name, "updateTime", StringComparison.Ordinal))
            {
                _updateTime = new(Text(), (int)_reader.TokenStartIndex);
            }
            else
            {
                _reader.Skip();
            }
        }
    }

    private GridpointLayer Layer(string name)
    {
        var offset = (int)_reader.TokenStartIndex;
        string? unit = null;
        List<LayerValue> values = [];
        while (_reader.Read() && _reader.TokenType == JsonTokenType.PropertyName)
        {
            var key = Text();
            _reader.Read();
            if (_reader.TokenType == JsonTokenType.String && string.Equals(key, "uom", StringComparison.Ordinal))
            {
                unit = Text();
            }
            else if (_reader.TokenType == JsonTokenType.StartArray && string.Equals(key, "values", StringComparison.Ordinal))
            {
                while (_reader.Read() && _reader.TokenType != JsonTokenType.EndArray)
                {
                    values.Add(Value());
                }
            }
            else
            {
                _reader.Skip();
            }
        }

        return new(name, offset, unit, values);
    }

    private LayerValue Value()
    {
        var read = new LayerValue((int)_reader.TokenStartIndex, null, double.NaN, null);
        if (_reader.TokenType != JsonTokenType.StartObject)
        {
            _reader.Skip();
            return read;
        }

        while (_reader.Read() && _reader.TokenType == JsonTokenType.PropertyName)
        {
            var key = Text();
            _reader.Read();
            if (_reader.TokenType == JsonTokenType.String && string.Equals(key, "validTime", StringComparison.Ordinal))
            {
                read = read with { ValidTime = Text() };
            }
            else if (string.Equals(key, "value", StringComparison.Ordinal))
            {
                var (number, noNumber) = Number();
                read = read with { Value = number, NoNumber = noNumber };
            }

            _reader.Skip();
        }

        return read;
    }

    /// <summary>A number, NaN for null, or what stands there instead.</summary>
    private readonly (double Number, string? NoNumber) Number() => _reader.TokenType switch
    {
        JsonTokenType.Null => (double.NaN, null),
        JsonTokenType.Number when _reader.TryGetDouble(out var number) && Math.Abs(number) <= CellNumber.Largest => (number, null),
        JsonTokenType.Number => (double.NaN, "a number beyond all that is measured"),
        JsonTokenType.String => (double.NaN, Text()),
        var other => (double.NaN, string.Create(CultureInfo.InvariantCulture, $"{other}")),
    };

    /// <summary>The text of a token; one whose bytes are no text is malformed like the rest.</summary>
    private readonly string Text()
    {
        try
        {
            return _reader.GetString() ?? "";
        }
        catch (InvalidOperationException e)
        {
            throw new JsonException("A text is not well formed.", "", 0, 0, e);
        }
    }
}
