namespace DailyAdjust.Reports.Index;

/// <summary>
/// How much a site presses, the most urgent first; sites that press alike stand in ordinal order of their names. First where nobody can know what to do: the sheet is
/// missing, then there is no sound advice. Then what cannot wait for the round: water to be run by hand before a time, boxes that may have lost their programs. Then what
/// a wrong percentage is small against: a program that must not run and is on, one that is off though its ground needs water. Then the other dials, then what only
/// waits for an answer.
/// </summary>
public enum Urgency
{
    NoSheet,
    NoAdvice,
    RunByHand,
    VerifyBoxes,
    OffOrOn,
    Changes,
    Questions,
    Nothing,
}
