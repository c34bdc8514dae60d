using System.CommandLine;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>--units us|metric, of commands that print or propose units.</summary>
/// <param name="otherwise">What holds without it, as a sentence.</param>
internal sealed class UnitsOption(string otherwise)
{
    public Option<string?> Option { get; } = Create(otherwise);

    /// <summary>Null = not given.</summary>
    public UnitSystem? Of(CommandContext context) => context.Parsed.GetValue(Option) switch
    {
        "us" => UnitSystem.Us,
        "metric" => UnitSystem.Metric,
        _ => null,
    };

    private static Option<string?> Create(string otherwise)
    {
        var option = new Option<string?>("--units") { Description = $"us or metric. {otherwise}", HelpName = "UNITS" };
        option.AcceptOnlyFromAmong("us", "metric");
        return option;
    }
}
