using System.CommandLine;
using DailyAdjust.Reports.Tables;

namespace DailyAdjust.Service.Commands;

/// <summary>--from, --to and --format of the commands that print days.</summary>
internal sealed class RangeOptions
{
    public RangeOptions() => Format.AcceptOnlyFromAmong("table", "csv", "json");

    public Option<DateOnly?> From { get; } = GlobalOptions.DateOption("--from", "The first date.");

    public Option<DateOnly?> To { get; } = GlobalOptions.DateOption("--to", "The last date.");

    public Option<string> Format { get; } = new("--format") { Description = "How it is printed.", DefaultValueFactory = _ => "table" };

    /// <summary>The dates asked for; --date alone means that date; null = not said.</summary>
    /// <exception cref="WrongInputException">The last date lies before the first.</exception>
    public (DateOnly? From, DateOnly? To) Range(CommandContext context)
    {
        var from = context.Parsed.GetValue(From) ?? context.Date;
        var to = context.Parsed.GetValue(To) ?? context.Date;
        return from > to
            ? throw new WrongInputException(FormattableString.Invariant($"--from {from:yyyy-MM-dd} lies after --to {to:yyyy-MM-dd}."), "Turn them around.")
            : (from, to);
    }

    /// <summary>The same, and where there is nothing in the range words about it on the error stream: that is an answer, not an error.</summary>
    /// <param name="context">The command.</param>
    /// <param name="table">May be empty.</param>
    /// <param name="nothing">"No sheet was issued".</param>
    /// <param name="there">The first and the last date that there is; null = none.</param>
    public void Print(CommandContext context, Table table, string nothing, (DateOnly First, DateOnly Last)? there)
    {
        Print(context, table);
        if (table.Rows.Count == 0)
        {
            var (from, to) = Range(context);
            var range = $"{(from is null ? "" : FormattableString.Invariant($" from {from:yyyy-MM-dd}"))}{(to is null ? "" : FormattableString.Invariant($" to {to:yyyy-MM-dd}"))}";
            context.Error.WriteLine($"{nothing}{range}.{(there is { } dates ? FormattableString.Invariant($" There are some from {dates.First:yyyy-MM-dd} to {dates.Last:yyyy-MM-dd}.") : "")}");
        }
    }

    public bool IsCsv(CommandContext context) => string.Equals(context.Parsed.GetValue(Format), "csv", StringComparison.Ordinal);

    public void Print(CommandContext context, Table table) => context.Out.Write(context.Parsed.GetValue(Format) switch
    {
        "csv" => table.ToCsv(),
        "json" => table.ToJson(),
        _ => table.ToText(),
    });
}
