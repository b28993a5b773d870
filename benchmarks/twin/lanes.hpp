// Lane types: a number, or several side by side, with the operations that the kernel needs. min and max return b where
// either is NaN, as the hardware does.
#pragma once

#include <cmath>
#include <cstdint>
#ifdef __x86_64__
#include <immintrin.h>
#endif

#define SIMFEEL_INLINE inline __attribute__((always_inline))

// Addresses of the packed rotor tables, or of cells in them.
struct TableLanes {
    std::uint64_t address[16];
};

// A place in each lane's rotor table: cell, and local coordinates in flow angle, in-plane flow and speed.
template <class T>
struct CellLanes {
    TableLanes cell;
    T x, y, z;
};

template <class T>
struct Coefficients {
    T thrust, torque, in_plane, pitch;
};

// Steps of the packed rotor table, in cells and in bytes as a power of two.
constexpr double row_stride = 88, slab_stride = 88 * 24;
constexpr int double_cell_shift = 8, single_cell_shift = 7;

struct Lane1 {
    static constexpr int width = 1;
    double v;

    static SIMFEEL_INLINE Lane1 of(double value) { return {value}; }
};

SIMFEEL_INLINE Lane1 operator+(Lane1 a, Lane1 b) { return {a.v + b.v}; }
SIMFEEL_INLINE Lane1 operator-(Lane1 a, Lane1 b) { return {a.v - b.v}; }
SIMFEEL_INLINE Lane1 operator*(Lane1 a, Lane1 b) { return {a.v * b.v}; }
SIMFEEL_INLINE Lane1 operator/(Lane1 a, Lane1 b) { return {a.v / b.v}; }
SIMFEEL_INLINE Lane1 operator-(Lane1 a) { return {-a.v}; }
SIMFEEL_INLINE Lane1 fma(Lane1 a, Lane1 b, Lane1 c) { return {std::fma(a.v, b.v, c.v)}; }
SIMFEEL_INLINE Lane1 fms(Lane1 a, Lane1 b, Lane1 c) { return {std::fma(a.v, b.v, -c.v)}; }
SIMFEEL_INLINE Lane1 fnma(Lane1 a, Lane1 b, Lane1 c) { return {std::fma(-a.v, b.v, c.v)}; }
SIMFEEL_INLINE Lane1 sqrt(Lane1 a) { return {std::sqrt(a.v)}; }
SIMFEEL_INLINE Lane1 abs(Lane1 a) { return {std::fabs(a.v)}; }
SIMFEEL_INLINE Lane1 min(Lane1 a, Lane1 b) { return {a.v < b.v ? a.v : b.v}; }
SIMFEEL_INLINE Lane1 max(Lane1 a, Lane1 b) { return {a.v > b.v ? a.v : b.v}; }
SIMFEEL_INLINE Lane1 if_less(Lane1 a, Lane1 b, Lane1 then, Lane1 otherwise) { return {a.v < b.v ? then.v : otherwise.v}; }
SIMFEEL_INLINE bool all_equal(Lane1 a, Lane1 b) { return a.v == b.v; }

SIMFEEL_INLINE void locate(Lane1 angle, Lane1 in_plane, Lane1 speed, const TableLanes& table, CellLanes<Lane1>& cell) {
    double i = std::trunc(angle.v), j = std::trunc(in_plane.v), k = std::trunc(speed.v);
    double number = std::fma(k, slab_stride, std::fma(j, row_stride, i));
    cell.cell.address[0] = table.address[0] + (static_cast<std::uint64_t>(static_cast<std::int64_t>(number)) << double_cell_shift);
    cell.x.v = angle.v - i;
    cell.y.v = in_plane.v - j;
    cell.z.v = speed.v - k;
}

#ifdef __AVX2__

// The four coefficients of one craft, in halves of a cell as AVX holds them.
SIMFEEL_INLINE __m256d row(const double* at, const double* x, const double* y, const double* z) {
    __m256d vy = _mm256_broadcast_sd(y), vz = _mm256_broadcast_sd(z);
    __m256d lower = _mm256_fmadd_pd(
        vy, _mm256_fmadd_pd(vz, _mm256_load_pd(at + 24), _mm256_load_pd(at + 8)),
        _mm256_fmadd_pd(vz, _mm256_load_pd(at + 16), _mm256_load_pd(at)));
    __m256d upper = _mm256_fmadd_pd(
        vy, _mm256_fmadd_pd(vz, _mm256_load_pd(at + 28), _mm256_load_pd(at + 12)),
        _mm256_fmadd_pd(vz, _mm256_load_pd(at + 20), _mm256_load_pd(at + 4)));
    return _mm256_fmadd_pd(_mm256_broadcast_sd(x), upper, lower);
}

SIMFEEL_INLINE Coefficients<Lane1> interpolate(const CellLanes<Lane1>& cell) {
    auto at = reinterpret_cast<const double*>(cell.cell.address[0]);
    __m256d c = row(at, &cell.x.v, &cell.y.v, &cell.z.v);
    return {{c[0]}, {c[1]}, {c[2]}, {c[3]}};
}

struct Lane4 {
    static constexpr int width = 4;
    __m256d v;

    static SIMFEEL_INLINE Lane4 of(double value) { return {_mm256_set1_pd(value)}; }
};

