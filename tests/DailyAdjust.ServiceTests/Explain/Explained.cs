using System.Globalization;
using System.Text.RegularExpressions;
using DailyAdjust.Tests.Explain;
using Xunit;

namespace DailyAdjust.ServiceTests.Explain;

/// <summary>An explanation as it was printed, gone through with a calculator: every equation gives the number printed under it.</summary>
internal sealed partial class Explained
{
    /// <summary>Numbers are printed to six decimals; each enters an equation once or a few times.</summary>
    private const double Printed = 2e-5;

    private readonly Dictionary<string, double> _last = new(StringComparer.Ordinal);

    /// <summary>How many equations were reckoned.</summary>
    public int Lines { get; private set; }

    /// <summary>What a symbol was last.</summary>
    public double Last(string symbol) => _last[symbol];

    public static Explained Of(string text)
    {
        var explained = new Explained();
        foreach (var step in Steps().Split(text).Skip(1))
        {
            // A line that was broken goes on 13 spaces in.
            string[] lines = [.. step.ReplaceLineEndings("\n").Replace("\n             ", " ", StringComparison.Ordinal).Split('\n')
                .Skip(1).TakeWhile(line => line.StartsWith("        ", StringComparison.Ordinal)).Select(line => line.Trim())];
            if (lines.Length == 0 || lines[^1].EndsWith("unknown", StringComparison.Ordinal))
            {
                continue;
            }

            var symbol = lines[0].Split(" = ")[0];
            var value = double.Parse(lines[^1].Split("= ")[^1].Split(' ')[0], CultureInfo.InvariantCulture);
            explained._last[symbol] = value;
            if (lines.Length == 1)
            {
                continue;
            }

            Assert.Equal(3, lines.Length);
            var got = Calculator.Reckon(lines[1][2..]);
            Assert.True(Math.Abs(got - value) <= Printed * Math.Max(1, Math.Abs(value)), $"{lines[0]}\n{lines[1]}\nis {got}, not {value}");
            explained.Lines++;
        }

        return explained;
    }

    [GeneratedRegex(@"^ *[0-9]+\. ", RegexOptions.Multiline)]
    private static partial Regex Steps();
}
