using DailyAdjust.Service.Commands;

namespace DailyAdjust.Service;

/// <summary>The one program: commands for people, and the background worker (`serve`).</summary>
public static class Program
{
    public static Task<int> Main(string[] args) => CommandTree.RunAsync(args, Console.Out, Console.Error, TimeProvider.System);
}