SIMFEEL_INLINE Lane4 operator+(Lane4 a, Lane4 b) { return {_mm256_add_pd(a.v, b.v)}; }
SIMFEEL_INLINE Lane4 operator-(Lane4 a, Lane4 b) { return {_mm256_sub_pd(a.v, b.v)}; }
SIMFEEL_INLINE Lane4 operator*(Lane4 a, Lane4 b) { return {_mm256_mul_pd(a.v, b.v)}; }
SIMFEEL_INLINE Lane4 operator/(Lane4 a, Lane4 b) { return {_mm256_div_pd(a.v, b.v)}; }
SIMFEEL_INLINE Lane4 operator-(Lane4 a) { return {_mm256_xor_pd(a.v, _mm256_set1_pd(-0.0))}; }
SIMFEEL_INLINE Lane4 fma(Lane4 a, Lane4 b, Lane4 c) { return {_mm256_fmadd_pd(a.v, b.v, c.v)}; }
SIMFEEL_INLINE Lane4 fms(Lane4 a, Lane4 b, Lane4 c) { return {_mm256_fmsub_pd(a.v, b.v, c.v)}; }
SIMFEEL_INLINE Lane4 fnma(Lane4 a, Lane4 b, Lane4 c) { return {_mm256_fnmadd_pd(a.v, b.v, c.v)}; }
SIMFEEL_INLINE Lane4 sqrt(Lane4 a) { return {_mm256_sqrt_pd(a.v)}; }
SIMFEEL_INLINE Lane4 abs(Lane4 a) { return {_mm256_andnot_pd(_mm256_set1_pd(-0.0), a.v)}; }
SIMFEEL_INLINE Lane4 min(Lane4 a, Lane4 b) { return {_mm256_min_pd(a.v, b.v)}; }
SIMFEEL_INLINE Lane4 max(Lane4 a, Lane4 b) { return {_mm256_max_pd(a.v, b.v)}; }
SIMFEEL_INLINE Lane4 if_less(Lane4 a, Lane4 b, Lane4 then, Lane4 otherwise) {
    return {_mm256_blendv_pd(otherwise.v, then.v, _mm256_cmp_pd(a.v, b.v, _CMP_LT_OQ))};
}
SIMFEEL_INLINE bool all_equal(Lane4 a, Lane4 b) {
    return _mm256_movemask_pd(_mm256_cmp_pd(a.v, b.v, _CMP_EQ_OQ)) == 0xf;
}

SIMFEEL_INLINE void locate(Lane4 angle, Lane4 in_plane, Lane4 speed, const TableLanes& table, CellLanes<Lane4>& cell) {
    constexpr int truncate = _MM_FROUND_TO_ZERO | _MM_FROUND_NO_EXC;
    __m256d i = _mm256_round_pd(angle.v, truncate);
    __m256d j = _mm256_round_pd(in_plane.v, truncate);
    __m256d k = _mm256_round_pd(speed.v, truncate);
    __m256d number = _mm256_fmadd_pd(k, _mm256_set1_pd(slab_stride), _mm256_fmadd_pd(j, _mm256_set1_pd(row_stride), i));
    __m256i offset = _mm256_slli_epi64(_mm256_cvtepi32_epi64(_mm256_cvttpd_epi32(number)), double_cell_shift);
    __m256i base = _mm256_loadu_si256(reinterpret_cast<const __m256i*>(table.address));
    _mm256_storeu_si256(reinterpret_cast<__m256i*>(cell.cell.address), _mm256_add_epi64(offset, base));
    cell.x.v = _mm256_sub_pd(angle.v, i);
    cell.y.v = _mm256_sub_pd(in_plane.v, j);
    cell.z.v = _mm256_sub_pd(speed.v, k);
}

SIMFEEL_INLINE Coefficients<Lane4> interpolate(const CellLanes<Lane4>& cell) {
    auto at = reinterpret_cast<const double* const*>(cell.cell.address);
    auto x = reinterpret_cast<const double*>(&cell.x), y = reinterpret_cast<const double*>(&cell.y);
    auto z = reinterpret_cast<const double*>(&cell.z);
    __m256d r0 = row(at[0], x, y, z), r1 = row(at[1], x + 1, y + 1, z + 1);
    __m256d r2 = row(at[2], x + 2, y + 2, z + 2), r3 = row(at[3], x + 3, y + 3, z + 3);
    __m256d even01 = _mm256_unpacklo_pd(r0, r1), odd01 = _mm256_unpackhi_pd(r0, r1);
    __m256d even23 = _mm256_unpacklo_pd(r2, r3), odd23 = _mm256_unpackhi_pd(r2, r3);
    return {
        {_mm256_permute2f128_pd(even01, even23, 0x20)}, {_mm256_permute2f128_pd(odd01, odd23, 0x20)},
        {_mm256_permute2f128_pd(even01, even23, 0x31)}, {_mm256_permute2f128_pd(odd01, odd23, 0x31)}};
}

#else

SIMFEEL_INLINE Coefficients<Lane1> interpolate(const CellLanes<Lane1>& cell) {
    auto at = reinterpret_cast<const double*>(cell.cell.address[0]);
    double c[4];
    for (int q = 0; q < 4; q++) {
        double lower = std::fma(cell.y.v, std::fma(cell.z.v, at[q + 24], at[q + 8]), std::fma(cell.z.v, at[q + 16], at[q]));
        double upper = std::fma(cell.y.v, std::fma(cell.z.v, at[q + 28], at[q + 12]), std::fma(cell.z.v, at[q + 20], at[q + 4]));
        c[q] = std::fma(cell.x.v, upper, lower);
    }
    return {{c[0]}, {c[1]}, {c[2]}, {c[3]}};
}

#endif
