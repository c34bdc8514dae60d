using System.Globalization;

namespace DailyAdjust.Mutants;

/// <summary>What the command line asks for.</summary>
internal sealed record MutantOptions
{
    public int Count { get; init; } = 60;

    public int Seed { get; init; } = 1;

    /// <summary>A folder of Core; null = all.</summary>
    public string? Folder { get; init; }

    public int Workers { get; init; } = 1;

    /// <summary>What is wrong with the command line; null = nothing.</summary>
    public static string? Parse(string[] args, out MutantOptions options)
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
                case "--workers" when isNumber && number > 0:
                    options = options with { Workers = number };
                    break;
                case "--folder" when value.Length > 0:
                    options = options with { Folder = value };
                    break;
                default:
                    return $"{args[i]} {value} is not understood; --count N, --seed S, --folder F, --workers W";
            }
        }

        return null;
    }
}
