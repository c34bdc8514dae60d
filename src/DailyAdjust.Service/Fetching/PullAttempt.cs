using System.Net;
using System.Security.Authentication;

namespace DailyAdjust.Service.Fetching;

/// <summary>Asks a server once, through redirects, and gives back a whole file or says why there is none.</summary>
public sealed class PullAttempt(HttpClient http, TimeProvider time)
{
    private const int MostRedirects = 5;

    /// <exception cref="PullException">There is no whole file.</exception>
    /// <exception cref="OperationCanceledException">It took too long, or was stopped.</exception>
    public async Task<PullAnswer> AskAsync(PullRequest request, CancellationToken stop)
    {
        try
        {
            return await FollowAsync(request, stop).ConfigureAwait(false);
        }
        catch (HttpRequestException failure)
        {
            throw Said(failure, request.Address);
        }
        catch (InvalidDataException failure)
        {
            throw new PullException("the packed answer is damaged or was cut off", passing: true, failure);
        }
        catch (IOException failure)
        {
            throw new PullException("the answer was cut off before its end", passing: true, failure);
        }
    }

    private async Task<PullAnswer> FollowAsync(PullRequest request, CancellationToken stop)
    {
        var address = request.Address;
        var headers = request.Headers;
        for (var hop = 0; hop <= MostRedirects; hop++)
        {
            using var question = Question(address, headers, request.Seen);
            using var response = await http.SendAsync(question, HttpCompletionOption.ResponseHeadersRead, stop).ConfigureAwait(false);
            if (!IsRedirect(response.StatusCode))
            {
                return await ReadAsync(response, request, stop).ConfigureAwait(false);
            }

            var next = NextAddress(address, response);
            if (!IsSameServer(address, next))
            {
                // Secrets were meant for the server that site.yaml names; once left, they stay behind.
                headers = [];
            }

            address = next;
        }

        throw new PullException($"the server redirects more than {MostRedirects} times", passing: false);
    }

    private static HttpRequestMessage Question(Uri address, IReadOnlyList<KeyValuePair<string, string>> headers, SeenMarks? seen)
    {
        var question = new HttpRequestMessage(HttpMethod.Get, address);
        foreach (var (name, value) in headers)
        {
            if (!IsHeaderName(name) || !question.Headers.TryAddWithoutValidation(name, value))
            {
                question.Dispose();
                throw new PullException($"its header \"{name}\" cannot be sent", passing: false);
            }
        }

        if (!question.Headers.Contains("User-Agent"))
        {
            question.Headers.TryAddWithoutValidation("User-Agent", PullClient.UserAgent);
        }

        question.Headers.TryAddWithoutValidation("Accept-Encoding", "gzip");
        if (seen?.ETag is { } tag)
        {
            question.Headers.TryAddWithoutValidation("If-None-Match", tag);
        }

        if (seen?.LastModified is { } modified)
        {
            question.Headers.TryAddWithoutValidation("If-Modified-Since", modified);
        }

        return question;
    }

    private async Task<PullAnswer> ReadAsync(HttpResponseMessage response, PullRequest request, CancellationToken stop)
    {
        var marks = new SeenMarks(Header(response.Headers, "ETag"), Header(response.Content.Headers, "Last-Modified"));
        if (response.StatusCode == HttpStatusCode.NotModified && request.Seen is { } seen)
        {
            return new(null, new(marks.ETag ?? seen.ETag, marks.LastModified ?? seen.LastModified));
        }

        if (response.StatusCode != HttpStatusCode.OK)
        {
            throw Answered(response);
        }

        PullContent.CheckType(response.Content.Headers.ContentType?.MediaType);
        if (response.Content.Headers.ContentLength > request.LargestBytes)
        {
            throw PullContent.TooLarge(request.LargestBytes);
        }

        if (response.Content.Headers.ContentLength is null && response.Content.Headers.NonValidated.Contains("Content-Length"))
        {
            throw new PullException("the server does not say a length that can be right", passing: true);
        }

        var bytes = await BodyAsync(response.Content, request.LargestBytes, stop).ConfigureAwait(false);
        PullContent.Check(bytes);
        return new(bytes, marks);
    }

