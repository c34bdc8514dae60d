using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using DailyAdjust.Core.Morning;
using DailyAdjust.Tests.Architecture;
using Xunit;

namespace DailyAdjust.Tests.Recorded;

/// <summary>
/// What a few hundred invented courses give is on record, as a hash of each result. A change of any number, date or sentence is seen here first: it is meant, then
/// it is recorded anew (and <see cref="MorningCalculation.Version"/> is raised where the same inputs give another result), or it is a mistake. What is right is said by
/// the other tests.
/// </summary>
public sealed class ResultsOfRecordTests
{
    /// <summary>Names a file to record anew.</summary>
    private const string Anew = "RESULTS_OF_RECORD";

    private static readonly string _file = Path.Combine(Repository.Root, "tests", "DailyAdjust.Tests", "Data", "results-of-record.csv");

    [Fact]
    public void Every_result_is_the_one_on_record()
    {
        var found = RecordedCases.All.AsParallel().AsOrdered().Select(c => $"{c.Name},{Hash(c.Result())}").ToList();
        if (Environment.GetEnvironmentVariable(Anew) is { Length: > 0 } path)
        {
            File.WriteAllText(path, string.Create(CultureInfo.InvariantCulture, $"calculation,{MorningCalculation.Version}\n{string.Join('\n', found)}\n"));
        }

        var recorded = File.ReadAllLines(_file);
        var other = found.Except(recorded.Skip(1), StringComparer.Ordinal).Select(line => line.Split(',')[0]).ToList();
        Assert.True(
            other.Count == 0,
            $"{other.Count} of {found.Count} results are not those on record: {string.Join(", ", other.Take(8))}. If that is meant, raise MorningCalculation.Version where numbers or advice differ, and record them: {Anew}={_file} dotnet test --filter ResultsOfRecord");
        Assert.Equal(found.Count + 1, recorded.Length);
        Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"calculation,{MorningCalculation.Version}"), recorded[0]);
    }

    /// <summary>A record that holds nothing would hold nothing against a change.</summary>
    [Fact]
    public void The_results_hold_what_they_are_to_watch()
    {
        var morning = RecordedCases.All.First(c => c.Name is "morning 1").Result();
        Assert.Contains("DepletionMm=", morning, StringComparison.Ordinal);
        Assert.Contains("lock out before opening a box", morning, StringComparison.Ordinal);
        Assert.Equal(RecordedCases.All.Count, RecordedCases.All.Select(c => c.Name).Distinct(StringComparer.Ordinal).Count());
        Assert.Contains("=~", RecordedCases.All.First(c => c.Name is "weather 3").Result(), StringComparison.Ordinal);
    }

    private static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..16];
}
