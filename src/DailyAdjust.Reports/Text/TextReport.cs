using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>report-full.txt: what is to be done and known, for a terminal; charts and tables are on the page.</summary>
internal static class TextReport
{
    private const int MostListed = 4;

    public static string Write(SheetView view)
    {
        var lines = new TextLines(view.Language);
        Head(lines, view);
        ByHandText.Write(lines, view);
        lines.Blank();
        Round(lines, view);
        ExceptionsText.Write(lines, view);
        lines.Blank();
        Night(lines, view);
        Ground(lines, view);
        lines.Blank();
        lines.Add(CautionWords.Short);
        return lines.ToString();
    }

    /// <summary>Which site, date and sheet.</summary>
    public static Phrase Title(SheetView view)
    {
        var replaces = view.Issue.Replaces is { } old ? $", replaces issue {SiteWords.Count(old)}" : Phrase.Empty;
        return $"{view.Sheet.Site.Name}: {SiteWords.LongDate(view.Sheet.Date)} (sheet {view.Id}{replaces})";
    }

    private static void Head(TextLines lines, SheetView view)
    {
        lines.Add(Title(view));
        lines.Add(HoseWords.AfterRound(view));
        var fresh = view.Sheet.Freshness;
        if (view.NoAdvice)
        {
            lines.Add($"! {FreshnessWords.NoAdviceTitle}: {FreshnessWords.NoAdvice(fresh)} {FreshnessWords.LeaveDials}");
        }

        foreach (var group in QuestionGroup.Of(view))
        {
            foreach (var question in group.All)
            {
                lines.Add($"! {group.Title}: {question.Words}");
                foreach (var line in question.Details.Append(question.Answer).Append(question.Further).Where(l => !l.IsEmpty))
                {
                    lines.Add(line, indent: 2);
                }
            }
        }

        foreach (var notice in view.Issue.Notices)
        {
            lines.Add("! " + FreshnessWords.Sentence(notice), most: 2);
        }

        if (view.Sheet.Corrections is { } corrections)
        {
            lines.Add($"{CorrectionWords.Title}: {Phrase.Join(" ", CorrectionWords.Of(corrections, view))}");
        }

        if (view.Sheet.SecondLook is { } look)
        {
            lines.Add($"{SecondLookWords.Title}: {SecondLookWords.Line(look, view.Words)}");
        }

        lines.Add(FreshnessWords.Through(fresh, view.Words)
            + (fresh.Assumed.Count > 0 ? $" {FreshnessWords.AssumedTitle}: {Phrase.Join(" ", fresh.Assumed.Select(FreshnessWords.Sentence))}" : Phrase.Empty));
        foreach (var (title, sentences) in new[] { (FreshnessWords.SetAsideTitle, fresh.SetAside), (FreshnessWords.DoubtsTitle, fresh.Doubts) })
        {
            if (sentences.Count > 0)
            {
                lines.Add($"{title}: {Phrase.Join(" ", sentences.Select(FreshnessWords.Sentence))}");
            }
        }
    }

    private static void Round(TextLines lines, SheetView view)
    {
        lines.Add(RoundWords.Title(view).Shaped(title => title.ToUpperInvariant()));
        foreach (var box in view.Boxes)
        {
            lines.Add(RoundWords.Box(box));
            foreach (var line in box.Lines)
            {
                Line(lines, line, view);
            }
        }

        if (view.Boxes.Count == 0)
        {
            lines.Add(RoundWords.Nothing);
        }

        AsSet(lines, view);
        lines.Add(RoundWords.Foot(view.Counts));
    }

    private static void Line(TextLines lines, RoundLine line, SheetView view)
    {
        var advice = line.First;
        lines.Add($"[ ] {RoundWords.Programs(line)}: {AdviceWords.ActAndNumbers(advice)}", indent: 3);
        lines.Add(Phrase.Sentences(AdviceWords.CutOff(advice, view.Words), AdviceWords.ReasonAndUntil(advice, view.Words)), indent: 7);
        foreach (var minutes in advice.NewMinutes)
        {
            lines.Add(AdviceWords.NewMinutes(minutes), indent: 7);
        }

        if (AdviceWords.Split(advice) is { IsEmpty: false } split)
        {
            lines.Add(split, indent: 7, most: 4);
        }

        if (advice.StopRule is { } rule)
        {
            lines.Add(AdviceWords.Stop(rule, view.Words), indent: 7);
        }
    }

