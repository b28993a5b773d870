using System.Buffers.Binary;
using Apache.Arrow;
using Apache.Arrow.Ipc;
using Simfeel.Flight;
using Simfeel.Flight.Traces;
using Simfeel.Fuzz.Oracles;
using Simfeel.Fuzz.Running;
using Simfeel.Fuzz.Targets;

namespace Simfeel.Fuzz.Mutation;

/// <summary>Good traces to begin with, and traces with another header.</summary>
internal static class TraceMaker
{
    private const int RowsOfABatch = 5;

    /// <summary>A flight of 0.2 s over a field, or over none.</summary>
    public static byte[] Fly(bool field)
    {
        FlyableBuild build = Starters.Flyable;
        TraceHeader header = TraceHeader.Of(build, build, Starters.Profile, new()) with
        {
            FieldName = field ? "Small" : "",
            FieldText = field ? System.Text.Encoding.UTF8.GetString(Corpus.Of("corpus/fields")[0]) : "",
        };
        using MemoryStream stream = new();
        Schema schema = TraceSchema.Of(header);
        using TraceFile file = new(stream, schema);
        TraceBatch batch = new(header, schema);
        TraceRow row = new(header.ReadingsPerRow, 4, 4);
        using FlightSession session = new(build.Unit, build.Unit, Starters.Profile, new(), header.ReadField());
        file.Start();
        for (int n = 0; n < 20; n++)
        {
            for (row.Count = 0; row.Count < row.Room.Length; row.Count++)
            {
                double stick = Math.Sin(0.1 * session.Readings);
                row.Room[row.Count] = PilotInput.Of(new(stick, -stick, 0.3, 0.5), n == 12 ? PilotSwitches.Armed | PilotSwitches.SwapInPlace : PilotSwitches.Armed | PilotSwitches.Shadow);
                session.Fly(row.Room[row.Count]);
            }
            row.Take(session);
            batch.Add(row);
            if (batch.Rows == RowsOfABatch) file.Write(batch.Take());
        }
        file.End();
        return stream.ToArray();
    }

    /// <summary>Places and lengths of the messages of a trace.</summary>
    public static IReadOnlyList<(int At, int Metadata, int Length)> Messages(byte[] trace)
    {
        List<(int, int, int)> found = [];
        int at = 0;
        while (at + 8 <= trace.Length && BinaryPrimitives.ReadInt32LittleEndian(trace.AsSpan(at + 4)) is int metadata and > 0)
        {
            int body = (int)FlatTable.Root(trace.AsSpan(at + 8, metadata)).Int64(3);
            found.Add((at, metadata, 8 + metadata + body));
            at += 8 + metadata + body;
        }
        return found;
    }

    /// <summary>The rows of a trace behind a header with other words.</summary>
    /// <param name="trace">A good trace.</param>
    /// <param name="change">Changes keys and words of its header.</param>
    public static byte[] WithHeader(byte[] trace, Action<Dictionary<string, string>> change)
    {
        using TraceReader reader = TraceReader.Open(new MemoryStream(trace));
        Dictionary<string, string> words = reader.Header.ToMetadata().ToDictionary();
        change(words);
        Schema schema = new(TraceSchema.Of(reader.Header).FieldsList, words);
        using MemoryStream stream = new();
        using (ArrowStreamWriter writer = new(stream, schema, leaveOpen: true)) writer.WriteStart();
        stream.Write(trace.AsSpan(Messages(trace)[0].Length));
        return stream.ToArray();
    }

    /// <summary>A trace with a blow at its structure: lengths, offsets, order of messages.</summary>
    public static byte[] Struck(byte[] trace, Dice dice)
    {
        IReadOnlyList<(int At, int Metadata, int Length)> messages = Messages(trace);
        (int at, int metadata, int length) = dice.Of(messages);
        byte[] changed = [.. trace];
        switch (dice.Below(8))
        {
            case 0: return [.. trace[..at], .. trace[(at + length)..]];
            case 1: return [.. trace[..(at + length)], .. trace[at..]];
            case 2:
                BinaryPrimitives.WriteInt32LittleEndian(changed.AsSpan(at + 4), Length(metadata, dice));
                return changed;
            case 3 or 4 or 5:
                // a number in the message's own table: offsets, lengths, counts, kinds
                for (int n = dice.From(1, 3); n > 0; n--)
                {
                    int place = at + 8 + (4 * dice.Below(metadata / 4));
                    BinaryPrimitives.WriteInt32LittleEndian(changed.AsSpan(place), Length(BinaryPrimitives.ReadInt32LittleEndian(changed.AsSpan(place)), dice));
                }
                return changed;
            case 6:
                for (int n = dice.From(1, 8); n > 0; n--) changed[at + dice.Below(length)] = (byte)dice.Below(256);
                return changed;
            default: return trace[..(at + dice.Below(length))];
        }
    }

    private static int Length(int value, Dice dice) => dice.Below(10) switch
    {
        0 => int.MaxValue,
        1 => int.MinValue,
        2 => -1,
        3 => 0,
        4 => value + 8,
        5 => value - 8,
        6 => value * 16,
        7 => 1 << dice.Below(31),
        8 => value ^ (1 << dice.Below(32)),
        _ => value + 1,
    };
}
