using System.Diagnostics;
using DailyAdjust.Service.Home;
using DailyAdjust.ServiceTests.Mail;
using Xunit;

namespace DailyAdjust.ServiceTests.Paper;

/// <summary>A home whose sheets are printed by a stand-in for a browser: a shell script.</summary>
public sealed class PrintedHome : IDisposable
{
    private readonly TestHome _home = new();

    public PrintedHome()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The stand-in is a shell script.");
        Site = ExampleSite.PutInto(_home);
        MailHome.Edit(Site.SiteFile, "at: \"05:00\"", "at: \"00:00\"");
    }

    public SiteFolder Site { get; }

    public string Home => _home.Path;

    /// <summary>Of the only date.</summary>
    public string Folder => Directory.GetDirectories(Site.Reports).Single();

    public string Print => Path.Combine(Folder, "report.pdf");

    public string Log => string.Concat(Directory.GetFiles(_home.Home.LogsFolder).Select(ReadShared));

    /// <summary>The script finds its page in $page and where the print goes in $pdf.</summary>
    public string Browser(string script)
    {
        var path = Path.Combine(Home, "browser.sh");
        File.WriteAllText(path, $"#!/bin/sh\nfor a in \"$@\"; do case \"$a\" in --print-to-pdf=*) pdf=${{a#*=}};; file://*) page=${{a#file://}};; esac; done\n{script}\n");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        return path;
    }

    public ProgramResult Morning(string browser, params string[] arguments) => RunningProgram.Run(Start(browser, ["morning", .. arguments]));

    /// <summary>A morning that is not waited for.</summary>
    /// <summary>Listens to an interrupt even where the tests run in the background of a script, which hands down to ignore it.</summary>
    public Process StartMorning(string browser, int seconds, params string[] arguments) =>
        RunningProgram.Start(Start(browser, ["morning", .. arguments, "--set", $"PdfSeconds={seconds}"]) with { Under = ["env", "--default-signal=INT"] });

    public RunningService Serve(string browser, int seconds = 2) => new(Start(browser, "serve", "--set", "PollSeconds=1", "--set", $"PdfSeconds={seconds}"));

    public void Dispose() => _home.Dispose();

    private ProgramStart Start(string browser, params string[] arguments) => new([.. arguments, "--home", Home])
    {
        Variables = new Dictionary<string, string>(StringComparer.Ordinal) { ["DAILYADJUST_PDF"] = browser, ["DAILYADJUST_PDFSECONDS"] = "2", ["SECRET_OF_A_PULL"] = "plain-4711" },
    };

    private static string ReadShared(string file)
    {
        using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
