using System.Globalization;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>Lines of EPW, invented.</summary>
internal static class EpwText
{
    public const string Header = """
        LOCATION,Yardville,IL,USA,TMY3,725300,41.98,-87.92,-6.0,201.0
        DESIGN CONDITIONS,0
        TYPICAL/EXTREME PERIODS,0
        GROUND TEMPERATURES,0
        HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0
        COMMENTS 1,invented
        COMMENTS 2,invented
        DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31

        """;

    public static string Row(string time, string t = "25.5", string rh = "52", string sun = "850", string wind = "3.1", string rain = "0.5", string hours = "1.0") =>
        string.Create(CultureInfo.InvariantCulture, $"{time},?9?9?9?9E0?9?9,{t},14.4,{rh},99100,1200,1300,380,{sun},700,120,0,0,0,0,180,{wind},3,3,16.0,77777,9,999999999,250,0.0800,0,88,0.200,{rain},{hours}\n");
}
