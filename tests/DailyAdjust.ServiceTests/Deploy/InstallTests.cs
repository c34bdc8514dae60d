using Xunit;

namespace DailyAdjust.ServiceTests.Deploy;

/// <summary>deploy/install.sh in a root of its own: new, again over an older one, and taken away; sites and secrets stay.</summary>
[Trait("Promise", "9")]
public sealed class InstallTests : IDisposable
{
    private static readonly string Script = Path.Combine(Repository.Root, "deploy", "install.sh");

    private readonly TestHome _root = new();

    public InstallTests()
    {
        Tool.Need("systemd-sysusers", "systemctl", "setpriv");
        Directory.CreateDirectory(Under("etc"));
    }

    public void Dispose() => _root.Dispose();

    [Fact]
    public void It_puts_program_user_unit_and_home_in_place_and_enables_the_unit()
    {
        var result = Install();
        Assert.True(result.ExitCode == 0, result.ToString());
        Assert.Contains("Installed ", result.Output, StringComparison.Ordinal);
        var user = Assert.Single(File.ReadAllLines(Under("etc/passwd")), line => line.StartsWith("dailyadjust:", StringComparison.Ordinal)).Split(':');
        Assert.Equal(["/var/lib/dailyadjust", "/usr/sbin/nologin"], user[5..7]);
        Assert.Equal($"750 {user[2]} {user[3]}", Stat("var/lib/dailyadjust"));
        Assert.Equal("600 0 0", Stat("etc/dailyadjust/secrets.env"));
        Assert.Equal("700 0 0", Stat("etc/dailyadjust"));
        Assert.Equal("755 0 0", Stat("opt/dailyadjust/dailyadjust"));
        Assert.True(new FileInfo(Under("etc/systemd/system/multi-user.target.wants/dailyadjust.service")).LinkTarget is not null);
        Assert.Equal(0, Tool.Run(Under("opt/dailyadjust/dailyadjust"), "--version").ExitCode);
    }

    [Fact]
    public void Again_it_keeps_sites_settings_secrets_and_the_program_before()
    {
        Assert.Equal(0, Install().ExitCode);
        File.WriteAllText(Under("var/lib/dailyadjust/appsettings.json"), """{ "DailyAdjust": { "PollSeconds": 5 } }""");
        File.WriteAllText(Under("etc/dailyadjust/secrets.env"), "DAILYADJUST_MAIL_PASSWORD=chalk\n");
        File.WriteAllText(Under("opt/dailyadjust/of-the-first"), "");
        var again = Install();
        Assert.True(again.ExitCode == 0, again.ToString());
        Assert.Contains("PollSeconds", File.ReadAllText(Under("var/lib/dailyadjust/appsettings.json")), StringComparison.Ordinal);
        Assert.Equal("DAILYADJUST_MAIL_PASSWORD=chalk\n", File.ReadAllText(Under("etc/dailyadjust/secrets.env")));
        Assert.True(File.Exists(Under("opt/dailyadjust.before/of-the-first")));
        Assert.False(File.Exists(Under("opt/dailyadjust/of-the-first")));

        var removed = Tool.Run("/bin/sh", Script, "--root", Path.GetRelativePath(Environment.CurrentDirectory, _root.Path), "--remove");
        Assert.True(removed.ExitCode == 0, removed.ToString());
        Assert.False(Directory.Exists(Under("opt/dailyadjust")));
        Assert.False(File.Exists(Under("etc/systemd/system/dailyadjust.service")));
        Assert.True(File.Exists(Under("var/lib/dailyadjust/appsettings.json")));
        Assert.True(File.Exists(Under("etc/dailyadjust/secrets.env")));
    }

    [Fact]
    public void A_folder_without_a_program_that_starts_replaces_nothing()
    {
        Assert.Equal(0, Install().ExitCode);
        var broken = Under("broken");
        Directory.CreateDirectory(broken);
        Assert.Equal(2, Tool.Run("/bin/sh", Script, "--root", _root.Path, broken).ExitCode);
        File.WriteAllText(Path.Combine(broken, "dailyadjust"), "#!/bin/sh\nexit 3\n");
        Tool.Run("/bin/chmod", "755", Path.Combine(broken, "dailyadjust"));
        Assert.NotEqual(0, Tool.Run("/bin/sh", Script, "--root", _root.Path, broken).ExitCode);
        Assert.Equal(0, Tool.Run(Under("opt/dailyadjust/dailyadjust"), "--version").ExitCode);
        Assert.False(Directory.Exists(Under("opt/dailyadjust.before")));
    }

    [Fact]
    public void A_link_to_the_published_folder_installs_what_it_leads_to()
    {
        var link = Under("published");
        File.CreateSymbolicLink(link, Published);
        Assert.Equal(0, Tool.Run("/bin/sh", Script, "--root", _root.Path, link).ExitCode);
        Assert.Null(new DirectoryInfo(Under("opt/dailyadjust")).LinkTarget);
        Assert.True(File.Exists(Under("opt/dailyadjust/dailyadjust")));
    }

    [Fact]
    public void The_unit_leaves_an_intruder_little()
    {
        // systemd-analyze(1): --threshold is the exposure times ten.
        var result = Tool.Run("/usr/bin/systemd-analyze", "security", "--offline=true", "--threshold=20", Path.Combine(Repository.Root, "deploy", "dailyadjust.service"));
        Assert.True(result.ExitCode == 0, result.ToString());
        Assert.DoesNotContain("MemoryDenyWriteExecute=", string.Join('\n', File.ReadAllLines(Path.Combine(Repository.Root, "deploy", "dailyadjust.service")).Where(line => !line.StartsWith('#'))), StringComparison.Ordinal);
    }

    private static string Published => Path.Combine(Repository.Root, "src", "DailyAdjust.Service", "bin", "Release", "net10.0");

    private ProgramResult Install() => Tool.Run("/bin/sh", Script, "--root", _root.Path, Published);

    private string Stat(string path) => Tool.Run("/usr/bin/stat", "-c", "%a %u %g", Under(path)).Output.Trim();

    private string Under(string path) => Path.Combine(_root.Path, path);
}
