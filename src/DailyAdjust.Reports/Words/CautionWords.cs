using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>What every sheet ends with.</summary>
internal static class CautionWords
{
    public static IReadOnlyList<Phrase> All { get; } =
    [
        new("This is advice. The person on the ground decides."),
        new("Local watering rules and licensed practice come first."),
        new("Lock out the power before you open a controller or the pump."),
        new("Reclaimed water: keep to the signs, setbacks and hours of your permit."),
        new("Do not water frozen ground, and watch for ice on paths."),
        new("A controller runs at what its dial shows. Nothing here changes a dial."),
    ];

    /// <summary>One line for a terminal.</summary>
    public static readonly Phrase Short = new("Advice: the person on the ground decides; local rules come first; lock out before opening a box.");

    /// <summary>The trade's words, for somebody new.</summary>
    public static IReadOnlyList<(Phrase Word, Phrase Meaning)> Explained { get; } =
    [
        (new("%"), new("of a station's own minutes: 60 % of 10 minutes is 6 minutes.")),
        (new("allowable"), new("allowable depletion: how far the root zone may be below full before the grass suffers.")),
        (new("as set"), new("there is no sound advice; the dial stays where it is.")),
        (new("below full"), new("depletion: the depth of water that would fill the root zone. 0 is full.")),
        (new("drained"), new("water that went below the roots: lost to the grass.")),
        (new("ETo"), new("water the weather draws from short grass in a day.")),
        (new("hose on"), new("the depth for the hose to give: what the ground lacks beside what runs tonight, with the room for rain left empty, and no more than it can take when the round is done.")),
        (new("leave"), new("do not touch this dial.")),
        (new("past the allowable"), new("how much further below full than the allowable; there the grass suffers.")),
        (new("short"), new("what a start gives less than was wanted, because the dial ends or the night is too short.")),
        (new("skip"), new("switch the program off for now; the sheet names the day it should come back on if no rain falls.")),
        (new("stays off"), new("it is off, and is not to be turned on yet.")),
        (new("zone"), new("the ground that one station waters.")),
    ];
}
