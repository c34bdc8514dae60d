using Xunit;

namespace DailyAdjust.ServiceTests.Deploy;

/// <summary>As in a container or under the systemd unit: a user without rights, and a root file system that nobody can write but for the home.</summary>
[Trait("Promise", "9")]
public sealed class ReadOnlyRootTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void A_morning_needs_nothing_to_write_but_its_home()
    {
        Tool.Need("unshare", "setpriv");
        ExampleSite.PutInto(_home);
        Tool.Run("/bin/chown", "-R", "10001:10001", _home.Path);
        var result = Tool.Run("/usr/bin/unshare", "-m", "/bin/sh", "-euc", """
            mount --make-rprivate /
            mount --bind "$0" "$0"
            mount -o remount,bind,ro /
            if touch /usr/trial "$0"/../trial 2> /dev/null; then echo 'the root can be written'; exit 9; fi
            exec setpriv --reuid=10001 --regid=10001 --clear-groups --no-new-privs --bounding-set=-all env -i DAILYADJUST_HOME="$0" DAILYADJUST_PDF=never DOTNET_EnableDiagnostics=0 "$1" morning
            """, _home.Path, RunningProgram.Path);
        Assert.True(result.ExitCode == 0, result.ToString());
        Assert.Contains("tamarack: sheet ", result.Output, StringComparison.Ordinal);
        Assert.Empty(result.Error);
    }
}
