using Simfeel.Flight.Traces;

namespace Simfeel.Flight.Tests.Traces;

/// <summary>Whatever is in a file, reading it ends, takes little memory, and fails with one clear error if at all.</summary>
public class HostileTraceTests
{
    private const long MostMemory = 200_000_000;

    private static readonly Lazy<byte[]> Whole = new(() => Flights.Steady(1));

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Five_hundred_mutations_each_give_rows_or_one_clear_error(int seed)
    {
        byte[] whole = Whole.Value;
        int schema = Flights.HeaderLength(whole);
        Random random = new(seed);
        int refused = 0;
        for (int n = 0; n < 500; n++)
        {
            byte[] bytes = Mutate(whole, schema, random);
            long before = GC.GetAllocatedBytesForCurrentThread();
            try
            {
                using TraceReader trace = TraceReader.Open(new MemoryStream(bytes));
                TraceRow row = trace.NewRow();
                while (trace.Read(row))
                {
                }
            }
            catch (TraceException e)
            {
                if (GC.GetAllocatedBytesForCurrentThread() - before > MostMemory) Assert.Fail(e.ToString());
                refused++;
                Assert.DoesNotContain('\n', e.Message);
                Assert.InRange(e.Message.Length, 20, 600);
            }
            long taken = GC.GetAllocatedBytesForCurrentThread() - before;
            Assert.True(taken < MostMemory, $"mutation {n} took {taken} bytes");
        }
        Assert.InRange(refused, 100, 500);
    }

    [Fact]
    public void Files_that_are_no_traces_say_so()
    {
        Assert.Contains("empty", Refusal([]), StringComparison.Ordinal);
        Assert.Contains("no Arrow stream", Refusal("name = \"Wagtail\"\n"u8.ToArray()), StringComparison.Ordinal);
        Assert.Contains("2147483647 bytes", Refusal([0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0x7F, 1, 2, 3]), StringComparison.Ordinal);
        Assert.Contains("no key 'format'", Refusal(ForeignStream()), StringComparison.Ordinal);
        Assert.Contains("cannot be opened", Assert.Throws<TraceException>(() => TraceReader.Open("no/such/trace.arrow")).Message, StringComparison.Ordinal);
    }

    private static string Refusal(byte[] bytes) => Assert.Throws<TraceException>(() => TraceReader.Open(new MemoryStream(bytes))).Message;

    private static byte[] ForeignStream()
    {
        using MemoryStream stream = new();
        Apache.Arrow.Schema schema = new([new("time", Apache.Arrow.Types.DoubleType.Default, false)], null);
        using (Apache.Arrow.Ipc.ArrowStreamWriter writer = new(stream, schema, leaveOpen: true))
        {
            writer.WriteStart();
            writer.WriteEnd();
        }
        return stream.ToArray();
    }

    private static byte[] Mutate(byte[] whole, int schema, Random random)
    {
        byte[] bytes = [.. whole];
        // half of the blows fall on the messages' own metadata, where lengths and offsets are
        int changes = 1 + random.Next(8);
        for (int n = 0; n < changes; n++)
        {
            int within = random.Next(3) switch
            {
                0 => Math.Min(bytes.Length, 4096),
                1 => Math.Min(bytes.Length, schema + 12_000),
                _ => bytes.Length,
            };
            int from = within > schema && random.Next(2) == 0 ? schema : 0;
            int at = random.Next(Math.Min(from, within - 1), within);
            switch (random.Next(5))
            {
                case 0: bytes[at] ^= (byte)(1 << random.Next(8)); break;
                case 1: bytes[at] = (byte)random.Next(256); break;
                case 2: bytes.AsSpan(at, Math.Min(4, bytes.Length - at)).Fill(0xFF); break;
                case 3: bytes.AsSpan(at, Math.Min(8, bytes.Length - at)).Fill(0x7F); break;
                default: bytes.AsSpan(at, Math.Min(random.Next(64), bytes.Length - at)).Clear(); break;
            }
        }
        if (random.Next(4) == 0) bytes = bytes[..random.Next(bytes.Length)];
        return bytes;
    }
}
