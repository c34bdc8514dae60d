using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>Why nothing can be said of a sheet.</summary>
public enum AnswerFault
{
    /// <summary>No sheet of its date was ever issued.</summary>
    NoSheet,

    /// <summary>The date has sheets, but not this issue.</summary>
    NoIssue,

    /// <summary>It is long past, and nothing of it is asked for any more.</summary>
    LongPast,
}

/// <summary>
/// The sheets that an answer can speak of, as they are before it comes in: those that were issued, for two weeks, and after that as long as their question stands, since whoever
/// has not answered is asked on every sheet. What is older would rewrite a season that everybody has gone on from.
/// </summary>
/// <param name="issued">All that were issued; asked for when the first is looked for.</param>
/// <param name="settings">What was said of the programs; asked for only when a sheet is long past.</param>
public sealed class AnswerableSheets(Func<IReadOnlyList<IssuedSheet>> issued, Func<SettingHistory> settings)
{
    /// <summary>For so many days before the newest sheet any sheet can be answered, or its answer put right.</summary>
    public const int Days = 14;

    private readonly Lazy<IReadOnlyList<IssuedSheet>> _issued = new(issued);
    private readonly Lazy<SettingHistory> _settings = new(settings);

    /// <summary>Whether there is any.</summary>
    public bool Any => _issued.Value.Count > 0;

    /// <summary>The date of the newest; null = there is none.</summary>
    public DateOnly? Newest => Any ? _issued.Value.Max(s => s.Date) : null;

    /// <summary>The issues of a date, ascending.</summary>
    public IReadOnlyList<int> IssuesOf(DateOnly date) => [.. _issued.Value.Where(s => s.Date == date).Select(s => s.Issue).Order()];

    /// <param name="date">The sheet's date.</param>
    /// <param name="issue">Null = the newest.</param>
    /// <returns>Null = it was never issued.</returns>
    public IssuedSheet? Find(DateOnly date, int? issue) => Of(date, issue).MaxBy(s => s.Issue);

    /// <summary>What a date's sheets said of a program: of one issue, or of all of them.</summary>
    public IReadOnlyList<IssuedLine> Said(DateOnly date, int? issue, ProgramKey program) =>
        [.. Of(date, issue).SelectMany(s => s.Lines.Where(l => l.Program == program))];

    /// <summary>Why a sheet cannot be answered.</summary>
    /// <param name="date">The sheet's date.</param>
    /// <param name="issue">Null = the newest.</param>
    /// <param name="program">The line that is answered; null = all of them.</param>
    /// <returns>Null = it can.</returns>
    public AnswerFault? FaultOf(DateOnly date, int? issue, ProgramKey? program = null)
    {
        if (Find(date, issue) is not { } sheet)
        {
            return IssuesOf(date).Count == 0 ? AnswerFault.NoSheet : AnswerFault.NoIssue;
        }

        return date.AddDays(Days) >= Newest || sheet.Lines.Any(l => l.Asks && (program is null || l.Program == program) && IsOpen(sheet, l.Program)) ? null : AnswerFault.LongPast;
    }

    private IEnumerable<IssuedSheet> Of(DateOnly date, int? issue) => _issued.Value.Where(s => s.Date == date && (issue is null || s.Issue == issue));

    private bool IsOpen(IssuedSheet sheet, ProgramKey program) => !_settings.Value.IsAnswered(program, sheet.AsOf);
}
