using System.Globalization;
using System.Runtime.Intrinsics.X86;
using Xunit;

namespace DailyAdjust.Tests.Properties;

/// <summary>
/// The place that this run of the tests was put in (tests/elsewhere.sh) is really in force: cultures that differ, the time zone, a processor without fused
/// multiply-add. Otherwise the others would show nothing there.
/// </summary>
[Trait("Promise", "8")]
public sealed class ElsewhereTests
{
    [Fact]
    public void Cultures_are_not_switched_off()
    {
        Assert.Equal(",", CultureInfo.GetCultureInfo("de-DE").NumberFormat.NumberDecimalSeparator);
        Assert.Equal("1,25", 1.25.ToString(CultureInfo.GetCultureInfo("de-DE")));
        Assert.Equal("İ", "i".ToUpper(CultureInfo.GetCultureInfo("tr-TR")));
    }

    [Fact]
    public void The_culture_that_the_environment_names_is_the_current_one()
    {
        if (Environment.GetEnvironmentVariable("LC_ALL") is { Length: > 1 } named && named[2] == '_')
        {
            Assert.Equal(named[..5].Replace('_', '-'), CultureInfo.CurrentCulture.Name);
        }
    }

    [Fact]
    public void The_time_zone_that_the_environment_names_is_the_local_one()
    {
        if (Environment.GetEnvironmentVariable("TZ") is { Length: > 0 } named)
        {
            Assert.Equal(named, TimeZoneInfo.Local.Id);
        }
    }

    [Fact]
    public void Fused_multiply_add_that_is_switched_off_is_off()
    {
        if (string.Equals(Environment.GetEnvironmentVariable("DOTNET_EnableFMA"), "0", StringComparison.Ordinal))
        {
            Assert.False(Fma.IsSupported);
            Assert.False(Avx2.IsSupported);
        }
    }
}