    private static async Task<byte[]> BodyAsync(HttpContent content, long largest, CancellationToken stop)
    {
        var stream = await content.ReadAsStreamAsync(stop).ConfigureAwait(false);
        await using (stream.ConfigureAwait(false))
        {
            var body = await PullContent.ReadAsync(stream, largest, stop).ConfigureAwait(false);
            return string.Join(',', content.Headers.ContentEncoding).ToUpperInvariant() switch
            {
                "" or "IDENTITY" => body,
                "GZIP" or "X-GZIP" => await PullContent.UnpackAsync(body, largest, stop).ConfigureAwait(false),
                var other => throw new PullException($"the answer is packed as {other}, which was not asked for", passing: false),
            };
        }
    }

    private static Uri NextAddress(Uri address, HttpResponseMessage response)
    {
        if (response.Headers.Location is not { } location || !Uri.TryCreate(address, location, out var next) || next.Scheme is not ("http" or "https"))
        {
            throw new PullException("the server redirects to nowhere", passing: false);
        }

        return address.Scheme is "https" && next.Scheme is "http"
            ? throw new PullException($"the server redirects from https to http ({next.Authority}), which is not followed", passing: false)
            : next;
    }

    private PullException Answered(HttpResponseMessage response)
    {
        var status = (int)response.StatusCode;
        var after = response.Headers.RetryAfter;
        return new PullException(FormattableString.Invariant($"the server answers {status}"), passing: status is 408 or 425 or 429 or >= 500)
        {
            Status = status,
            RetryAfter = after?.Delta ?? (after?.Date - time.GetUtcNow()),
        };
    }

    private static PullException Said(HttpRequestException failure, Uri address) => failure.HttpRequestError switch
    {
        HttpRequestError.NameResolutionError => new($"the name {address.Host} is not known (is the network up?)", passing: true, failure),
        HttpRequestError.SecureConnectionError => new(
            $"no secure connection to {address.Host} ({(failure.InnerException as AuthenticationException ?? (Exception)failure).Message.TrimEnd('.')})", passing: false, failure),
        HttpRequestError.ConnectionError => new($"no connection to {address.Authority}", passing: true, failure),
        HttpRequestError.ResponseEnded => new("the answer was cut off before its end", passing: true, failure),
        HttpRequestError.ConfigurationLimitExceeded or HttpRequestError.InvalidResponse => new("the server does not speak HTTP as it should", passing: true, failure),
        _ => new($"asking {address.Host} failed ({failure.Message.TrimEnd('.')})", passing: true, failure),
    };

    private static bool IsRedirect(HttpStatusCode status) => (int)status is 301 or 302 or 303 or 307 or 308;

    private static bool IsSameServer(Uri one, Uri other) =>
        one.Port == other.Port && string.Equals(one.Scheme, other.Scheme, StringComparison.Ordinal) && string.Equals(one.IdnHost, other.IdnHost, StringComparison.OrdinalIgnoreCase);

    /// <summary>A name of RFC 9110 section 5.6.2, other than those by which the question itself is framed.</summary>
    private static bool IsHeaderName(string name) =>
        name.Length > 0 && name.All(c => char.IsAsciiLetterOrDigit(c) || "!#$%&'*+-.^_`|~".Contains(c, StringComparison.Ordinal))
        && name.ToUpperInvariant() is not ("HOST" or "CONNECTION" or "TRANSFER-ENCODING" or "ACCEPT-ENCODING" or "RANGE");

    private static string? Header(System.Net.Http.Headers.HttpHeaders headers, string name) =>
        headers.NonValidated.TryGetValues(name, out var values) && values.Count == 1 ? values.ToString() : null;
}
