using System.Text;
using DailyAdjust.Service.Fetching;
using Xunit;
using static DailyAdjust.ServiceTests.Fetching.LocalServer;

namespace DailyAdjust.ServiceTests.Fetching;

/// <summary>One question to a server that is well or ill: a whole file, or a reason, and never half a file.</summary>
public sealed class PullAttemptTests
{
    private const string Csv = "Time,Temp (°F)\n2026-06-01 01:00,60.1\n";
    private const long Largest = 1_000_000;

    private static readonly KeyValuePair<string, string>[] Secret = [KeyValuePair.Create("Authorization", "Bearer s3cret")];

    public static TheoryData<string, string> Ill => new()
    {
        { "HTTP/1.1 200 OK\r\nContent-Length: 500\r\n\r\nTime,Temp\n2026-06-01 01:00,60.1\n", "cut off" },
        { "HTTP/1.1 200 OK\r\nTransfer-Encoding: chunked\r\n\r\n5\r\nTime,\r\n7\r\nT", "cut off" },
        { "HTTP/1.1 200 OK\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\nTime", "answer was cut off|does not speak HTTP" },
        { "HTTP/1.1 200 OK\r\nContent-Length: -3\r\n\r\nTime,Temp\n", "length that can be right" },
        { "HTTP/1.1 200 OK\r\nContent-Encoding: br\r\nContent-Length: 4\r\n\r\nTime", "packed as BR" },
        { "HTTP/1.1 200 OK\r\nContent-Length: 0\r\n\r\n", "empty" },
        { "HTTP/1.1 200 OK\r\nContent-Length: 4\r\n\r\n \r\n\n", "empty" },
        { "HTTP/1.1 200 OK\r\nContent-Type: text/html; charset=utf-8\r\nContent-Length: 4\r\n\r\na,b\n", "web page" },
        { "HTTP/1.1 200 OK\r\nContent-Length: 26\r\n\r\n\n <!DOCTYPE html><html>hi</", "web page" },
        { "HTTP/1.1 200 OK\r\nContent-Length: 12\r\n\r\n<HTML>\nSorry", "web page" },
        { "HTTP/1.1 200 OK\r\nContent-Length: 34\r\n\r\ntime,kind,where,value\n2026-06-01,of", "logbook" },
        { "HTTP/1.1 200 OK\r\nContent-Length: 1000001\r\n\r\nTime", "larger than 1 MB" },
        { "HTTP/1.1 206 Partial\r\nContent-Length: 4\r\n\r\nTime", "answers 206" },
        { "HTTP/1.1 204 None\r\n\r\n", "answers 204" },
        { "HTTP/1.1 304 Same\r\n\r\n", "answers 304" },
        { "HTTP/1.1 403 No\r\nContent-Length: 0\r\n\r\n", "answers 403" },
        { "HTTP/1.1 302 There\r\nContent-Length: 0\r\n\r\n", "nowhere" },
        { "HTTP/1.1 302 There\r\nLocation: file:///etc/hostname\r\nContent-Length: 0\r\n\r\n", "nowhere" },
        { "HTTP/1.1 200 OK\r\nContent-Encoding: gzip\r\nContent-Length: 9\r\n\r\nTime,Temp", "damaged" },
        { "no HTTP at all\r\n\r\n", "does not speak HTTP|failed" },
        { "", "cut off|failed" },
    };

    [Fact]
    public async Task A_whole_file_comes_with_its_marks()
    {
        using var server = new LocalServer(Ok(Csv, "ETag: \"a1\"\r\nLast-Modified: Mon, 01 Jun 2026 06:00:00 GMT\r\nContent-Type: text/csv; charset=no-such-thing\r\n"));
        var answer = await AskAsync(server.Address);
        Assert.Equal(Csv, Encoding.UTF8.GetString(answer.Bytes!));
        Assert.Equal(new SeenMarks("\"a1\"", "Mon, 01 Jun 2026 06:00:00 GMT"), answer.Marks);
        Assert.Matches("User-Agent: DailyAdjust/[0-9]", Assert.Single(server.Questions));
        Assert.DoesNotContain("If-", server.Questions[0], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_charset_that_lies_changes_no_byte()
    {
        byte[] latin = [.. "T (°C);1\n"u8, 0xB0, 0xE4];
        using var server = new LocalServer(Ok(latin, "Content-Type: text/csv; charset=utf-16\r\n"));
        Assert.Equal(latin, (await AskAsync(server.Address)).Bytes);
    }

    [Fact]
    public async Task What_is_known_is_asked_for_by_its_marks()
    {
        using var server = new LocalServer(Status(304, "ETag: \"a2\"\r\n"));
        var answer = await AskAsync(server.Address, new SeenMarks("\"a1\"", "Mon, 01 Jun 2026 06:00:00 GMT"));
        Assert.Null(answer.Bytes);
        Assert.Equal(new SeenMarks("\"a2\"", "Mon, 01 Jun 2026 06:00:00 GMT"), answer.Marks);
        Assert.Contains("If-None-Match: \"a1\"\r\n", server.Questions[0], StringComparison.Ordinal);
        Assert.Contains("If-Modified-Since: Mon, 01 Jun 2026 06:00:00 GMT\r\n", server.Questions[0], StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Ill))]
    public async Task An_answer_that_is_no_whole_file_is_a_failure_with_its_reason(string answer, string why)
    {
        using var server = new LocalServer(Raw(answer));
        var failure = await Assert.ThrowsAsync<PullException>(() => AskAsync(server.Address));
        Assert.Matches(why, failure.Message);
        Assert.DoesNotContain('\n', failure.Message);
    }

    [Fact]
    public async Task A_packed_answer_is_unpacked_and_one_that_was_cut_is_refused()
    {
        var rows = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Range(0, 5000).Select(i => FormattableString.Invariant($"2026-06-01 01:00,{i * 7919 % 1000}\n"))));
        var packed = Packed(rows);
        using (var server = new LocalServer(Ok(packed, "Content-Encoding: gzip\r\n")))
        {
            Assert.Equal(rows, (await AskAsync(server.Address)).Bytes);
        }

