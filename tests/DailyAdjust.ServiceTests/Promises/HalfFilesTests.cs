using System.Text;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>
/// Files that are not whole yet when the service looks, or not the same any more: what is known in the end is what an undisturbed file would have told.
/// </summary>
[Trait("Promise", "4")]
public sealed class HalfFilesTests : IDisposable
{
    /// <summary>Puts another file in the place of one that was just opened: between opening it and reading its first byte.</summary>
    private const string Swap =
        """
        #define _GNU_SOURCE
        #include <stdio.h>
        #include <stdlib.h>
        #include <string.h>
        #include <sys/syscall.h>
        #include <unistd.h>

        static void swap(int descriptor)
        {
            const char *from = getenv("SWAP_FROM"), *to = getenv("SWAP_TO");
            char link[64], path[4096];
            snprintf(link, sizeof link, "/proc/self/fd/%d", descriptor);
            ssize_t length = readlink(link, path, sizeof path - 1);
            if (from && to && length > 0 && (path[length] = 0, strcmp(path, to) == 0)) rename(from, to);
        }

        ssize_t pread(int descriptor, void *to, size_t count, off_t at)
        {
            swap(descriptor);
            return syscall(SYS_pread64, descriptor, to, count, at);
        }

        ssize_t pread64(int descriptor, void *to, size_t count, off_t at)
        {
            swap(descriptor);
            return syscall(SYS_pread64, descriptor, to, count, at);
        }

        """;

    private static readonly Lazy<string> Swapper = new(() => NativeShim.Compile("swap", Swap));

    private static readonly Lazy<string> Undisturbed = new(() =>
    {
        using var home = new TestHome();
        ExampleSite.TakenIn(home);
        return Weather(home);
    });

    private readonly TestHome _home = new();
    private readonly SiteFolder _site;
    private readonly MovedClock _clock;

    public HalfFilesTests()
    {
        Tool.Need("gcc");
        _site = ExampleSite.PutInto(_home);
        _clock = new MovedClock(new DateTimeOffset(2026, 6, 18, 11, 0, 0, TimeSpan.Zero));
    }

    public void Dispose()
    {
        _clock.Dispose();
        _home.Dispose();
    }

    [Fact]
    public void A_copy_that_stalls_in_the_middle_of_a_row_and_goes_on_after_it_was_taken_is_known_whole()
    {
        var random = new Random(4);
        var bytes = File.ReadAllBytes(ExampleSite.Weather);
        var count = Tried.Times(2, 40);
        for (var i = 0; i < count; i++)
        {
            using var home = new TestHome();
            var site = ExampleSite.PutInto(home);
            using var service = new Served(home, _clock.Variables);
            var cut = random.Next(bytes.Length / 20, bytes.Length);
            using (var copy = new FileStream(Path.Combine(site.Inbox, "yard-1.csv"), FileMode.CreateNew, FileAccess.Write, FileShare.ReadWrite | FileShare.Delete))
            {
                copy.Write(bytes.AsSpan(0, cut));
                copy.Flush();
                Served.WaitFor("the half file to be taken", () => File.Exists(Path.Combine(site.Taken, "yard-1.csv")));
                copy.Write(bytes.AsSpan(cut));
            }

            Served.WaitFor($"the file whole, cut at {cut}", () => string.Equals(Weather(home), Undisturbed.Value, StringComparison.Ordinal));

            // It goes on while the file lies in its new place already and is still looked at, or later.
            Assert.Matches("was still being written to after it was taken|changed while it was being read", service.Log());
            service.LetItLook(site);
            Assert.Equal(bytes, File.ReadAllBytes(Path.Combine(site.Taken, "yard-1.csv")));
            service.Stop();
        }

        Tried.Held(4, "half-written files that went on after they were taken", count);
    }

    [Fact]
    public void A_file_that_grows_is_waited_for_and_one_that_vanishes_is_no_trouble()
    {
        using var service = new Served(_home, _clock.Variables);
        var lines = File.ReadAllLines(ExampleSite.Weather);
        var path = Path.Combine(_site.Inbox, "yard-1.csv");
        var steps = Tried.Times(20, 300);
        for (var i = 0; i < steps; i++)
        {
            File.AppendAllText(path, string.Concat(lines[(i * lines.Length / steps)..((i + 1) * lines.Length / steps)].Select(l => l + "\n")));
            var passing = Path.Combine(_site.Inbox, $"yard-passing-{i}.csv");
            File.WriteAllText(passing, lines[0] + "\n" + lines[1] + "\n");
            Thread.Sleep(150);
            Assert.False(File.Exists(Path.Combine(_site.Taken, "yard-1.csv")));
            File.Delete(passing);
        }

        Served.WaitFor("the file", () => File.Exists(Path.Combine(_site.Taken, "yard-1.csv")));
        service.LetItLook(_site);
        Assert.Equal(Undisturbed.Value, Weather(_home));
        service.Stop();
        Assert.DoesNotContain("\"@l\":\"Error\"", service.Log(), StringComparison.Ordinal);
        Tried.Held(4, "looks at a growing file, and at one that vanishes", steps);
    }

