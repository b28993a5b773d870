// C interface of the twin: the width of a lane type picks it, blocks of memory are those of the C# kernel.
#include "kernel.hpp"
#ifdef __AVX512F__
#include "lanes512.hpp"
#endif

namespace {

struct Blocks {
    void *x, *dx, *command, *craft, *field, *load, *scratch;
};

template <class T>
void midpoint(const Blocks& b, double step, int steps) {
    for (int n = 0; n < steps; n++)
        Kernel<T>::midpoint_step(
            static_cast<T*>(b.x), static_cast<T*>(b.dx), static_cast<const T*>(b.command),
            static_cast<const CraftLanes<T>*>(b.craft), static_cast<const FieldLanes<T>*>(b.field),
            static_cast<LoadLanes<T>*>(b.load), static_cast<T*>(b.scratch), step);
}

template <class T>
void runge_kutta(const Blocks& b, double step, int steps) {
    for (int n = 0; n < steps; n++)
        Kernel<T>::runge_kutta_step(
            static_cast<T*>(b.x), static_cast<const T*>(b.command), static_cast<const CraftLanes<T>*>(b.craft),
            static_cast<const FieldLanes<T>*>(b.field), static_cast<LoadLanes<T>*>(b.load),
            static_cast<T*>(b.scratch), step);
}

template <class T>
int size_of(int block) {
    switch (block) {
        case 0: return sizeof(T);
        case 1: return sizeof(CraftLanes<T>);
        case 2: return sizeof(FieldLanes<T>);
        case 3: return sizeof(LoadLanes<T>);
        default: return 0;
    }
}

}  // namespace

extern "C" {

// Steps of the midpoint rule. Does nothing for a width that was not built.
void simfeel_twin_midpoint(int width, const Blocks* blocks, double step, int steps) {
    switch (width) {
        case 1: return midpoint<Lane1>(*blocks, step, steps);
#ifdef __AVX2__
        case 4: return midpoint<Lane4>(*blocks, step, steps);
#endif
#ifdef __AVX512F__
        case 8: return midpoint<Lane8>(*blocks, step, steps);
        case 16: return midpoint<LaneF16>(*blocks, step, steps);
#endif
    }
}

// Steps of the Runge-Kutta method. Does nothing for a width that was not built.
void simfeel_twin_runge_kutta(int width, const Blocks* blocks, double step, int steps) {
    switch (width) {
        case 1: return runge_kutta<Lane1>(*blocks, step, steps);
#ifdef __AVX2__
        case 4: return runge_kutta<Lane4>(*blocks, step, steps);
#endif
#ifdef __AVX512F__
        case 8: return runge_kutta<Lane8>(*blocks, step, steps);
        case 16: return runge_kutta<LaneF16>(*blocks, step, steps);
#endif
    }
}

// Bytes of a lane (0), craft (1), field (2) or load (3) block, 0 for a width that was not built.
int simfeel_twin_size(int width, int block) {
    switch (width) {
        case 1: return size_of<Lane1>(block);
#ifdef __AVX2__
        case 4: return size_of<Lane4>(block);
#endif
#ifdef __AVX512F__
        case 8: return size_of<Lane8>(block);
        case 16: return size_of<LaneF16>(block);
#endif
        default: return 0;
    }
}

// Compiler that built the twin.
const char* simfeel_twin_compiler() {
#ifdef __clang__
    return "clang++ " __clang_version__;
#else
    return "g++ " __VERSION__;
#endif
}
}