        using var cut = new LocalServer(Ok(packed[..^(packed.Length / 3)], "Content-Encoding: gzip\r\n"));
        Assert.Matches("damaged, was cut off", (await Assert.ThrowsAsync<PullException>(() => AskAsync(cut.Address))).Message);
    }

    [Fact]
    public async Task A_small_answer_that_unpacks_to_more_than_is_allowed_is_left()
    {
        var bomb = Packed(new byte[200_000_000]);
        Assert.InRange(bomb.Length, 1, 300_000);
        using var server = new LocalServer(Ok(bomb, "Content-Encoding: gzip\r\n"));
        var before = GC.GetTotalAllocatedBytes();
        Assert.Matches("larger than 1 MB", (await Assert.ThrowsAsync<PullException>(() => AskAsync(server.Address))).Message);
        Assert.InRange(GC.GetTotalAllocatedBytes() - before, 0, 50_000_000);
    }

    [Fact]
    public async Task A_circle_of_redirects_ends()
    {
        using var server = new LocalServer((count, _) => Redirect(count % 2 == 0 ? "/a" : "/b"));
        Assert.Matches("redirects more than 5 times", (await Assert.ThrowsAsync<PullException>(() => AskAsync(server.Address))).Message);
        Assert.Equal(6, server.Questions.Count);
    }

    [Fact]
    public async Task Headers_follow_a_redirect_on_the_same_server_only()
    {
        using var other = new LocalServer(Ok(Csv));
        using var server = new LocalServer(Redirect("/new/place.csv"), Redirect(other.Address + "x.csv"));
        var answer = await AskAsync(server.Address, headers: Secret);
        Assert.NotNull(answer.Bytes);
        Assert.All(server.Questions, question => Assert.Contains("Authorization: Bearer s3cret", question, StringComparison.Ordinal));
        Assert.StartsWith("GET /new/place.csv", server.Questions[1], StringComparison.Ordinal);
        Assert.DoesNotContain("s3cret", Assert.Single(other.Questions), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cookies_are_not_kept()
    {
        using var server = new LocalServer(Ok(Csv, "Set-Cookie: a=b\r\n"));
        await AskAsync(server.Address);
        await AskAsync(server.Address);
        Assert.DoesNotContain("Cookie", server.Questions[1], StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Retry_After_is_read_in_seconds_and_as_a_date()
    {
        using var seconds = new LocalServer(Status(429, "Retry-After: 7\r\n"));
        var failure = await Assert.ThrowsAsync<PullException>(() => AskAsync(seconds.Address));
        Assert.True(failure.Passing);
        Assert.Equal(TimeSpan.FromSeconds(7), failure.RetryAfter);
        using var date = new LocalServer(Status(503, $"Retry-After: {DateTimeOffset.UtcNow.AddMinutes(5):R}\r\n"));
        Assert.InRange((await Assert.ThrowsAsync<PullException>(() => AskAsync(date.Address))).RetryAfter!.Value, TimeSpan.FromMinutes(4), TimeSpan.FromMinutes(6));
    }

    [Fact]
    public async Task Nobody_there_is_said_with_the_place()
    {
        string address;
        using (var gone = new LocalServer(Status(200)))
        {
            address = gone.Address;
        }

        var failure = await Assert.ThrowsAsync<PullException>(() => AskAsync(address));
        Assert.Matches("no connection to 127.0.0.1:[0-9]+", failure.Message);
        Assert.True(failure.Passing);
    }

    [Fact]
    public void A_missing_variable_is_named_and_a_value_is_never_shown()
    {
        KeyValuePair<string, string>[] headers = [KeyValuePair.Create("X-Key", "k ${KEY_ONE}-${KEY_TWO}")];
        Assert.Equal("k 1-2", Assert.Single(PullHeaders.Fill(headers, name => string.Equals(name, "KEY_ONE", StringComparison.Ordinal) ? "1" : "2\n")).Value);
        Assert.Contains("KEY_TWO", Assert.Throws<PullException>(() => PullHeaders.Fill(headers, name => string.Equals(name, "KEY_ONE", StringComparison.Ordinal) ? "1" : null)).Message, StringComparison.Ordinal);
        var bad = Assert.Throws<PullException>(() => PullHeaders.Fill(headers, _ => "s3cret\r\nHost: elsewhere")).Message;
        Assert.Contains("KEY_ONE", bad, StringComparison.Ordinal);
        Assert.DoesNotContain("s3cret", bad, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Bad Name")]
    [InlineData("Host")]
    [InlineData("Content-Length")]
    public async Task A_header_that_cannot_be_sent_is_named(string name)
    {
        using var server = new LocalServer(Ok(Csv));
        var failure = await Assert.ThrowsAsync<PullException>(() => AskAsync(server.Address, headers: [KeyValuePair.Create(name, "x")]));
        Assert.Contains(name, failure.Message, StringComparison.Ordinal);
    }

    private static async Task<PullAnswer> AskAsync(string address, SeenMarks? seen = null, IReadOnlyList<KeyValuePair<string, string>>? headers = null)
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(20));
        return await new PullAttempt(PullClient.Shared, TimeProvider.System).AskAsync(new(new Uri(address), headers ?? [], seen, Largest), limit.Token);
    }
}
