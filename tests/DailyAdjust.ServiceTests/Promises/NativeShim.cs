namespace DailyAdjust.ServiceTests.Promises;

/// <summary>Small libraries in C that stand between one process and the system, for what no test may do to the machine itself.</summary>
internal static class NativeShim
{
    /// <returns>The library's path, for LD_PRELOAD.</returns>
    public static string Compile(string name, string code)
    {
        var folder = Directory.CreateTempSubdirectory("dailyadjust-shim-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        var (source, library) = (Path.Combine(folder, name + ".c"), Path.Combine(folder, name + ".so"));
        File.WriteAllText(source, code);
        var compiled = Tool.Run("gcc", "-shared", "-fPIC", "-O1", "-o", library, source, "-ldl");
        return compiled.ExitCode == 0 ? library : throw new InvalidOperationException(compiled.ToString());
    }
}
