using System.Runtime.CompilerServices;

[assembly: InternalsVisibleTo("DailyAdjust.Tests")]
