namespace DailyAdjust.Core.Quantities;

/// <summary>Every unit that files may use, with its usual spellings.</summary>
/// <remarks>
/// Factors follow from the definitions (inch 25.4 mm, gallon 231 in³, acre 43 560 ft², thermochemical calorie 4.184 J,
/// nautical mile 1852 m, pound-force 4.4482216152605 N). Source: [SP811] appendix B, from memory; the tests hold every one against UnitsNet.
/// </remarks>
internal static class UnitTable
{
    private const double Inch = 0.0254;
    private const double Foot = 12 * Inch;
    private const double Yard = 3 * Foot;
    private const double Mile = 5280 * Foot;
    private const double NauticalMile = 1852;
    private const double Acre = 43560 * Foot * Foot;
    private const double Hectare = 10000;
    private const double GallonL = 231 * Inch * Inch * Inch * 1000;
    private const double ImperialGallonL = 4.54609;
    private const double CubicFootL = Foot * Foot * Foot * 1000;

    /// <summary>1 cal/cm² (a langley), MJ/m².</summary>
    private const double Langley = 0.04184;

    /// <summary>1 Btu (international table), J.</summary>
    private const double Btu = 1055.05585262;

    /// <summary>1 lbf/in², kPa.</summary>
    private const double Psi = 4.4482216152605 / (Inch * Inch) / 1000;

    /// <summary>1 mm of mercury, kPa.</summary>
    private const double MmOfMercury = 13.5951 * 9.80665 / 1000;

