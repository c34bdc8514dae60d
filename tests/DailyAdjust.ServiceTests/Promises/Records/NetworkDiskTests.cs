using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Records;

/// <summary>
/// A home on a disk that other machines share. The program runs in a mount namespace of its own in which the kernel's list of mounts names the disk so; the files are
/// where they always are.
/// </summary>
[Trait("Promise", "7")]
public sealed class NetworkDiskTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public NetworkDiskTests() => _site = ExampleSite.TakenIn(_home);

    public void Dispose() => _home.Dispose();

    [Theory]
    [InlineData("nfs4", true)]
    [InlineData("cifs", true)]
    [InlineData("smb3", true)]
    [InlineData("fuse.sshfs", true)]
    [InlineData("9p", true)]
    [InlineData("ext4", false)]
    [InlineData("fuseblk", false)]
    [InlineData("fuse.mergerfs", false)]
    public void A_ledger_there_is_refused_in_plain_words_and_left_alone(string kind, bool isRefused)
    {
        Tool.Need("unshare", "mount");
        var before = File.ReadAllBytes(_site.LedgerFile);
        foreach (var command in new[] { "log note dew", "advice --date 2026-06-10" })
        {
            var result = On(kind, command);
            if (isRefused)
            {
                Assert.Equal(1, result.ExitCode);
                Assert.Contains($"lies on a network disk ({kind})", result.Error, StringComparison.Ordinal);
                Assert.Equal(before, File.ReadAllBytes(_site.LedgerFile));
            }
            else
            {
                Assert.True(result.ExitCode == 0, result.ToString());
            }
        }

        Tried.Held(7, "kinds of disk told apart", 1);
    }

    private ProgramResult On(string kind, string command)
    {
        var mounts = Path.Combine(_home.Path, "mounts");
        File.WriteAllText(mounts, $"22 27 0:21 / /proc rw - proc proc rw\n27 1 8:1 / / rw - ext4 /dev/root rw\n42 27 0:39 / {_home.Path} rw,relatime - {kind} shop:/share rw\n");
        return Tool.Run("unshare", "-m", "sh", "-c", $"mount --bind '{mounts}' /proc/$$/mountinfo && exec '{RunningProgram.Path}' {command} --home '{_home.Path}'");
    }
}
