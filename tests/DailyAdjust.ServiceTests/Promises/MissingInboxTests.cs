using System.Globalization;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>An inbox that is gone, unmounted or does not answer: an alarm on the log and on every sheet until it is back, and the sheet comes all the same.</summary>
[Trait("Promise", "4")]
public sealed class MissingInboxTests : IDisposable
{
    /// <summary>A share that hangs: a folder is not opened as long as a file lies there.</summary>
    private const string Hang =
        """
        #define _GNU_SOURCE
        #include <dirent.h>
        #include <dlfcn.h>
        #include <stdlib.h>
        #include <string.h>
        #include <unistd.h>

        DIR *opendir(const char *name)
        {
            static DIR *(*real)(const char *);
            const char *folder = getenv("HANGING_FOLDER"), *flag = getenv("HANGING_WHILE");
            if (!real) real = (DIR *(*)(const char *))dlsym(RTLD_NEXT, "opendir");
            if (folder && flag && strcmp(folder, name) == 0)
                while (access(flag, F_OK) == 0) usleep(20000);
            return real(name);
        }

        """;

    private static readonly Lazy<string> Hanger = new(() => NativeShim.Compile("hang", Hang));

    private readonly TestHome _home = new();
    private readonly SiteFolder _site;
    private readonly MovedClock _clock;

    public MissingInboxTests()
    {
        Tool.Need("gcc", "unshare", "nsenter", "mount");
        _site = ExampleSite.TakenIn(_home);
        _clock = new MovedClock(Work(8));
    }

    public void Dispose()
    {
        _clock.Dispose();
        _home.Dispose();
    }

    [Fact]
    public void A_missing_inbox_is_told_on_the_log_and_on_every_sheet_until_it_is_back()
    {
        using var service = new Served(_home, _clock.Variables);
        Assert.DoesNotContain("nothing can come in", SheetOf(8), StringComparison.Ordinal);
        Directory.Move(_site.Inbox, _site.Inbox + "-away");
        Served.WaitFor("the alarm", () => service.Log().Contains("/inbox is not there: nothing can come in", StringComparison.Ordinal));
        Assert.Contains("/inbox is not there: nothing can come in until that is put right.", SheetOf(9), StringComparison.Ordinal);
        Assert.Contains("/inbox is not there: nothing can come in until that is put right.", SheetOf(10), StringComparison.Ordinal);
        Directory.Move(_site.Inbox + "-away", _site.Inbox);
        service.LetItLook(_site);
        Assert.DoesNotContain("inbox is not there", SheetOf(11), StringComparison.Ordinal);
        service.Stop();
        Tried.Held(4, "inbox taken away and put back", 1);
    }

    [Fact]
    public void An_unmounted_share_is_told_though_it_leaves_an_empty_folder()
    {
        // In a mount namespace of its own: what is mounted there is mounted nowhere else, and ends with it.
        using var service = new Served(_home, ["unshare", "-m", "--propagation", "private", "sh", "-c", $"mount -t tmpfs none '{_site.Inbox}' && exec \"$0\" \"$@\""], _clock.Variables);
        Assert.DoesNotContain("nothing can come in", SheetOf(8), StringComparison.Ordinal);
        Inside($"printf 'time,kind,where,value,unit,until,by,note\\n2026-06-08 07:00,note,site,,,,,one\\n' > '{_site.Inbox}/logbook-1.csv'");
        Served.WaitFor("the file on the share", () => service.Log().Contains("logbook-1.csv", StringComparison.Ordinal));
        Served.WaitFor("its folder", () => InsideSays($"test -e '{_site.Taken}/logbook-1.csv'"));
        Inside($"umount -l '{_site.Inbox}'");
        Served.WaitFor("the alarm", () => service.Log().Contains("has lost its folders taken and refused (if it is a share: it is not mounted)", StringComparison.Ordinal));
        Assert.Contains("has lost its folders taken and refused (if it is a share: it is not mounted)", SheetOf(9), StringComparison.Ordinal);
        Inside($"mount -t tmpfs none '{_site.Inbox}' && mkdir '{_site.Taken}'");
        Served.WaitFor("the share", () => service.Log().Contains("can be read again", StringComparison.Ordinal));
        Assert.DoesNotContain("has lost its folders", SheetOf(10), StringComparison.Ordinal);
        service.Stop();
        Tried.Held(4, "share under the inbox unmounted and mounted again", 1);

        bool InsideSays(string command) => Tool.Run("nsenter", "-t", service.Id.ToString(CultureInfo.InvariantCulture), "-m", "sh", "-c", command).ExitCode == 0;

        void Inside(string command) => Assert.True(InsideSays(command), command);
    }

    [Fact]
    public void A_share_that_does_not_answer_holds_up_neither_the_sheet_nor_another_site()
    {
        var other = _home.EmptySite("other");
        foreach (var file in new DirectoryInfo(_site.Path).GetFiles())
        {
            file.CopyTo(Path.Combine(other.Path, file.Name));
        }

        var flag = Path.Combine(_home.Path, "hangs");
        using var service = new Served(_home, _clock.Variables, new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["LD_PRELOAD"] = Hanger.Value + ":" + _clock.Variables["LD_PRELOAD"],
            ["HANGING_FOLDER"] = _site.Inbox,
            ["HANGING_WHILE"] = flag,
        });
        Assert.DoesNotContain("nothing can come in", SheetOf(8), StringComparison.Ordinal);
        File.WriteAllText(flag, "");
        Served.WaitFor("the alarm", () => service.Log().Contains("/inbox does not answer: nothing can come in", StringComparison.Ordinal));
        Assert.Contains("/inbox does not answer: nothing can come in", SheetOf(9), StringComparison.Ordinal);
        Served.WaitFor("the other site's sheet", () => Served.IsOut(other, June(9)));
        Assert.DoesNotContain("does not answer", Served.Sheet(other, June(9)), StringComparison.Ordinal);
        service.LetItLook(other);
        File.Delete(flag);
        service.LetItLook(_site);
        Assert.DoesNotContain("does not answer", SheetOf(10), StringComparison.Ordinal);
        service.Stop();
        Tried.Held(4, "share under the inbox that does not answer", 1);
    }

    private static DateOnly June(int day) => new(2026, 6, day);

    private static DateTimeOffset Work(int day) => new(2026, 6, day, 9, 52, 0, TimeSpan.Zero);

    /// <summary>Sets the clock to a morning and waits for its sheet.</summary>
    private string SheetOf(int day)
    {
        _clock.Set(Work(day));
        Served.WaitFor($"the sheet of the {day}th", () => Served.IsOut(_site, June(day)));
        return Served.Sheet(_site, June(day));
    }
}