    private static void AsSet(TextLines lines, SheetView view)
    {
        var off = view.AsSet.Where(p => p.Present.IsOff).ToList();
        var running = view.AsSet.Where(p => !p.Present.IsOff).ToList();
        if (off.Count > 0)
        {
            lines.Add($"{RoundWords.OffNow}: {string.Join(", ", off.Select(p => view.Label(p.Key)))}.", most: 6);
        }

        if (running.Count > 0)
        {
            lines.Add($"{RoundWords.RunningAsSet}: {Phrase.Join(", ", running.Select(p => Phrase.Of($"{view.Label(p.Key)} {SiteWords.Setting(p.Present.Percent)}")))}.", most: 6);
        }
    }

    private static void Night(TextLines lines, SheetView view)
    {
        var night = view.Sheet.Overnight;
        var words = view.Words;
        lines.Add(RoundWords.RainLead(view));
        foreach (var line in SectionWords.RainByHand(view))
        {
            lines.Add(line);
        }

        lines.Add(SectionWords.EtoLine(night, view.Sheet.Freshness, words));
        lines.Add(SectionWords.LowestLine(night, words));
        ForecastText.Write(lines, view);
        var due = view.Sheet.DueRuns.Where(r => !r.Answered).ToList();
        if (due.Count > 0)
        {
            lines.Add($"{SectionWords.DidItRun} {Phrase.Join("; ", due.Take(8).Select(r => Phrase.Of($"{view.Label(r.Program)} {words.When(r.Start)} to {words.Time(r.Finishes)}")))}{(due.Count > 8
                ? $"; {ShortTextWords.AndMore(due.Count - 8)}"
                : Phrase.Empty)}.");
        }
    }

    private static void Ground(TextLines lines, SheetView view)
    {
        var sheet = view.Sheet;
        var words = view.Words;
        if (sheet.Driest.Count > 0)
        {
            lines.Add($"{SectionWords.Driest}:{OldWeather(view)}");
            lines.AddList([.. sheet.Driest.Select(dry => Dry(dry, words))], MostListed, most: 3);
        }

        GroundText.Write(lines, view);
        if (sheet.Wettest.Count > 0)
        {
            lines.Add($"{SectionWords.Wettest}:{OldWeather(view)} {Phrase.Join(", ", sheet.Wettest.Take(MostListed).Select(w => Phrase.Of($"{w.Name} {words.DepthOf(w.DrainedMm + w.RanOffMm)}")))}. {SectionWords.WetCaution}");
        }

        foreach (var order in sheet.StandingOrders)
        {
            lines.Add($"{SectionWords.Standing}: {StandingWords.Order(order, view)}");
        }

        foreach (var passed in WaterWords.Passed(sheet.Water, words))
        {
            lines.Add($"{WaterWords.PassedTitle}: {FreshnessWords.Sentence(passed)}");
        }

        foreach (var worth in sheet.IfVisited.Take(MostListed))
        {
            lines.Add($"{VisitWords.Title}: {VisitWords.Line(worth, view)}");
        }

        if (sheet.IfVisited.Count > 1 && VisitWords.Order(view) is { IsEmpty: false } boxes)
        {
            lines.Add(boxes);
        }

        foreach (var problem in FitWords.Problems(sheet.Fit, words))
        {
            lines.Add($"{SectionWords.Fit} {problem}");
        }
    }

    /// <summary>Where, how deep and how much, and what to know before; then why.</summary>
    public static Phrase Dry(DryZone dry, SiteWords words) => Phrase.Sentences(DryAct(dry, words, int.MaxValue), DryWhy(dry, words));

    /// <summary>What is to be done there, a name of so many letters at most.</summary>
    public static Phrase DryAct(DryZone dry, SiteWords words, int mostOfName)
    {
        var volume = dry.VolumeL is { } litres ? $", about {words.AboutVolume(litres)}" : Phrase.Empty;
        var name = string.Equals(dry.Name, dry.Station.ToString(), StringComparison.Ordinal) ? Phrase.Empty : $", {TextLines.Cut(dry.Name, mostOfName)}";
        return Phrase.Sentences(FreshnessWords.Sentence(Phrase.Of($"{dry.Station}: {TableWords.HoseOn} {words.DepthOf(dry.ShortMm)}{volume}{name}")), GroundWords.BeforeHose(dry));
    }

    public static Phrase DryWhy(DryZone dry, SiteWords words) => Phrase.Sentences(FreshnessWords.Sentence(dry.Why).Shaped(SiteWords.Capital), GroundWords.OtherWay(dry, words));

    private static Phrase OldWeather(SheetView view) => view.NoAdvice ? $" {SectionWords.OldWeather}" : Phrase.Empty;
}
