using System.Collections.Concurrent;
using System.IO.Compression;
using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;
using System.Text;

namespace DailyAdjust.ServiceTests.Fetching;

/// <summary>What a server does with one question: gets its stream, and the connection closes when it returns.</summary>
public delegate Task Answering(Stream stream, CancellationToken stop);

/// <summary>A server on this machine that does byte for byte what a test says, also what no server should.</summary>
public sealed class LocalServer : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stop = new();
    private readonly ConcurrentQueue<string> _questions = new();
    private readonly Func<int, string, Answering> _answer;
    private int _count;

    /// <param name="answer">By the number of the question, from 1, and its head.</param>
    public LocalServer(Func<int, string, Answering> answer)
    {
        _answer = answer;
        _listener.Start();
        _ = AcceptAsync();
    }

    public LocalServer(params Answering[] answers)
        : this((count, _) => answers[Math.Min(count, answers.Length) - 1])
    {
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>With its private key: the server then speaks TLS only.</summary>
    public X509Certificate2? Certificate { get; init; }

    public string Address => FormattableString.Invariant($"{(Certificate is null ? "http" : "https")}://127.0.0.1:{Port}/");

    /// <summary>The heads of the questions in their order.</summary>
    public IReadOnlyList<string> Questions => [.. _questions];

    public static Answering Ok(string body, string headers = "") => Ok(Encoding.UTF8.GetBytes(body), headers);

    public static Answering Ok(byte[] body, string headers = "") => Raw(FormattableString.Invariant($"HTTP/1.1 200 OK\r\nContent-Length: {body.Length}\r\n{headers}\r\n"), body);

    public static Answering Status(int status, string headers = "") => Raw(FormattableString.Invariant($"HTTP/1.1 {status} So\r\nContent-Length: 0\r\n{headers}\r\n"));

    public static Answering Redirect(string to) => Status(302, $"Location: {to}\r\n");

    /// <summary>A head and a body that need not fit together.</summary>
    public static Answering Raw(string head, byte[]? body = null) => async (stream, stop) =>
    {
        await stream.WriteAsync(Encoding.ASCII.GetBytes(head), stop);
        await stream.WriteAsync(body ?? [], stop);
    };

    /// <summary>Sends a text and then nothing more, without closing.</summary>
    public static Answering Stall(string begin = "") => async (stream, stop) =>
    {
        await stream.WriteAsync(Encoding.ASCII.GetBytes(begin), stop);
        await Task.Delay(Timeout.Infinite, stop);
    };

    public static byte[] Packed(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.SmallestSize))
        {
            gzip.Write(bytes);
        }

        return packed.ToArray();
    }

    public void Dispose()
    {
        _stop.Cancel();
        _listener.Dispose();
        _stop.Dispose();
    }

    private async Task AcceptAsync()
    {
        var stop = _stop.Token;
        try
        {
            while (true)
            {
                _ = ServeAsync(await _listener.AcceptTcpClientAsync(stop), stop);
            }
        }
        catch (Exception failure) when (failure is OperationCanceledException or SocketException or ObjectDisposedException)
        {
            // The test is over.
        }
    }

    private async Task ServeAsync(TcpClient client, CancellationToken stop)
    {
        using var _ = client;
        try
        {
            await using var stream = await ChannelAsync(client, stop);
            var head = new StringBuilder();
            var one = new byte[1];
            while (!head.ToString().EndsWith("\r\n\r\n", StringComparison.Ordinal))
            {
                if (await stream.ReadAsync(one, stop) == 0)
                {
                    return;
                }

                head.Append((char)one[0]);
            }

            var text = head.ToString();
            _questions.Enqueue(text);
            await _answer(Interlocked.Increment(ref _count), text)(stream, stop);
            client.Client.Shutdown(SocketShutdown.Send);

            // Until the other side has gone: closing at once could take back what was sent.
            while (await stream.ReadAsync(one, stop) > 0)
            {
            }
        }
        catch (Exception failure) when (failure is OperationCanceledException or IOException or SocketException or ObjectDisposedException or AuthenticationException)
        {
            // The asker went away, or the test is over.
        }
    }

    private async Task<Stream> ChannelAsync(TcpClient client, CancellationToken stop)
    {
        if (Certificate is null)
        {
            return client.GetStream();
        }

        var secure = new SslStream(client.GetStream());
        await secure.AuthenticateAsServerAsync(new SslServerAuthenticationOptions { ServerCertificate = Certificate }, stop);
        return secure;
    }
}
