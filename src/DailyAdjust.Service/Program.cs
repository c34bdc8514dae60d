namespace DailyAdjust.Service;

public static class Program
{
    public static int Main(string[] args) => args.Length == 0 ? 2 : 0;
}