    public static IReadOnlyList<(Unit Unit, string[] Spellings)> All { get; } =
    [
        Row(UnitKind.Temperature, "°C", 1, 0, "C", "degC", "deg C", "degree C", "degrees C", "Celsius", "deg Celsius", "degree Celsius", "degrees Celsius", "centigrade", "℃"),
        Row(UnitKind.Temperature, "°F", 5.0 / 9, -32, "F", "degF", "deg F", "degree F", "degrees F", "Fahrenheit", "deg Fahrenheit", "degree Fahrenheit", "degrees Fahrenheit", "℉"),
        Row(UnitKind.Temperature, "K", 1, -273.15, "Kelvin", "degK", "deg K", "°K"),

        Row(UnitKind.Depth, "mm", 1, "millimeter", "millimeters", "millimetre", "millimetres", "L/m2", "kg/m2", "kg m-2"),
        Row(UnitKind.Depth, "cm", 10, "centimeter", "centimeters", "centimetre", "centimetres"),
        Row(UnitKind.Depth, "in", Inch * 1000, "inch", "inches", "ins", "\"", "''"),
        Row(UnitKind.Depth, "ft", Foot * 1000, "foot", "feet"),

        Row(UnitKind.Length, "m", 1, "meter", "meters", "metre", "metres", "mtr"),
        Row(UnitKind.Length, "cm", 0.01, "centimeter", "centimeters", "centimetre", "centimetres"),
        Row(UnitKind.Length, "mm", 0.001, "millimeter", "millimeters", "millimetre", "millimetres"),
        Row(UnitKind.Length, "km", 1000, "kilometer", "kilometers", "kilometre", "kilometres"),
        Row(UnitKind.Length, "ft", Foot, "foot", "feet", "'"),
        Row(UnitKind.Length, "in", Inch, "inch", "inches", "ins", "\"", "''"),
        Row(UnitKind.Length, "yd", Yard, "yard", "yards", "yds"),

        Row(UnitKind.DepthRate, "mm/h", 1, "mm/hr", "mm/hour", "mmh", "mmhr", "mm h-1", "mm hr-1", "mm per hour", "mmph", "L/m2/h", "kg/m2/h"),
        Row(UnitKind.DepthRate, "cm/h", 10, "cm/hr", "cm/hour", "cm h-1", "cm hr-1", "cm per hour"),
        Row(UnitKind.DepthRate, "in/h", Inch * 1000, "in/hr", "in/hour", "inch/h", "inch/hr", "inch/hour", "inches/h", "inches/hr", "inches/hour", "iph", "in h-1", "in hr-1", "in per hour", "inch per hour", "inches per hour", "\"/h", "\"/hr"),

        Row(UnitKind.DepthPerDay, "mm/day", 1, "mm/d", "mm d-1", "mm day-1", "mm per day", "mmd"),
        Row(UnitKind.DepthPerDay, "cm/day", 10, "cm/d", "cm d-1", "cm day-1", "cm per day"),
        Row(UnitKind.DepthPerDay, "in/day", Inch * 1000, "in/d", "inch/day", "inches/day", "inch/d", "inches/d", "in d-1", "in day-1", "in per day", "inch per day", "inches per day"),

        Row(UnitKind.DepthPerDepth, "mm/m", 1, "mm per m", "mm m-1", "mm/metre", "mm/meter"),
        Row(UnitKind.DepthPerDepth, "cm/m", 10, "cm per m", "cm m-1"),
        Row(UnitKind.DepthPerDepth, "in/ft", 1000.0 / 12, "inch/ft", "inches/ft", "in/foot", "inch/foot", "inches/foot", "in per ft", "inch per foot", "inches per foot"),
        Row(UnitKind.DepthPerDepth, "in/in", 1000, "inch/inch", "inches/inch", "in per in", "inch per inch", "m/m", "cm/cm", "mm/mm", "m3/m3", "cm3/cm3", "m3 m-3"),
        Row(UnitKind.DepthPerDepth, "%", 10, "percent", "vol%", "%vol", "pct", "vol-%"),

        Row(UnitKind.Area, "m²", 1, "sqm", "sq m", "square meter", "square meters", "square metre", "square metres"),
        Row(UnitKind.Area, "ft²", Foot * Foot, "sqft", "sq ft", "square foot", "square feet", "sf", "sq feet"),
        Row(UnitKind.Area, "yd²", Yard * Yard, "sqyd", "sq yd", "square yard", "square yards"),
        Row(UnitKind.Area, "cm²", 1e-4, "sqcm", "sq cm", "square centimeter", "square centimeters", "square centimetre", "square centimetres"),
        Row(UnitKind.Area, "in²", Inch * Inch, "sqin", "sq in", "square inch", "square inches"),
        Row(UnitKind.Area, "acre", Acre, "acres", "ac"),
        Row(UnitKind.Area, "ha", Hectare, "hectare", "hectares"),

        Row(UnitKind.Flow, "L/min", 1, "lpm", "L min-1", "litre/min", "liter/min", "litres/min", "liters/min", "L per min", "litres per minute", "liters per minute"),
        Row(UnitKind.Flow, "L/s", 60, "lps", "L s-1", "L/sec", "litre/s", "liter/s", "L per second"),
        Row(UnitKind.Flow, "L/h", 1.0 / 60, "lph", "L/hr", "L h-1", "litre/h", "liter/h"),
        Row(UnitKind.Flow, "m³/h", 1000.0 / 60, "m3/hr", "m3 h-1", "m3 hr-1", "cmh", "cbm/h", "m3/hour", "m3 per hour"),
        Row(UnitKind.Flow, "m³/s", 60000, "m3/sec", "m3 s-1", "cms"),
        Row(UnitKind.Flow, "gpm", GallonL, "gal/min", "gal/minute", "USgpm", "US gpm", "US gal/min", "USgal/min", "gallon/min", "gallons/min", "gals/min", "gallons per minute"),
        Row(UnitKind.Flow, "gph", GallonL / 60, "gal/h", "gal/hr", "gal/hour", "gallons/h", "gallons/hr", "gallons per hour"),
        Row(UnitKind.Flow, "imp gpm", ImperialGallonL, "imperial gpm", "imp gal/min", "UK gpm", "igpm"),
        Row(UnitKind.Flow, "ft³/s", CubicFootL * 60, "cfs", "ft3/sec", "cubic feet per second"),

        Row(UnitKind.Volume, "L", 1, "litre", "litres", "liter", "liters", "ltr"),
        Row(UnitKind.Volume, "m³", 1000, "cbm", "cubic meter", "cubic meters", "cubic metre", "cubic metres", "kL"),
        Row(UnitKind.Volume, "mL", 0.001, "milliliter", "milliliters", "millilitre", "millilitres", "cc", "cm3", "ccm"),
        Row(UnitKind.Volume, "fl oz", GallonL / 128, "US fl oz", "fluid ounce", "fluid ounces"),
        Row(UnitKind.Volume, "gal", GallonL, "gallon", "gallons", "gals", "US gal", "USgal", "US gallon", "US gallons"),
        Row(UnitKind.Volume, "imp gal", ImperialGallonL, "imperial gallon", "imperial gallons", "UK gal"),
        Row(UnitKind.Volume, "kgal", 1000 * GallonL, "1000 gal", "thousand gallons", "kgals"),
        Row(UnitKind.Volume, "Mgal", 1_000_000 * GallonL, "million gal", "million gallons"),
        Row(UnitKind.Volume, "ft³", CubicFootL, "cu ft", "cuft", "cubic foot", "cubic feet", "cf"),
        Row(UnitKind.Volume, "hundred ft³", 100 * CubicFootL, "ccf", "hcf", "100 ft3", "100 cubic feet", "hundred cubic feet"),
        Row(UnitKind.Volume, "acre-in", Acre * Inch * 1000, "acre in", "acre-inch", "acre-inches", "ac-in", "ac in", "acin"),
        Row(UnitKind.Volume, "acre-ft", Acre * Foot * 1000, "acre ft", "acre-foot", "acre-feet", "ac-ft", "ac ft", "acft"),

        Row(UnitKind.Speed, "m/s", 1, "mps", "m s-1", "m/sec", "meter/s", "metre/s", "meters per second", "metres per second"),
        Row(UnitKind.Speed, "km/h", 1 / 3.6, "kmh", "kph", "km/hr", "km h-1", "kmph", "km per hour", "kilometers per hour", "kilometres per hour"),
        Row(UnitKind.Speed, "mph", Mile / 3600, "mi/h", "mi/hr", "mile/h", "miles/h", "miles/hour", "miles per hour", "mi h-1"),
        Row(UnitKind.Speed, "kn", NauticalMile / 3600, "kt", "kts", "knot", "knots", "kns", "nmi/h"),
        Row(UnitKind.Speed, "ft/s", Foot, "ft/sec", "fps", "ft s-1", "feet per second"),
        Row(UnitKind.Speed, "km/day", 1 / 86.4, "km/d", "km d-1", "km day-1"),

        Row(UnitKind.WindRun, "km", 1000, "kilometer", "kilometers", "kilometre", "kilometres"),
        Row(UnitKind.WindRun, "mi", Mile, "mile", "miles", "statute mile", "statute miles"),
        Row(UnitKind.WindRun, "m", 1, "meter", "meters", "metre", "metres"),

        Row(UnitKind.RadiationPower, "W/m²", 1, "Wm-2", "W m-2", "watt/m2", "watts/m2", "W/sqm", "W/sq m", "watts per square meter", "watts per square metre", "J/m2/s"),
        Row(UnitKind.RadiationPower, "kW/m²", 1000, "kWm-2", "kW/sqm"),
        Row(UnitKind.RadiationPower, "MJ/m²/h", 1e6 / 3600, "MJ/m2/hr", "MJ m-2 h-1", "MJ/m2 h", "MJ/(m2 h)", "MJ/m2-h"),
        Row(UnitKind.RadiationPower, "MJ/m²/day", 1e6 / 86400, "MJ/m2/d", "MJ m-2 d-1", "MJ m-2 day-1", "MJ/m2 d", "MJ/m2 day", "MJ/(m2 d)", "MJ/m2-day"),
        Row(UnitKind.RadiationPower, "ly/min", Langley * 1e6 / 60, "langley/min", "langleys/min", "cal/cm2/min", "cal cm-2 min-1"),
        Row(UnitKind.RadiationPower, "ly/h", Langley * 1e6 / 3600, "ly/hr", "langley/h", "langleys/h", "langley/hr", "langleys/hr", "cal/cm2/h"),
        Row(UnitKind.RadiationPower, "ly/day", Langley * 1e6 / 86400, "ly/d", "langley/day", "langleys/day", "cal/cm2/d", "cal/cm2/day"),
        Row(UnitKind.RadiationPower, "kWh/m²/day", 1000.0 / 24, "kWh/m2/d", "kWh m-2 d-1", "kWh/m2 day"),

        Row(UnitKind.RadiationEnergy, "MJ/m²", 1, "MJm-2", "MJ m-2", "MJ/sqm", "MJ/sq m"),
        Row(UnitKind.RadiationEnergy, "kJ/m²", 0.001, "kJm-2", "kJ m-2", "kJ/sqm"),
        Row(UnitKind.RadiationEnergy, "J/m²", 1e-6, "Jm-2", "J m-2", "J/sqm", "Ws/m2"),
        Row(UnitKind.RadiationEnergy, "J/cm²", 0.01, "Jcm-2", "J cm-2"),
        Row(UnitKind.RadiationEnergy, "Wh/m²", 0.0036, "Whm-2", "Wh m-2", "W h/m2"),
        Row(UnitKind.RadiationEnergy, "kWh/m²", 3.6, "kWhm-2", "kWh m-2", "kW h/m2"),
        Row(UnitKind.RadiationEnergy, "ly", Langley, "langley", "langleys", "cal/cm2", "cal cm-2", "calcm-2"),
        Row(UnitKind.RadiationEnergy, "Btu/ft²", Btu / (Foot * Foot) / 1e6, "Btu ft-2", "Btu/sqft", "Btu/sq ft"),

        Row(UnitKind.Percent, "%", 1, "percent", "pct", "per cent", "vol%", "%vol", "vol-%", "% vol", "%RH", "RH%"),
        Row(UnitKind.Percent, "m³/m³", 100, "cm3/cm3", "m3 m-3", "fraction", "v/v"),

        Row(UnitKind.Duration, "min", 1, "mins", "minute", "minutes"),
        Row(UnitKind.Duration, "s", 1.0 / 60, "sec", "secs", "second", "seconds"),
        Row(UnitKind.Duration, "h", 60, "hr", "hrs", "hour", "hours"),
        Row(UnitKind.Duration, "d", 1440, "day", "days"),

        Row(UnitKind.Pressure, "kPa", 1, "kilopascal", "kilopascals"),
        Row(UnitKind.Pressure, "hPa", 0.1, "mbar", "mb", "millibar", "millibars", "hectopascal"),
        Row(UnitKind.Pressure, "Pa", 0.001, "pascal", "pascals"),
        Row(UnitKind.Pressure, "bar", 100, "bars"),
        Row(UnitKind.Pressure, "psi", Psi, "lbf/in2", "lb/in2", "lbs/in2"),
        Row(UnitKind.Pressure, "inHg", 25.4 * MmOfMercury, "in Hg", "inches Hg", "\"Hg", "inches of mercury"),
        Row(UnitKind.Pressure, "mmHg", MmOfMercury, "mm Hg", "torr"),

        Row(UnitKind.Data, "MB", 1, "megabyte", "megabytes"),
        Row(UnitKind.Data, "kB", 0.001, "kilobyte", "kilobytes"),
    ];

    private static (Unit Unit, string[] Spellings) Row(UnitKind kind, string symbol, double factor, params string[] spellings) =>
        (new(kind, symbol, factor, 0), spellings);

    private static (Unit Unit, string[] Spellings) Row(UnitKind kind, string symbol, double factor, double offset, params string[] spellings) =>
        (new(kind, symbol, factor, offset), spellings);
}
