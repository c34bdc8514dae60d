using DailyAdjust.Core.Explain;
using Xunit;

namespace DailyAdjust.Tests.Explain;

/// <summary>Explanations gone through with a calculator.</summary>
internal static class Reckoned
{
    /// <summary>Numbers are printed to six decimals; each enters an equation once or a few times.</summary>
    private const double Printed = 2e-5;

    /// <summary>Every printed equation gives its printed number, and every symbol means the last step that has it.</summary>
    /// <returns>How many equations were reckoned.</returns>
    public static int Lines(IReadOnlyList<Section> sections)
    {
        var known = new Dictionary<string, double>(StringComparer.Ordinal);
        var lines = 0;
        foreach (var step in sections.SelectMany(s => s.Steps))
        {
            foreach (var input in step.Inputs)
            {
                if (known.TryGetValue(input.Symbol, out var before))
                {
                    Assert.True(Math.Abs(before - input.Value) <= 1e-9 * Math.Max(1, Math.Abs(before)), $"{step.Name}: {input.Symbol} was {before}, is {input.Value}");
                }
            }

            if (step.Template.Length > 0)
            {
                Assert.DoesNotContain('{', step.Arithmetic);
                var got = Calculator.Reckon(step.Arithmetic);
                Assert.True(Math.Abs(got - step.Value!.Value) <= Printed * Math.Max(1, Math.Abs(step.Value.Value)), $"{step.Name}: {step.Arithmetic} is {got}, not {step.Value}");
                lines++;
            }

            if (step.Symbol.Length > 0 && step.Value is { } value)
            {
                known[step.Symbol] = value;
            }
        }

        return lines;
    }
}
