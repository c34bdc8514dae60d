using System.Text.Json;
using System.Text.Json.Serialization;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Fetching;

/// <summary>What is remembered of one address.</summary>
/// <param name="ETag">As the server sent it; null = none.</param>
/// <param name="LastModified">As the server sent it; null = none.</param>
/// <param name="Sha">SHA-256 of the bytes that it answered, lower-case hexadecimals.</param>
public sealed record SeenAddress(string? ETag, string? LastModified, string Sha);

/// <summary>A source that brings nothing.</summary>
/// <param name="Since">The first failure since it last worked, UTC.</param>
/// <param name="Why">A clause: "the server answers 500".</param>
public sealed record FailingSource(DateTimeOffset Since, string Why);

/// <summary>
/// What has to outlive the process between two pulls of a site, in pulled.json beside the ledger. It is a memory of convenience:
/// without it everything is asked for again, and bytes that the ledger has add nothing. The ledger itself is not touched, so that a
/// pull never stands in a writer's way and a restored ledger is never taken to hold what it does not.
/// </summary>
public sealed class PullMemory(SiteFolder folder)
{
    private static readonly JsonSerializerOptions Options = new() { WriteIndented = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull };

    private readonly Lock _guard = new();

    private string FilePath => Path.Combine(folder.Path, "pulled.json");

    public SeenAddress? Seen(string source, string address) => Read().Seen.GetValueOrDefault(Key(source, address));

    public FailingSource? Failing(string source) => Read().Failing.GetValueOrDefault(source);

    public void Remember(string source, string address, SeenAddress seen) => Change(text => text.Seen[Key(source, address)] = seen);

    /// <summary>Addresses of days that are no longer asked for are forgotten.</summary>
    public void Keep(string source, IEnumerable<string> addresses) => Change(text =>
    {
        var kept = addresses.Select(address => Key(source, address)).ToHashSet(StringComparer.Ordinal);
        foreach (var key in text.Seen.Keys.Where(key => key.StartsWith(source + ' ', StringComparison.Ordinal) && !kept.Contains(key)).ToList())
        {
            text.Seen.Remove(key);
        }
    });

    /// <returns>Whether it is news: the first failure, or another reason.</returns>
    public bool Failed(string source, string why, DateTimeOffset now)
    {
        var before = Failing(source);
        Change(text => text.Failing[source] = new(before?.Since ?? now, why));
        return before is null || !string.Equals(before.Why, why, StringComparison.Ordinal);
    }

    /// <returns>Whether it failed before.</returns>
    public bool Works(string source)
    {
        var failed = Failing(source) is not null;
        if (failed)
        {
            Change(text => text.Failing.Remove(source));
        }

        return failed;
    }

    private static string Key(string source, string address) => $"{source} {address}";

    /// <summary>Read anew each time: a command may have pulled meanwhile.</summary>
    private Content Read()
    {
        lock (_guard)
        {
            return ReadFile();
        }
    }

    private Content ReadFile()
    {
        try
        {
            return JsonSerializer.Deserialize<Content>(File.ReadAllBytes(FilePath), Options) ?? new();
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or JsonException)
        {
            return new();
        }
    }

    private void Change(Action<Content> change)
    {
        lock (_guard)
        {
            var content = ReadFile();
            var before = JsonSerializer.Serialize(content, Options);
            change(content);
            var after = JsonSerializer.Serialize(content, Options);
            if (string.Equals(before, after, StringComparison.Ordinal))
            {
                return;
            }

            try
            {
                AtomicFile.Write(FilePath, after + "\n");
            }
            catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
            {
                // A full or closed disk is told by whoever writes what matters; here it only costs a second download.
            }
        }
    }

    private sealed class Content
    {
        public SortedDictionary<string, SeenAddress> Seen { get; init; } = new(StringComparer.Ordinal);

        public SortedDictionary<string, FailingSource> Failing { get; init; } = new(StringComparer.Ordinal);
    }
}
