using DailyAdjust.Fuzz.Checks;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>Does everything wrong that is looked for, so that it can be seen to be found: `--target faulty --count 20` ends with "20 tried, 20 failed". Chosen by name alone.</summary>
internal sealed class FaultyTarget() : Target("faulty", 0, [Bytes("fault\n")])
{
    public override void Try(byte[] bytes, Random random)
    {
        switch (random.Next(5))
        {
            case 0:
                Hold.That(Deeper(1) < 0, "it came back");
                break;
            case 1:
                while (random.Next(2) < 2)
                {
                    // Reads for ever.
                }

                break;
            case 2:
                List<byte[]> kept = [];
                while (random.Next(2) < 2)
                {
                    kept.Add(new byte[1_000_000]);
                }

                break;
            case 3:
                throw new InvalidOperationException("as in a reader");
            default:
                Hold.That(random.Next(2) > 1, "a count that is wrong");
                break;
        }
    }

    private static int Deeper(int depth) => depth < 0 ? 0 : Deeper(depth + 1) + 1;
}
