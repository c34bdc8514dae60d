using DailyAdjust.Core.Explain;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Explain;

public class ProgramStepsTests
{
    [Fact]
    public void Every_program_of_the_example_mornings_can_be_followed_with_a_calculator_to_what_its_sheet_says()
    {
        var lines = 0;
        var kinds = new HashSet<AdviceKind>();
        for (var date = new DateOnly(2026, 6, 5); date <= ExampleInputs.Last; date = date.AddDays(1))
        {
            lines += Followed(ExampleInputs.Morning(date), kinds);
        }

        Assert.True(lines > 7_000, $"{lines} lines");
        Assert.Superset(new HashSet<AdviceKind> { AdviceKind.Set, AdviceKind.Skip, AdviceKind.Leave }, kinds);
    }

    [Fact]
    public void So_can_those_of_random_sites_with_several_starts_hose_probe_and_rain()
    {
        var lines = 0;
        var kinds = new HashSet<AdviceKind>();
        foreach (var site in Enumerable.Range(1, 60).Select(RandomCase.Of))
        {
            lines += Followed(site.Morning(site.Weather[^1].Date), kinds);
        }

        Assert.True(lines > 10_000, $"{lines} lines");
        Assert.Contains(AdviceKind.Resume, kinds);
    }

    [Fact]
    public void An_unanswered_sheet_is_reckoned_both_ways_to_the_number_that_stands()
    {
        var kinds = new HashSet<AdviceKind>();
        var asked = 0;
        for (var date = new DateOnly(2026, 6, 6); date <= ExampleInputs.Last; date = date.AddDays(1))
        {
            var before = ExampleInputs.Morning(date.AddDays(-1));
            var sheet = MorningCalculation.Run(before);
            var inputs = ExampleInputs.Morning(date) with
            {
                Sheets = [new IssuedSheet(sheet.Date, 1, sheet.AsOf, [.. sheet.Programs.Select(p => new IssuedLine(p.Key, p.Advice, p.Percent, p.NeedsVisit))])],
            };
            asked += MorningCalculation.Run(inputs).Programs.Count(p => p.Unanswered is not null);
            Followed(inputs, kinds);
        }

        Assert.True(asked > 5, $"{asked} unanswered");
    }

    [Fact]
    public void Of_a_morning_without_sound_advice_it_says_so()
    {
        var inputs = ExampleInputs.Morning(new DateOnly(2026, 6, 10));
        inputs = inputs with { NewestReadingEnd = inputs.AsOf.AddDays(-5) };
        var sheet = MorningCalculation.Run(inputs);
        var sections = ProgramSteps.Of(inputs, sheet, sheet.Programs[0].Key);
        Assert.Contains(sections.SelectMany(s => s.Steps), s => s.Name.Contains("weather too old or unknown: as set? yes", StringComparison.Ordinal));
        Assert.Equal("advice: as-set, no number", sections[^1].Steps[^1].Name);
    }

    /// <summary>Every zone's and the program's numbers are those of the sheet, and every equation gives its number.</summary>
    internal static int Followed(MorningInputs inputs, HashSet<AdviceKind> kinds)
    {
        var sheet = MorningCalculation.Run(inputs);
        var lines = 0;
        foreach (var advice in sheet.Programs)
        {
            var sections = ProgramSteps.Of(inputs, sheet, advice.Key);
            lines += Reckoned.Lines(sections);
            SetAsideIsSaidInItsOrder([.. sections.SelectMany(section => section.Steps).Select(step => step.Name)]);
            kinds.Add(advice.Advice);
            if (advice.Percent is { } percent)
            {
                Assert.Equal(percent, Last(sections, "percent").Value);
            }

            if (advice.Unanswered is not null || advice.Zones.All(z => z.Percent is null))
            {
                continue;
            }

            Assert.Equal(advice.ExactPercent, Last(sections, "exact").Value);
            Assert.Equal(
                advice.Zones.Where(z => z.SetAside).Select(z => z.Station.ToString()).Order(StringComparer.Ordinal),
                sections.SelectMany(s => s.Steps).Where(s => s.Name.Contains(" is set aside: it needs", StringComparison.Ordinal)).Select(s => s.Name.Split(' ')[0]).Order(StringComparer.Ordinal));
            foreach (var zone in advice.Zones)
            {
                var section = sections.Single(s => s.Title.StartsWith(zone.Station + " ", StringComparison.Ordinal));
                Assert.Equal(zone.Percent, Last([section], "need").Value);
                Assert.Equal(zone.AllowableMm, Last([section], "RAW").Value);
                Assert.Contains(section.Steps, s => s.Name.StartsWith($"can wait: {(zone.CanWait ? "yes" : "no")},", StringComparison.Ordinal));
                Assert.Contains(section.Steps, s => s.Name.StartsWith($"due: {(zone.Due ? "yes" : "no")},", StringComparison.Ordinal));
            }
        }

        return lines;
    }

    /// <summary>"Nothing else" only after something.</summary>
    private static void SetAsideIsSaidInItsOrder(IReadOnlyList<string> names)
    {
        var aside = 0;
        foreach (var name in names)
        {
            if (name.Contains(": nothing is set aside", StringComparison.Ordinal))
            {
                Assert.Equal(0, aside);
            }
            else if (name.Contains(": nothing else is set aside", StringComparison.Ordinal))
            {
                Assert.NotEqual(0, aside);
                aside = 0;
            }
            else
            {
                aside = name.Contains(" stays in: more than a third", StringComparison.Ordinal) ? 0 : aside + (name.Contains(" is set aside: it needs", StringComparison.Ordinal) ? 1 : 0);
            }
        }
    }

    private static Step Last(IReadOnlyList<Section> sections, string symbol) => sections.SelectMany(s => s.Steps).Last(s => s.Symbol.Is(symbol));
}
