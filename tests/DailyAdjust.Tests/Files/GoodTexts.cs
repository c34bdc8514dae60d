using DailyAdjust.Core.Contracts;

namespace DailyAdjust.Tests.Files;

/// <summary>Files of the example site that people fill in, without faults.</summary>
internal static class GoodTexts
{
    public static readonly string Round = string.Join(',', RoundColumns.All) + "\n2026-06-10/1,C1,,P1,,set,90,60,yes,70,\n2026-06-10/1,C2,,P2,,skip,90,0,no,,\n2026-06-10/1,C1,,P2,,set,100,60,55,,\n";

    public static readonly string Cups = "where,cup,volume (mL),throat diameter (in),run time (min),wind speed (mph)\nC1/3,1,31,4.25,15,2\nC1/3,2,27,,,\nC1/3,3,35,,,\nC1/3,4,29,,,\nC2/4 C2/5,1,12,4.25,20,\nC2/4 C2/5,2,18,,,\nC2/4 C2/5,3,0,,,\nC2/4 C2/5,4,21.5,,,\n";
}