    [Fact]
    public void A_locked_file_waits_and_is_told_until_it_is_let_go()
    {
        using var service = new Served(_home, _clock.Variables);
        using (var writer = new FileStream(Path.Combine(_site.Inbox, "yard-1.csv"), FileMode.CreateNew, FileAccess.Write, FileShare.None))
        {
            writer.Write(File.ReadAllBytes(ExampleSite.Weather));
            writer.Flush();
            Served.WaitFor("the lock to be told", () => service.Log().Contains("yard-1.csv is left in the inbox: Another program holds it locked.", StringComparison.Ordinal));
            _clock.Set(new DateTimeOffset(2026, 6, 19, 9, 55, 0, TimeSpan.Zero));
            Served.WaitFor("the next sheet", () => Served.IsOut(_site, new(2026, 6, 19)));
            Assert.Contains("yard-1.csv is left in the inbox", Served.Sheet(_site, new(2026, 6, 19)), StringComparison.Ordinal);
            Assert.True(File.Exists(Path.Combine(_site.Inbox, "yard-1.csv")));
        }

        Served.WaitFor("the file", () => File.Exists(Path.Combine(_site.Taken, "yard-1.csv")));
        service.Stop();
        Assert.Equal(Undisturbed.Value, Weather(_home));
        Tried.Held(4, "locked files", 1);
    }

    [Theory]
    [InlineData("yard-1.csv")]
    [InlineData("logbook-1.csv")]
    public void A_file_that_another_takes_the_place_of_while_it_is_read_loses_nothing(string name)
    {
        var spare = Path.Combine(_home.Path, "the-other.csv");
        var isLog = name.StartsWith("logbook", StringComparison.Ordinal);
        var head = isLog ? "time,kind,where,value,unit,until,by,note\n2026-06-10 07:00,note,site,,,,,the first\n" : string.Concat(File.ReadLines(ExampleSite.Weather).Take(30).Select(l => l + "\n"));
        File.WriteAllText(spare, isLog ? head.Replace("the first", "the other", StringComparison.Ordinal).Replace("07:00", "08:00", StringComparison.Ordinal) : File.ReadAllText(ExampleSite.Weather));
        using var service = new Served(_home, _clock.Variables, new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["LD_PRELOAD"] = Swapper.Value + ":" + _clock.Variables["LD_PRELOAD"],
            ["SWAP_FROM"] = spare,
            ["SWAP_TO"] = Path.Combine(_site.Inbox, name),
        });
        Served.Drop(_site, name, head);
        Served.WaitFor("the swap", () => !File.Exists(spare));
        Served.WaitFor("both to be taken", () => !File.Exists(Path.Combine(_site.Inbox, name)) && File.Exists(Path.Combine(_site.Taken, name)));
        service.LetItLook(_site);
        service.Stop();
        Assert.Contains("changed while it was being read", service.Log(), StringComparison.Ordinal);
        if (isLog)
        {
            using var open = OpenSite.Open(_site, LedgerMode.Read);
            Assert.Equal(["the first", "the other"], open.Ledger.Logbook.Effective().Select(e => e.Note).Where(n => n.StartsWith("the ", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        }
        else
        {
            Assert.Equal(Undisturbed.Value, Weather(_home));
        }

        Tried.Held(4, "files swapped while they were read", 1);
    }

    [Fact]
    public void A_file_that_is_replaced_again_and_again_is_known_as_it_was_last()
    {
        using var service = new Served(_home, _clock.Variables);
        var lines = File.ReadAllLines(ExampleSite.Weather);
        var random = new Random(44);
        var count = Tried.Times(60, 3000);
        for (var i = 1; i <= count; i++)
        {
            var whole = new StringBuilder();
            foreach (var line in lines[..(i == count ? lines.Length : random.Next(2, lines.Length))])
            {
                whole.Append(line).Append('\n');
            }

            Served.Drop(_site, "yard-1.csv", whole.ToString(), overwrite: true);
            Thread.Sleep(random.Next(0, 60));
        }

        service.LetItLook(_site);
        Served.WaitFor("the last one", () => string.Equals(Weather(_home), Undisturbed.Value, StringComparison.Ordinal));
        service.Stop();
        Assert.DoesNotContain("\"@l\":\"Error\"", service.Log(), StringComparison.Ordinal);
        Tried.Held(4, "files replaced under the same name", count);
    }

    private static string Weather(TestHome home) => RunningProgram.Run("weather", "--home", home.Path, "--to", "2026-06-17", "--format", "csv").Output;
}
