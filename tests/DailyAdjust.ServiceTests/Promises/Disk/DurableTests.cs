using System.Text.RegularExpressions;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>What the program says it has done lies on the disk by then: seen in the order of its calls.</summary>
[Trait("Promise", "2")]
public sealed partial class DurableTests : IDisposable
{
    private readonly TestHome _home = SecondDay.Example.HomeWithInbox();

    public void Dispose() => _home.Dispose();

    [Theory]
    [InlineData("ingest")]
    [InlineData("log")]
    [InlineData("morning")]
    public void Nothing_is_said_before_what_it_rests_on_is_flushed(string command)
    {
        Tool.Need("strace");
        var files = Directory.CreateDirectory(Path.Combine(_home.Path, "files")).FullName;
        SecondDay.Example.PutFiles(files);
        var calls = Trace(command switch
        {
            "ingest" => ["ingest", Path.Combine(files, "yard-hourly.csv"), Path.Combine(files, "logbook.csv")],
            "log" => ["log", "setting", "C1/P1", "80"],
            _ => ["morning", "--date", "2026-06-09"],
        });
        var success = command switch { "ingest" => "yard-hourly.csv: weather", "log" => "C1/P1", _ => "sheet 2026-06-09/1" };
        var said = calls.FindIndex(c => c.Name is "write" && c.Path.StartsWith("pipe:", StringComparison.Ordinal) && c.To.Contains(success, StringComparison.Ordinal));
        Assert.True(said > 0, "nothing was said");
        var wal = calls.FindLastIndex(said, c => c.Name is "pwrite64" && c.Path.EndsWith("ledger.db-wal", StringComparison.Ordinal));
        Assert.True(wal >= 0, "nothing was written to the ledger before it was said");
        foreach (var file in new[] { "ledger.db", "ledger.db-wal" }.Select(name => Path.Combine(SecondDay.Site(_home).Path, name)))
        {
            AssertFlushed(calls, said, file);
        }

        Tried.Held(2, "flushed before it was said", 1);
    }

    [Fact]
    public void Report_files_are_flushed_renamed_and_their_folder_flushed_before_the_sheet_counts_as_written()
    {
        Tool.Need("strace");
        var calls = Trace(["morning", "--date", "2026-06-09"]);
        var folder = SecondDay.Site(_home).ReportFolder(SecondDay.Date);
        var made = calls.FindIndex(c => c.Name is "mkdir" && string.Equals(c.Path, folder, StringComparison.Ordinal));
        Assert.True(calls.FindIndex(made, c => c.Name is "fsync" && string.Equals(c.Path, Path.GetDirectoryName(folder), StringComparison.Ordinal)) > made, "the new folder's own name was not flushed");
        var files = calls.Select((c, at) => (c, at)).Where(x => x.c.Name is "rename" && x.c.To.StartsWith(folder + "/", StringComparison.Ordinal)).ToList();
        Assert.Equal(["advice.csv", "advice.json", "report-full.txt", "report.html", "report.txt", "round.csv"], files.Select(x => Path.GetFileName(x.c.To)).Order(StringComparer.Ordinal));

        // The record that it is written is the next thing that goes to the ledger after the last of them.
        var counts = calls.FindIndex(files[^1].at, c => c.Name is "pwrite64" && c.Path.EndsWith("ledger.db-wal", StringComparison.Ordinal));
        foreach (var (rename, at) in files)
        {
            AssertFlushed(calls, at, rename.Path);
            Assert.InRange(calls.FindIndex(at, c => c.Name is "fsync" && string.Equals(c.Path, folder, StringComparison.Ordinal)), at, counts);
        }

        Tried.Held(2, "report file flushed, renamed, folder flushed", files.Count);
    }

    /// <summary>The last write to a file before some call is followed by a flush of it before that call.</summary>
    private static void AssertFlushed(List<Call> calls, int before, string file)
    {
        var written = calls.FindLastIndex(before, c => c.Name is "write" or "pwrite64" && string.Equals(c.Path, file, StringComparison.Ordinal));
        if (written >= 0)
        {
            Assert.True(
                calls.FindIndex(written, before - written, c => c.Name is "fsync" or "fdatasync" && string.Equals(c.Path, file, StringComparison.Ordinal)) > written,
                $"{file} is written at {written}, and not flushed before {before}: {calls[before]}");
        }
    }

    private List<Call> Trace(string[] arguments)
    {
        var log = Path.Combine(_home.Path, "trace");
        var result = RunningProgram.Run(new ProgramStart([.. arguments, "--home", _home.Path])
        {
            Under = ["strace", "-f", "-y", "-s", "400", "-o", log, "-e", "trace=write,pwrite64,fsync,fdatasync,rename,mkdir"],
        });
        Assert.True(result.ExitCode is 0 or 2, result.ToString());
        return [.. Calls(File.ReadLines(log))];
    }

    /// <summary>A write counts from its beginning on, a flush from its end on.</summary>
    private static IEnumerable<Call> Calls(IEnumerable<string> lines)
    {
        var begun = new Dictionary<string, Call>(StringComparer.Ordinal);
        foreach (var line in lines)
        {
            if (Resumed().Match(line) is { Success: true } end)
            {
                if (begun.Remove(end.Groups["pid"].Value, out var flush) && flush.Name is "fsync" or "fdatasync")
                {
                    yield return flush;
                }
            }
            else if (Parse(line) is { } call)
            {
                if (!line.EndsWith("<unfinished ...>", StringComparison.Ordinal))
                {
                    yield return call;
                    continue;
                }

                begun[line.Split(' ')[0]] = call;
                if (call.Name is not ("fsync" or "fdatasync"))
                {
                    yield return call;
                }
            }
        }
    }

    private static Call? Parse(string line) =>
        OnFile().Match(line) is { Success: true } file ? new(file.Groups["name"].Value, file.Groups["path"].Value, file.Groups["text"].Value)
        : OnName().Match(line) is { Success: true } name ? new(name.Groups["name"].Value, name.Groups["path"].Value, name.Groups["to"].Value)
        : null;

    [GeneratedRegex(@"^\d+ +(?<name>write|pwrite64|fsync|fdatasync)\(\d+<(?<path>[^>]*)>(?<more>, ""(?<text>.*))?", RegexOptions.None, 1000)]
    private static partial Regex OnFile();

    [GeneratedRegex("""^\d+ +(?<name>rename|mkdir)\("(?<path>[^"]*)", "?(?<to>[^"),]*)""", RegexOptions.None, 1000)]
    private static partial Regex OnName();

    [GeneratedRegex(@"^(?<pid>\d+) +<\.\.\. (?<name>write|pwrite64|fsync|fdatasync) resumed>", RegexOptions.None, 1000)]
    private static partial Regex Resumed();

    /// <param name="Name">The call.</param>
    /// <param name="Path">The file, or "pipe:[N]".</param>
    /// <param name="To">The new name of a rename; what is written.</param>
    private sealed record Call(string Name, string Path, string To);
}
