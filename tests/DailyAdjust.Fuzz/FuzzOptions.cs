using System.Globalization;

namespace DailyAdjust.Fuzz;

/// <summary>What the command line asks for.</summary>
internal sealed record FuzzOptions
{
    public int Count { get; init; } = 20_000;

    public int Seed { get; init; } = 1;

    /// <summary>The first input; the children of a run share its inputs out.</summary>
    public int From { get; init; }

    /// <summary>This input alone, in this process.</summary>
    public int? Only { get; init; }

    /// <summary>Inputs of this target alone; null = of all.</summary>
    public string? Target { get; init; }

    /// <summary>A child's: the file in which it notes the input that it takes up.</summary>
    public string? Note { get; init; }

    /// <summary>What is wrong with the command line; null = nothing.</summary>
    public static string? Parse(string[] args, out FuzzOptions options)
    {
        options = new();
        for (var i = 0; i < args.Length; i += 2)
        {
            var value = i + 1 < args.Length ? args[i + 1] : "";
            var isNumber = int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var number);
            switch (args[i])
            {
                case "--count" when isNumber:
                    options = options with { Count = number };
                    break;
                case "--seed" when isNumber:
                    options = options with { Seed = number };
                    break;
                case "--from" when isNumber:
                    options = options with { From = number };
                    break;
                case "--only" when isNumber:
                    options = options with { Only = number };
                    break;
                case "--target" when Targets.AllTargets.Named(value).Any():
                    options = options with { Target = value };
                    break;
                case "--note" when value.Length > 0:
                    options = options with { Note = value };
                    break;
                default:
                    return $"{args[i]} {value} is not understood; --count N, --seed S, --only I, --target T; targets: {string.Join(", ", Targets.AllTargets.Names)}";
            }
        }

        return null;
    }
}
