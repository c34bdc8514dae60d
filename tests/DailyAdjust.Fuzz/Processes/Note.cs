using System.IO.MemoryMappedFiles;

namespace DailyAdjust.Fuzz.Processes;

/// <summary>The number of the input that a child has in hand, in a file that both processes see and that outlives either.</summary>
internal sealed class Note : IDisposable
{
    private readonly MemoryMappedFile _file;
    private readonly MemoryMappedViewAccessor _view;

    public Note(string path)
    {
        _file = MemoryMappedFile.CreateFromFile(path, FileMode.OpenOrCreate, null, sizeof(long));
        _view = _file.CreateViewAccessor();
    }

    /// <summary>-1 = none yet.</summary>
    public long Index
    {
        get => _view.ReadInt64(0) - 1;
        set => _view.Write(0, value + 1);
    }

    public void Dispose()
    {
        _view.Dispose();
        _file.Dispose();
    }
}
