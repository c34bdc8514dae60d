using System.Runtime.InteropServices;

namespace DailyAdjust.Benchmarks;

/// <summary>The same loops in C, as compare.sh compiles them from Beside; one call runs a whole loop, so that the way there costs nothing.</summary>
internal sealed class LoopsInC(string library)
{
    private readonly nint _handle = NativeLibrary.Load(library);

    public EtoLoop EtoDays => field ??= Marshal.GetDelegateForFunctionPointer<EtoLoop>(NativeLibrary.GetExport(_handle, "eto_days"));

    public ZoneLoop ZoneDays => field ??= Marshal.GetDelegateForFunctionPointer<ZoneLoop>(NativeLibrary.GetExport(_handle, "zone_days"));

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    public delegate void EtoLoop(
        int rows, double[] latitude, double[] elevation, double[] height, double[] day, double[] tmax, double[] tmin, double[] rhmax, double[] rhmin, double[] wind, double[] rs, [In, Out] double[] eto);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    public delegate void ZoneLoop(
        int days, int zones, double[] total, double[] allowable, [In, Out] double[] depletion, double[] demand, int[] first, EventInC[] events, [In, Out] double[] totals);
}
