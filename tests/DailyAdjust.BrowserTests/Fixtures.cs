using DailyAdjust.BrowserTests;
using Xunit;

[assembly: AssemblyFixture(typeof(Chromium))]
[assembly: AssemblyFixture(typeof(Pages))]
