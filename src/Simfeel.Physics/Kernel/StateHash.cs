namespace Simfeel.Physics.Kernel;

/// <summary>A running 64-bit FNV-1a hash over the bits of doubles, for the determinism contract.</summary>
public static class StateHash
{
    /// <summary>The hash of nothing (FNV offset basis).</summary>
    public const ulong Start = 0xcbf29ce484222325;

    private const ulong Prime = 0x100000001b3;

    /// <summary>Mixes the eight bytes of a number in, lowest first.</summary>
    public static ulong Mix(ulong hash, double number)
    {
        ulong bits = BitConverter.DoubleToUInt64Bits(number);
        for (int n = 0; n < 64; n += 8) hash = (hash ^ ((bits >> n) & 0xff)) * Prime;
        return hash;
    }
}
