using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Kernel;

/// <summary>Reading and writing one lane, and aligned memory for blocks of lanes.</summary>
public static unsafe class LaneMemory
{
    /// <summary>Bytes to which every block is aligned: a cache line and the widest vector.</summary>
    private const int Alignment = 64;

    /// <summary>Zeroed memory for a number of items.</summary>
    public static TItem* Allocate<TItem>(int count = 1)
        where TItem : unmanaged
    {
        nuint bytes = (nuint)(sizeof(TItem) * count);
        TItem* memory = (TItem*)NativeMemory.AlignedAlloc(bytes, Alignment);
        Clear(memory, count);
        return memory;
    }

    /// <summary>Zeroes a number of items.</summary>
    public static void Clear<TItem>(TItem* memory, int count)
        where TItem : unmanaged => NativeMemory.Clear(memory, (nuint)(sizeof(TItem) * count));

    /// <summary>Gives memory back.</summary>
    public static void Free(void* memory) => NativeMemory.AlignedFree(memory);

    /// <summary>One lane of a number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Get<T>(T* value, int lane)
        where T : unmanaged, ILane<T> =>
        T.IsSingle ? ((float*)value)[lane] : ((double*)value)[lane];

    /// <summary>Sets one lane of a number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Set<T>(T* value, int lane, double number)
        where T : unmanaged, ILane<T>
    {
        if (T.IsSingle) ((float*)value)[lane] = (float)number;
        else ((double*)value)[lane] = number;
    }
}
