using System.Globalization;

namespace DailyAdjust.Core.Explain;

/// <summary>
/// One line of an explanation: a number that was given, one that an equation gives, or a plain sentence. The number is always the
/// calculation's own; the equation beside it shows how to get there with a calculator.
/// </summary>
public sealed record Step
{
    /// <summary>What it is, in words; of a plain sentence all there is.</summary>
    public required string Name { get; init; }

    /// <summary>As the equations write it; empty = nothing refers to it.</summary>
    public string Symbol { get; init; } = "";

    /// <summary>The equation with symbols in braces; empty = the number was given.</summary>
    public string Template { get; init; } = "";

    /// <summary>What the equation needs.</summary>
    public IReadOnlyList<Term> Inputs { get; init; } = [];

    /// <summary>Null = a plain sentence, or unknown.</summary>
    public double? Value { get; init; }

    /// <summary>Metric; empty = a bare number.</summary>
    public string Unit { get; init; } = "";

    /// <summary>"[FAO56] eq. 6, p. 24", "common practice", or where a given number comes from.</summary>
    public string Source { get; init; } = "";

    /// <summary>The equation in symbols.</summary>
    public string Formula => Template.Replace("{", "", StringComparison.Ordinal).Replace("}", "", StringComparison.Ordinal);

    /// <summary>The equation in numbers.</summary>
    public string Arithmetic => Inputs.Aggregate(Template, (text, input) =>
        text.Replace("{" + input.Symbol + "}", input.Value < 0 ? $"({Number(input.Value)})" : Number(input.Value), StringComparison.Ordinal));

    /// <summary>A number that an equation gives.</summary>
    public static Step Of(string name, string symbol, string template, double value, string unit, string source, params IReadOnlyList<Term> inputs) =>
        new() { Name = name, Symbol = symbol, Template = template, Inputs = inputs, Value = value, Unit = unit, Source = source };

    /// <summary>A number that was given.</summary>
    public static Step Given(string name, string symbol, double? value, string unit, string source) =>
        new() { Name = name, Symbol = symbol, Value = value, Unit = unit, Source = source };

    /// <summary>A plain sentence.</summary>
    public static Step Said(string words) => new() { Name = words };

    /// <summary>Six decimals, of small numbers six digits.</summary>
    public static string Number(double value)
    {
        var size = Math.Abs(value);
        var text = size is > 0 and < 0.1
            ? value.ToString("0." + new string('#', 6 - (int)Math.Floor(Math.Log10(size))), CultureInfo.InvariantCulture)
            : value.ToString("0.######", CultureInfo.InvariantCulture);
        return text is "-0" ? "0" : text;
    }
}
