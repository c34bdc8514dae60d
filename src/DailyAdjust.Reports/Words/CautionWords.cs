namespace DailyAdjust.Reports.Words;

/// <summary>What every sheet ends with.</summary>
internal static class CautionWords
{
    public static IReadOnlyList<string> All { get; } =
    [
        "This is advice. The person on the ground decides.",
        "Local watering rules and licensed practice come first.",
        "Lock out the power before you open a controller or the pump.",
        "Reclaimed water: keep to the signs, setbacks and hours of your permit.",
        "Do not water frozen ground, and watch for ice on paths.",
        "A controller runs at what its dial shows. Nothing here changes a dial.",
    ];

    /// <summary>One line for a terminal.</summary>
    public const string Short = "Advice: the person on the ground decides; local rules come first; lock out before opening a box.";

    /// <summary>The trade's words, for somebody new.</summary>
    public static IReadOnlyList<(string Word, string Meaning)> Explained { get; } =
    [
        ("%", "of a station's own minutes: 60 % of 10 minutes is 6 minutes."),
        ("allowable", "allowable depletion: how far the root zone may be below full before the grass suffers."),
        ("as set", "there is no sound advice; the dial stays where it is."),
        ("below full", "depletion: the depth of water that would fill the root zone. 0 is full."),
        ("drained", "water that went below the roots: lost to the grass."),
        ("ETo", "water the weather draws from short grass in a day."),
        ("hose on", "the depth for the hose to give: what the ground lacks beside what runs tonight, with the room for rain left empty, and no more than it can take when the round is done."),
        ("leave", "do not touch this dial."),
        ("past the allowable", "how much further below full than the allowable; there the grass suffers."),
        ("short", "what a start gives less than was wanted, because the dial ends or the night is too short."),
        ("skip", "switch the program off for now; the sheet names the day it should come back on if no rain falls."),
        ("stays off", "it is off, and is not to be turned on yet."),
        ("zone", "the ground that one station waters."),
    ];
}
