using DailyAdjust.Core.Plan;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Service.Commands;

/// <summary>`plan`: base programs for the peak month.</summary>
internal static class PlanCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var range = new RangeOptions();
        return new AppCommand(
            "plan",
            "Base minutes, starts and cycles for the peak month, and what of them cannot fit. Changes nothing.",
            "From the normals in site.yaml, and for the water days that the programs have. Starts are laid into the window beside the other programs of their box\nand within the pump. Sentences stand below the table; of csv and json on the error stream. How it reckons: docs/planning.md.",
            "plan",
            "plan --site mill-creek --format csv > plan.csv")
        {
            range.Format,
        }.Runs(global, time, context => Run(context, range));
    }

    private static int Run(CommandContext context, RangeOptions range)
    {
        var (site, normals) = PlanningInput.Of(context.OneSite());
        var plan = BasePlan.Of(site, normals.EtoMmPerDay);
        var isTable = context.Parsed.GetValue(range.Format) is not ("csv" or "json");
        range.Print(context, isTable ? PlanTable.Summary(plan) : PlanTable.Of(plan));
        var sentences = isTable ? context.Out : context.Error;
        if (isTable)
        {
            sentences.WriteLine();
        }

        foreach (var sentence in PlanWords.Of(site, plan))
        {
            sentences.WriteLine(sentence);
        }

        if (isTable)
        {
            sentences.WriteLine(PlanWords.Caution);
        }

        return ExitCode.Done;
    }
}
