using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace DailyAdjust.Service.Paper;

/// <summary>
/// Prints one page as PDF, by a browser in a process of its own: in a folder of its own that is gone afterwards, with none of this program's variables (secrets among them), at low
/// priority and within a time limit.
/// </summary>
/// <param name="program">The browser.</param>
/// <param name="limit">Then it is ended.</param>
internal sealed class PagePrint(string program, TimeSpan limit)
{
    private const string Page = "report.html";
    private const string Print = "report.pdf";

    /// <summary>What a browser needs to find itself; and what says where it may write.</summary>
    private static readonly string[] Kept = ["PATH", "SystemRoot", "SystemDrive", "ProgramFiles", "ProgramFiles(x86)"];
    private static readonly string[] Writable = ["HOME", "TMPDIR", "TEMP", "TMP", "LOCALAPPDATA"];

    /// <summary>When the browser made it. Same length, so that every offset in the file still holds.</summary>
    private static readonly Regex MadeAt = new(@"(?<=/(CreationDate|ModDate) \(D:)[0-9]{14}(?=[+Z-])", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(10));

    /// <param name="html">A whole page.</param>
    /// <param name="date">Stands in the file as the day on which it was made, so that the same page gives the same bytes by the same browser.</param>
    /// <exception cref="IOException">The browser did not start, ended with an error, took too long, or left no PDF.</exception>
    public async Task<byte[]> OfAsync(ReadOnlyMemory<byte> html, DateOnly date, CancellationToken stop)
    {
        var folder = Directory.CreateTempSubdirectory("dailyadjust-print-");
        try
        {
            await File.WriteAllBytesAsync(Path.Combine(folder.FullName, Page), html, stop).ConfigureAwait(false);
            var said = await RunAsync(folder.FullName, stop).ConfigureAwait(false);
            var print = Path.Combine(folder.FullName, Print);
            var bytes = File.Exists(print) ? await File.ReadAllBytesAsync(print, stop).ConfigureAwait(false) : [];
            return bytes.AsSpan().StartsWith("%PDF-"u8) ? Dated(bytes, date) : throw new IOException($"{program} left no PDF{(said.Length > 0 ? ": " + said : ".")}");
        }
        finally
        {
            Delete(folder);
        }
    }

    /// <exception cref="IOException">It took too long to find its dates: no browser's PDF does that.</exception>
    private static byte[] Dated(byte[] print, DateOnly date)
    {
        try
        {
            return Encoding.Latin1.GetBytes(MadeAt.Replace(Encoding.Latin1.GetString(print), date.ToString("yyyyMMdd", CultureInfo.InvariantCulture) + "000000"));
        }
        catch (RegexMatchTimeoutException failure)
        {
            throw new IOException("the print's dates were not found in time.", failure);
        }
    }

    /// <summary>The last line that the browser said. A child that outlives the browser may hold its words open: they are waited for no longer than the browser.</summary>
    private async Task<string> RunAsync(string folder, CancellationToken stop)
    {
        using var process = Start(folder);
        using var ends = CancellationTokenSource.CreateLinkedTokenSource(stop);
        ends.CancelAfter(limit);
        try
        {
            Lower(process);
            var error = process.StandardError.ReadToEndAsync(ends.Token);
            var output = process.StandardOutput.ReadToEndAsync(ends.Token);
            await process.WaitForExitAsync(ends.Token).ConfigureAwait(false);
            var words = await Task.WhenAll(error, output).WaitAsync(ends.Token).ConfigureAwait(false);
            var said = string.Concat(words).Trim().Split('\n')[^1].Trim();
            return process.ExitCode == 0 ? said : throw new IOException(FormattableString.Invariant($"{program} ended with code {process.ExitCode}: {said}"));
        }
        catch (OperationCanceledException late)
        {
            End(process);
            stop.ThrowIfCancellationRequested();
            throw new IOException(FormattableString.Invariant($"{program} took longer than {limit.TotalSeconds} s and was ended."), late);
        }
        finally
        {
            LeftProcesses.End(folder);
        }
    }

    private static void End(Process process)
    {
        try
        {
            process.Kill(entireProcessTree: true);
        }
        catch (Exception failure) when (failure is AggregateException or InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            // Some of it ended just now, or may not be ended by this account.
        }
    }

    private Process Start(string folder)
    {
        // Without the browser's own walls: the page is ours, has no script and may fetch nothing, and a service account mostly cannot build them.
        string[] arguments =
        [
            "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
            "--disable-dev-shm-usage", "--host-resolver-rules=MAP * ~NOTFOUND", $"--user-data-dir={Path.Combine(folder, "profile")}",
            "--no-pdf-header-footer", $"--print-to-pdf={Path.Combine(folder, Print)}", new Uri(Path.Combine(folder, Page)).AbsoluteUri,
        ];
        var info = new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = folder };
        info.Environment.Clear();
        foreach (var (name, value) in Kept.Select(name => (name, Environment.GetEnvironmentVariable(name))).Concat(Writable.Select(name => (name, (string?)folder))))
        {
            if (value is not null)
            {
                info.Environment[name] = value;
            }
        }

        try
        {
            return Process.Start(info) ?? throw new IOException($"{program} did not start.");
        }
        catch (System.ComponentModel.Win32Exception failure)
        {
            throw new IOException($"{program} did not start: {failure.Message}", failure);
        }
    }

    /// <summary>Other sites' sheets go first.</summary>
    private static void Lower(Process process)
    {
        try
        {
            process.PriorityClass = ProcessPriorityClass.BelowNormal;
        }
        catch (Exception failure) when (failure is System.ComponentModel.Win32Exception or InvalidOperationException)
        {
            // It has ended already, or may not be told.
        }
    }

    private static void Delete(DirectoryInfo folder)
    {
        try
        {
            folder.Delete(recursive: true);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // A process of the browser that is still ending holds it: the system clears its temporary files.
        }
    }
}
