using System.Globalization;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>Numbers, units, dates and times as this site's people say them. Takes metric values and UTC instants.</summary>
public sealed class SiteWords(UnitSystem units, SiteClock clock, DateOnly sheetDate)
{
    /// <summary>Litres in a US gallon (exact: 231 cubic inches of 2.54 cm).</summary>
    public const double LitresPerGallon = 3.785411784;

    private const double LitresPerM3 = 1000;

    /// <summary>Of a site at no particular date.</summary>
    public static SiteWords Of(Site site) => new(site.Units, site.Clock, site.Start);

    public UnitSystem Units { get; } = units;

    public SiteClock SiteClock { get; } = clock;

    public bool IsUs { get; } = units == UnitSystem.Us;

    public DateOnly SheetDate { get; } = sheetDate;

    public string DepthUnit => IsUs ? "in" : "mm";

    /// <summary>"0.64" or "16.3"; a depth that would read as none but is not reads "under 0.01".</summary>
    public Phrase DepthNumber(double mm) => DepthWords.Number(Units, mm);

    /// <summary>"0.64 in", "16.3 mm"; unknown where nobody knows.</summary>
    public Phrase DepthOf(double? mm) => mm is { } depth ? InUnit(DepthNumber(depth)) : CommonWords.Unknown;

    /// <summary>"0 in", "0 mm": the foot of a scale.</summary>
    public Phrase Zero => InUnit(Phrase.Verbatim("0"));

    /// <summary>Roots and rods: "3.5 in", "90 mm".</summary>
    public Phrase SoilDepth(double metres) => InUnit(Phrase.Verbatim(Tables.Plain.Short(IsUs ? Math.Round(metres * 1000 / Depth.MmPerInch, 1) : Math.Round(metres * 1000))));

    public string RateUnit => DepthUnit + "/h";

    /// <summary>"0.62", "15.7".</summary>
    public string RateNumber(double mmPerHour) => Tables.Plain.Fixed(IsUs ? mmPerHour / Depth.MmPerInch : mmPerHour, IsUs ? 2 : 1);

    /// <summary>"0.62 in/h", "15.7 mm/h".</summary>
    public string Rate(double mmPerHour) => RateNumber(mmPerHour) + " " + RateUnit;

    /// <summary>"640 gal", "2.4 m³": two digits that count, because nobody pours more exactly.</summary>
    public string AboutVolume(double litres) => Volume(litres, digits: 2);

    /// <summary>Whether a volume would read as more than none.</summary>
    public bool ShowsVolume(double litres) => litres / (IsUs ? LitresPerGallon : 1) >= 0.5;

    /// <summary>Three digits that count.</summary>
    public string Volume(double litres) => Volume(litres, digits: 3);

    /// <summary>"850 gpm", "3,200 L/min".</summary>
    public string Flow(double litresPerMin) => IsUs
        ? Grouped(Math.Round(litresPerMin / LitresPerGallon)) + " gpm"
        : Grouped(Math.Round(litresPerMin)) + " L/min";

    /// <summary>A sentence of a record, its depths and speeds in the site's units.</summary>
    public string Recorded(string words) => RecordedUnits.Sentence(Units, words);

    /// <summary>"58 °F", "14.4 °C".</summary>
    public string Temperature(double celsius) => IsUs
        ? Tables.Plain.Fixed(Math.Round((celsius * 9 / 5) + 32), 0) + " °F"
        : Tables.Plain.Fixed(celsius, 1) + " °C";

    /// <summary>"12 mph", "5.4 m/s".</summary>
    public string Speed(double metresPerSecond) => IsUs
        ? Tables.Plain.Fixed(Math.Round(metresPerSecond / Core.Quantities.Units.MPerSPerMph), 0) + " mph"
        : Tables.Plain.Fixed(metresPerSecond, 1) + " m/s";

    /// <summary>"60 %", "off" for 0.</summary>
    public static Phrase Setting(double percent) => percent == 0 ? CommonWords.Off : Phrase.Verbatim(Percent(percent));

    public static string Percent(double percent) => Tables.Plain.Short(percent) + " %";

    public static string Minutes(double minutes) => Tables.Plain.Short(Math.Round(minutes, 1)) + " min";

    /// <summary>"2", "three" is never written: figures are found faster.</summary>
    public static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    /// <summary>"Wed 10 June".</summary>
    public static Phrase Date(DateOnly date) => DateWords.Date(date);

    /// <summary>"Wed 10 Jun".</summary>
    public static Phrase ShortDate(DateOnly date) => DateWords.ShortDate(date);

    /// <summary>"Wednesday 10 June 2026".</summary>
    public static Phrase LongDate(DateOnly date) => DateWords.LongDate(date).Shaped(Capital);

    /// <summary>"10 June".</summary>
    public static Phrase DayMonth(DateOnly date) => DateWords.DayMonth(date);

    /// <summary>"1.2 Mgal", "640 gal", "2,400 m³": beside a scale.</summary>
    public string ShortVolume(double litres)
    {
        const double Million = 1e6;
        var gallons = litres / LitresPerGallon;
        return IsUs && gallons >= Million ? Tables.Plain.Short(Math.Round(gallons / Million, 1)) + " Mgal" : AboutVolume(litres);
    }

    /// <summary>"June".</summary>
    public static Phrase MonthName(DateOnly date) => DateWords.MonthName(date);

    /// <summary>"June 2026".</summary>
    public static Phrase Month(DateOnly date) => DateWords.Month(date);

    /// <summary>"10 Jun".</summary>
    public static Phrase DayShortMonth(DateOnly date) => DateWords.DayShortMonth(date);

    public static string Clock(TimeOnly time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>The time of day on the site's clock: "04:50".</summary>
    public string Time(DateTimeOffset instant) => TimeWords.Clock(SiteClock, instant);

    /// <summary>"04:50 today", "23:10 yesterday", "04:40 tomorrow", "21:30 Fri 12 June".</summary>
    public Phrase When(DateTimeOffset instant) => TimeWords.When(SiteClock, SheetDate, instant);

    /// <summary>"today", "yesterday", "tomorrow", "Fri 12 June".</summary>
    public Phrase Day(DateOnly date) => TimeWords.Day(date, SheetDate);

    private Phrase InUnit(Phrase number) => DepthWords.InUnit(Units, number);

    /// <summary>With a capital letter, as a sentence or heading begins.</summary>
    internal static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private string Volume(double litres, int digits)
    {
        if (IsUs)
        {
            return Grouped(Significant(litres / LitresPerGallon, digits)) + " gal";
        }

        return litres < LitresPerM3
            ? Grouped(Significant(litres, digits)) + " L"
            : Significant(litres / LitresPerM3, digits).ToString("#,0.##", CultureInfo.InvariantCulture) + " m³";
    }

    private static string Grouped(double value) => value.ToString("#,0", CultureInfo.InvariantCulture);

    /// <summary>Rounded to so many digits that count, by decimal steps; below that many digits to whole numbers.</summary>
    private static double Significant(double value, int digits)
    {
        var step = 1.0;
        var places = 0;
        while (Math.Abs(value) / step >= Math.Pow(10, digits))
        {
            step *= 10;
        }

        while (step == 1 && places < 2 && Math.Abs(value) * Math.Pow(10, places + 1) < Math.Pow(10, digits))
        {
            places++;
        }

        return step > 1 ? Math.Round(value / step) * step : Math.Round(value, places);
    }
}
