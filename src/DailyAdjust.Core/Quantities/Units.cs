using System.Collections.Frozen;
using System.Text;

namespace DailyAdjust.Core.Quantities;

/// <summary>Finds a unit by any of its usual spellings. Upper and lower case, blanks, underscores and full stops make no difference.</summary>
public static class Units
{
    /// <summary>Metres per second in a mile per hour (exact: a mile of 5280 feet of 0.3048 m, an hour of 3600 s).</summary>
    public const double MPerSPerMph = 0.44704;

    private static readonly FrozenDictionary<(UnitKind Kind, string Spelling), Unit> BySpelling = UnitTable.All
        .SelectMany(row => row.Spellings.Append(row.Unit.Symbol).Select(spelling => (Key: (row.Unit.Kind, Plain(spelling)), row.Unit)))
        .DistinctBy(row => row.Key)
        .ToFrozenDictionary(row => row.Key, row => row.Unit);

    private static readonly FrozenDictionary<UnitKind, IReadOnlyList<string>> Symbols = UnitTable.All
        .GroupBy(row => row.Unit.Kind)
        .ToFrozenDictionary(kind => kind.Key, kind => (IReadOnlyList<string>)[.. kind.Select(row => row.Unit.Symbol)]);

    /// <summary>The unit of that kind so spelled, or null.</summary>
    public static Unit? Find(string spelling, UnitKind kind) => BySpelling.GetValueOrDefault((kind, Plain(spelling)));

    /// <summary>The first of these kinds that has a unit so spelled, or null.</summary>
    public static Unit? Find(string spelling, params ReadOnlySpan<UnitKind> kinds)
    {
        foreach (var kind in kinds)
        {
            if (Find(spelling, kind) is { } unit)
            {
                return unit;
            }
        }

        return null;
    }

    /// <summary>The usual spelling of every unit of a kind, as a hint prints them.</summary>
    public static IReadOnlyList<string> Spellings(UnitKind kind) => Symbols[kind];

    /// <summary>What two spellings of the same unit have in common.</summary>
    private static string Plain(string spelling)
    {
        var plain = new StringBuilder(spelling.Length);
        foreach (var c in spelling)
        {
            switch (c)
            {
                case '.' or '_' or '^' or '·' or '⋅' or '*':
                case 'Â': // what a spreadsheet makes of ° and ² when it saves UTF-8 a second time
                    break;
                case '²':
                    plain.Append('2');
                    break;
                case '³':
                    plain.Append('3');
                    break;
                case '¹':
                    plain.Append('1');
                    break;
                case '⁻' or '−' or '–':
                    plain.Append('-');
                    break;
                case 'º' or '˚':
                    plain.Append('°');
                    break;
                case '″' or '”' or '“':
                    plain.Append('"');
                    break;
                case '′' or '’':
                    plain.Append('\'');
                    break;
                default:
                    if (!char.IsWhiteSpace(c))
                    {
                        plain.Append(char.ToLowerInvariant(c));
                    }

                    break;
            }
        }

        return plain.ToString();
    }
}
