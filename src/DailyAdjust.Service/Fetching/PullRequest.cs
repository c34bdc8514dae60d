namespace DailyAdjust.Service.Fetching;

/// <summary>One question to a server.</summary>
/// <param name="Address">http or https.</param>
/// <param name="Headers">With their secrets filled in: they go to this address's host alone.</param>
/// <param name="Seen">What is known from the last answer; null = everything is wanted.</param>
/// <param name="LargestBytes">The largest answer, unpacked.</param>
public sealed record PullRequest(Uri Address, IReadOnlyList<KeyValuePair<string, string>> Headers, SeenMarks? Seen, long LargestBytes);

/// <summary>By which a server tells whether its file changed, as it sent them.</summary>
public sealed record SeenMarks(string? ETag, string? LastModified);

/// <summary>A whole answer.</summary>
/// <param name="Bytes">The file; null = it has not changed.</param>
/// <param name="Marks">To ask with next time.</param>
public sealed record PullAnswer(byte[]? Bytes, SeenMarks Marks);
