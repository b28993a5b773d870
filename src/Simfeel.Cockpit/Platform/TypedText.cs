using System.Buffers;
using System.Text;

namespace Simfeel.Cockpit.Platform;

/// <summary>Takes the text of a text event apart into one event for each character; an input method may hand in several at once.</summary>
internal sealed class TypedText
{
    private readonly byte[] _bytes = new byte[SdlEvent.TextRoom];
    private int _at, _count;

    /// <summary>Takes a text in UTF-8 that ends with a nought.</summary>
    public void Take(ReadOnlySpan<byte> text)
    {
        int length = text.IndexOf((byte)0);
        _count = length < 0 ? text.Length : length;
        text[.._count].CopyTo(_bytes);
        _at = 0;
    }

    /// <summary>The next character; false when there is none. What is no UTF-8 is left out.</summary>
    public bool TryNext(out WindowEvent happened)
    {
        while (_at < _count)
        {
            OperationStatus status = Rune.DecodeFromUtf8(_bytes.AsSpan(_at, _count - _at), out Rune rune, out int taken);
            _at += taken;
            if (status != OperationStatus.Done) continue;
            happened = new(WindowEventKind.Text, rune.Value);
            return true;
        }
        happened = default;
        return false;
    }
}
