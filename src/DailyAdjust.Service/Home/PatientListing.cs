namespace DailyAdjust.Service.Home;

/// <summary>Looks into a folder that may be a share: one that is gone, closed or hanging is a clause for people, and never keeps anybody waiting for long.</summary>
internal sealed class PatientListing<T>
{
    private Task<IReadOnlyList<T>>? _listing;

    /// <param name="list">Runs on a thread of its own. A share that hangs keeps this one thread, and no other, until it answers.</param>
    /// <param name="patience">How long is waited.</param>
    /// <returns>What lies there, and what is wrong: "is not there"; null = all is well.</returns>
    public (IReadOnlyList<T> Entries, string? Trouble) Look(Func<IReadOnlyList<T>> list, TimeSpan patience)
    {
        _listing ??= Task.Run(list);
        try
        {
            if (!_listing.Wait(patience))
            {
                return ([], "does not answer");
            }

            var entries = _listing.Result;
            _listing = null;
            return (entries, null);
        }
        catch (AggregateException failure)
        {
            _listing = null;
            if (Clause(failure.InnerException) is { } clause)
            {
                return ([], clause);
            }

            throw;
        }
    }

    /// <summary>Null = no trouble of a folder.</summary>
    private static string? Clause(Exception? failure) => failure switch
    {
        DirectoryNotFoundException => "is not there",
        UnauthorizedAccessException => "may not be read",
        IOException error => $"cannot be read ({error.Message.TrimEnd('.')})",
        _ => null,
    };
}
