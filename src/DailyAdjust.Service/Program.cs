using DailyAdjust.Service.Commands;

namespace DailyAdjust.Service;

/// <summary>The one program: commands for people, and the background worker (`serve`).</summary>
public static class Program
{
    private const int PieceCharacters = 1 << 16;

    public static Task<int> Main(string[] args) => CommandTree.RunAsync(args, Output(), Console.Error, TimeProvider.System);

    /// <summary>The console's own writer hands on 256 characters at a time, which is for terminals: ten years of a large course are 719 MB.</summary>
    private static TextWriter Output() => Console.IsOutputRedirected
        ? TextWriter.Synchronized(new StreamWriter(Console.OpenStandardOutput(), Console.Out.Encoding, PieceCharacters) { AutoFlush = true })
        : Console.Out;
}
