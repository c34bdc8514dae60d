using System.Globalization;
using System.Text;
using DailyAdjust.Core.Explain;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Printing;

/// <summary>Steps as numbered lines: what, the equation, the equation in numbers, the result and its source.</summary>
internal static class ExplanationText
{
    private const int Width = 96;

    /// <param name="sections">In order.</param>
    /// <param name="units">US: depths, temperatures and wind in the units of the site beside the metric ones.</param>
    /// <param name="all">Work out what repeats (hours, zones) every time; otherwise one as the example, and a row for each of the others.</param>
    public static string Of(IReadOnlyList<Section> sections, UnitSystem units, bool all)
    {
        var text = new StringBuilder();
        var number = 0;
        var inRows = false;
        foreach (var section in sections)
        {
            var isRow = section.Repeats && !section.IsExample && !all;
            if (isRow)
            {
                text.Append(inRows ? "" : "\n");
                Row(text, section);
            }
            else
            {
                text.Append(CultureInfo.InvariantCulture, $"\n{section.Title}\n");
                foreach (var step in section.Steps)
                {
                    number++;
                    Write(text, number, step, units);
                }
            }

            inRows = isRow;
        }

        return text.ToString();
    }

    private static void Row(StringBuilder text, Section section) =>
        text.Append(CultureInfo.InvariantCulture, $"  {section.Title}: ").AppendJoin(", ", section.Brief
            .Select(symbol => section.Steps.LastOrDefault(s => string.Equals(s.Symbol, symbol, StringComparison.Ordinal)))
            .Where(s => s is not null)
            .Select(s => string.Create(CultureInfo.InvariantCulture, $"{s!.Symbol} {s.Value:0.####}"))).Append('\n');

    private static void Write(StringBuilder text, int number, Step step, UnitSystem units)
    {
        text.Append(CultureInfo.InvariantCulture, $"{number,4}. {step.Name}{(step.Source.Length > 0 ? "   " + step.Source : "")}\n");
        // A number that only gets another name needs no arithmetic.
        var isAnother = step.Inputs.Count == 1 && string.Equals(step.Template, "{" + step.Inputs[0].Symbol + "}", StringComparison.Ordinal);
        if (step.Template.Length > 0 && !isAnother)
        {
            Wrapped(text, step.Symbol + " = " + step.Formula);
            Wrapped(text, "  = " + step.Arithmetic);
        }

        if (step.Symbol.Length > 0)
        {
            var result = step.Value is { } value ? Step.Number(value) + (step.Unit.Length > 0 ? " " + step.Unit : "") + Beside(value, step.Unit, units) : "unknown";
            Wrapped(text, (isAnother ? $"{step.Symbol} = {step.Formula} = " : step.Template.Length > 0 ? "  = " : step.Symbol + " = ") + result);
        }
    }

    private static string Beside(double value, string unit, UnitSystem units) => units != UnitSystem.Us ? "" : unit switch
    {
        "mm" => string.Create(CultureInfo.InvariantCulture, $" ({value / Depth.MmPerInch:0.000} in)"),
        "°C" => string.Create(CultureInfo.InvariantCulture, $" ({(value * 9 / 5) + 32:0.0} °F)"),
        "m/s" => string.Create(CultureInfo.InvariantCulture, $" ({value / Units.MPerSPerMph:0.0} mph)"),
        _ => "",
    };

    /// <summary>Broken at spaces where a line would grow too long.</summary>
    private static void Wrapped(StringBuilder text, string line)
    {
        const string indent = "        ";
        var column = indent.Length;
        text.Append(indent);
        foreach (var (word, i) in line.Split(' ').Select((w, i) => (w, i)))
        {
            if (i > 0 && column + 1 + word.Length > Width)
            {
                text.Append('\n').Append(indent).Append("     ");
                column = indent.Length + 5;
            }
            else if (i > 0)
            {
                text.Append(' ');
                column++;
            }

            text.Append(word);
            column += word.Length;
        }

        text.Append('\n');
    }
}
