using System.Diagnostics;
using System.Globalization;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>
/// A small disk of a test's own, in memory, in a mount namespace of its own: only what is started <see cref="Under"/> it sees it there, and this process sees it through
/// <see cref="Seen"/>.
/// </summary>
internal sealed class OwnDisk : IDisposable
{
    private readonly Process _holder;
    private readonly string _folder;

    /// <param name="folder">Where it is mounted; what lies in that folder is copied onto it.</param>
    /// <param name="size">As mount takes it: "2m".</param>
    public OwnDisk(string folder, string size)
    {
        Tool.Need("unshare", "nsenter", "mount");
        _folder = folder;
        var info = new ProcessStartInfo("unshare", ["--mount", "--propagation", "private", "sh", "-c",
            "cp -a \"$1\" \"$1.before\" && mount -t tmpfs -o \"size=$2\" tmpfs \"$1\" && cp -a \"$1.before/.\" \"$1\" && rm -r \"$1.before\" && echo ready && exec cat", "sh", folder, size])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        _holder = Process.Start(info)!;
        if (_holder.StandardOutput.ReadLine() is not "ready")
        {
            throw new InvalidOperationException("The disk could not be made: " + _holder.StandardError.ReadToEnd());
        }
    }

    /// <summary>Starts a program where the disk is.</summary>
    public IReadOnlyList<string> Under => ["nsenter", "--mount", "--target", _holder.Id.ToString(CultureInfo.InvariantCulture), "--"];

    /// <summary>A path as this process sees it.</summary>
    public string Seen(string path) => $"/proc/{_holder.Id.ToString(CultureInfo.InvariantCulture)}/root{path}";

    /// <summary>Mounts it anew with other options: "ro", "rw", "size=8m".</summary>
    public void Remount(string options) => Tool.Do(Under[0], [.. Under.Skip(1), "mount", "-o", "remount," + options, _folder]);

    /// <summary>Leaves no more than so many bytes free.</summary>
    public void Fill(long free)
    {
        var left = new DriveInfo(Seen(_folder)).AvailableFreeSpace - free;
        using var filler = new FileStream(Filler, FileMode.Append);
        var block = new byte[4096];
        for (; left > 0; left -= block.Length)
        {
            filler.Write(block);
        }
    }

    public void Free() => File.Delete(Filler);

    /// <summary>Ends with its namespace, when nobody is in it any more.</summary>
    public void Dispose()
    {
        _holder.StandardInput.Close();
        _holder.WaitForExit();
        _holder.Dispose();
    }

    private string Filler => Path.Combine(Seen(_folder), "filler");
}
