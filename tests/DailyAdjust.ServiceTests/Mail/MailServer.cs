using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography.X509Certificates;
using DailyAdjust.ServiceTests.Fetching;
using MimeKit;
using Xunit;

namespace DailyAdjust.ServiceTests.Mail;

/// <summary>A real SMTP server on 127.0.0.1 (Debian's python3-aiosmtpd) that fails as it is told; mailserver.py says how.</summary>
public sealed class MailServer : IDisposable
{
    /// <summary>Debian's package belongs to Debian's python; another python on the path need not know it.</summary>
    private static readonly Lazy<string?> Python = new(() => new[] { "/usr/bin/python3", "python3" }.FirstOrDefault(Knows));

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(180);

    private readonly string _folder;
    private readonly List<string> _arguments;
    private Process? _process;

    /// <param name="folder">Of the test; the server keeps its things there.</param>
    /// <param name="certificateFor">Null = it offers no encryption.</param>
    /// <param name="tls">Encrypted from the first byte.</param>
    /// <param name="user">Null = it wants no login.</param>
    public MailServer(string folder, string? certificateFor = null, bool tls = false, string? user = null, string password = "")
    {
        Assert.SkipWhen(Python.Value is null, "python3-aiosmtpd is not installed.");
        _folder = Directory.CreateDirectory(folder).FullName;
        _arguments = [Path.Combine(Repository.Root, "tests", "DailyAdjust.ServiceTests", "Mail", "mailserver.py"), _folder];
        if (certificateFor is not null)
        {
            using var certificate = TestCertificate.For(certificateFor);
            File.WriteAllText(CertificateFile, certificate.ExportCertificatePem());
            File.WriteAllText(Path.Combine(_folder, "key.pem"), certificate.GetECDsaPrivateKey()!.ExportPkcs8PrivateKeyPem());
            _arguments.AddRange(["--cert", CertificateFile, "--key", Path.Combine(_folder, "key.pem")]);
        }

        if (tls)
        {
            _arguments.Add("--tls");
        }

        if (user is not null)
        {
            _arguments.AddRange(["--user", user, "--password", password]);
        }

        Start();
    }

    public int Port { get; private set; }

    public string CertificateFile => Path.Combine(_folder, "certificate.pem");

    public IReadOnlyList<string> Events => File.Exists(Path.Combine(_folder, "events")) ? File.ReadAllLines(Path.Combine(_folder, "events")) : [];

    /// <summary>What it has taken, in order.</summary>
    public IReadOnlyList<MimeMessage> Messages => [.. Directory.GetFiles(_folder, "*.eml").Order(StringComparer.Ordinal).Select(file => MimeMessage.Load(file))];

    /// <summary>Forgets what it has taken.</summary>
    public void Forget()
    {
        foreach (var file in Directory.GetFiles(_folder, "*.eml"))
        {
            File.Delete(file);
        }
    }

    /// <summary>One for each connection to come; the last stays.</summary>
    public void Behave(params string[] modes) => File.WriteAllText(Path.Combine(_folder, "modes"), string.Join('\n', modes));

    /// <summary>Starts again where it was stopped.</summary>
    public void Start()
    {
        var info = new ProcessStartInfo(Python.Value!, Port == 0 ? _arguments : [.. _arguments, "--port", Port.ToString(CultureInfo.InvariantCulture)])
        {
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        _process = Process.Start(info)!;
        var line = _process.StandardOutput.ReadLine() ?? throw new InvalidOperationException("The mail server did not start.");
        Port = int.Parse(line.Split(' ')[1], CultureInfo.InvariantCulture);
    }

    public void Stop()
    {
        _process?.Kill();
        _process?.WaitForExit();
        _process?.Dispose();
        _process = null;
    }

    public void WaitForEvent(string text) => WaitFor($"the event \"{text}\"", () => Events.Any(e => e.StartsWith(text, StringComparison.Ordinal)));

    /// <param name="what">It is waited for.</param>
    /// <param name="holds">Whether it is there.</param>
    /// <param name="said">What to show where it does not come; null = nothing.</param>
    public static void WaitFor(string what, Func<bool> holds, Func<string>? said = null)
    {
        var waited = Stopwatch.StartNew();
        while (!holds())
        {
            Assert.True(waited.Elapsed < Patience, $"Waited in vain for {what}.\n{said?.Invoke()}");
            Thread.Sleep(50);
        }
    }

    public void Dispose() => Stop();

    private static bool Knows(string python)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(python, ["-c", "import aiosmtpd"]) { RedirectStandardError = true, UseShellExecute = false })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
