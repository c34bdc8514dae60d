using System.Collections;

namespace DailyAdjust.Ledger.Records;

/// <summary>A list that is read when it is first looked at; the ledger must be open then.</summary>
internal sealed class LateList<T>(Func<IReadOnlyList<T>> read) : IReadOnlyList<T>
{
    private readonly Lazy<IReadOnlyList<T>> _items = new(read);

    public int Count => _items.Value.Count;

    public T this[int index] => _items.Value[index];

    public IEnumerator<T> GetEnumerator() => _items.Value.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
