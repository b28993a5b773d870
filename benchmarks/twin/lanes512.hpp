// Lane types of AVX-512: eight doubles, sixteen floats.
#pragma once

#include "lanes.hpp"

struct Lane8 {
    static constexpr int width = 8;
    __m512d v;

    static SIMFEEL_INLINE Lane8 of(double value) { return {_mm512_set1_pd(value)}; }
};

SIMFEEL_INLINE Lane8 operator+(Lane8 a, Lane8 b) { return {_mm512_add_pd(a.v, b.v)}; }
SIMFEEL_INLINE Lane8 operator-(Lane8 a, Lane8 b) { return {_mm512_sub_pd(a.v, b.v)}; }
SIMFEEL_INLINE Lane8 operator*(Lane8 a, Lane8 b) { return {_mm512_mul_pd(a.v, b.v)}; }
SIMFEEL_INLINE Lane8 operator/(Lane8 a, Lane8 b) { return {_mm512_div_pd(a.v, b.v)}; }
SIMFEEL_INLINE Lane8 operator-(Lane8 a) { return {_mm512_xor_pd(a.v, _mm512_set1_pd(-0.0))}; }
SIMFEEL_INLINE Lane8 fma(Lane8 a, Lane8 b, Lane8 c) { return {_mm512_fmadd_pd(a.v, b.v, c.v)}; }
SIMFEEL_INLINE Lane8 fms(Lane8 a, Lane8 b, Lane8 c) { return {_mm512_fmsub_pd(a.v, b.v, c.v)}; }
SIMFEEL_INLINE Lane8 fnma(Lane8 a, Lane8 b, Lane8 c) { return {_mm512_fnmadd_pd(a.v, b.v, c.v)}; }
SIMFEEL_INLINE Lane8 sqrt(Lane8 a) { return {_mm512_sqrt_pd(a.v)}; }
SIMFEEL_INLINE Lane8 abs(Lane8 a) { return {_mm512_abs_pd(a.v)}; }
SIMFEEL_INLINE Lane8 min(Lane8 a, Lane8 b) { return {_mm512_min_pd(a.v, b.v)}; }
SIMFEEL_INLINE Lane8 max(Lane8 a, Lane8 b) { return {_mm512_max_pd(a.v, b.v)}; }
SIMFEEL_INLINE Lane8 if_less(Lane8 a, Lane8 b, Lane8 then, Lane8 otherwise) {
    return {_mm512_mask_blend_pd(_mm512_cmp_pd_mask(a.v, b.v, _CMP_LT_OQ), otherwise.v, then.v)};
}
SIMFEEL_INLINE bool all_equal(Lane8 a, Lane8 b) { return _mm512_cmp_pd_mask(a.v, b.v, _CMP_EQ_OQ) == 0xff; }

SIMFEEL_INLINE void locate(Lane8 angle, Lane8 in_plane, Lane8 speed, const TableLanes& table, CellLanes<Lane8>& cell) {
    constexpr int truncate = _MM_FROUND_TO_ZERO | _MM_FROUND_NO_EXC;
    __m512d i = _mm512_roundscale_pd(angle.v, truncate);
    __m512d j = _mm512_roundscale_pd(in_plane.v, truncate);
    __m512d k = _mm512_roundscale_pd(speed.v, truncate);
    __m512d number = _mm512_fmadd_pd(k, _mm512_set1_pd(slab_stride), _mm512_fmadd_pd(j, _mm512_set1_pd(row_stride), i));
    __m512i offset = _mm512_slli_epi64(_mm512_cvttpd_epi64(number), double_cell_shift);
    _mm512_storeu_si512(cell.cell.address, _mm512_add_epi64(offset, _mm512_loadu_si512(table.address)));
    cell.x.v = _mm512_sub_pd(angle.v, i);
    cell.y.v = _mm512_sub_pd(in_plane.v, j);
    cell.z.v = _mm512_sub_pd(speed.v, k);
}

// A row before x: constant terms in the lower half, those times x in the upper.
SIMFEEL_INLINE __m512d half_row(const double* at, const double* y, const double* z) {
    __m512d vz = _mm512_set1_pd(*z);
    return _mm512_fmadd_pd(
        _mm512_set1_pd(*y), _mm512_fmadd_pd(vz, _mm512_load_pd(at + 24), _mm512_load_pd(at + 8)),
        _mm512_fmadd_pd(vz, _mm512_load_pd(at + 16), _mm512_load_pd(at)));
}

// The rows of two craft side by side.
SIMFEEL_INLINE __m512d pair(__m512d a, __m512d b, __m512d x) {
    return _mm512_fmadd_pd(x, _mm512_shuffle_f64x2(a, b, 0xee), _mm512_shuffle_f64x2(a, b, 0x44));
}

SIMFEEL_INLINE Coefficients<Lane8> interpolate(const CellLanes<Lane8>& cell) {
    auto at = reinterpret_cast<const double* const*>(cell.cell.address);
    auto y = reinterpret_cast<const double*>(&cell.y), z = reinterpret_cast<const double*>(&cell.z);
    __m512d x = cell.x.v;
    __m512d r04 = pair(half_row(at[0], y, z), half_row(at[4], y + 4, z + 4), _mm512_permutex_pd(x, 0x00));
    __m512d r15 = pair(half_row(at[1], y + 1, z + 1), half_row(at[5], y + 5, z + 5), _mm512_permutex_pd(x, 0x55));
    __m512d r26 = pair(half_row(at[2], y + 2, z + 2), half_row(at[6], y + 6, z + 6), _mm512_permutex_pd(x, 0xaa));
    __m512d r37 = pair(half_row(at[3], y + 3, z + 3), half_row(at[7], y + 7, z + 7), _mm512_permutex_pd(x, 0xff));
    __m512d even01 = _mm512_unpacklo_pd(r04, r15), odd01 = _mm512_unpackhi_pd(r04, r15);
    __m512d even23 = _mm512_unpacklo_pd(r26, r37), odd23 = _mm512_unpackhi_pd(r26, r37);
    __m512i first = _mm512_setr_epi64(0, 1, 8, 9, 4, 5, 12, 13);
    __m512i second = _mm512_setr_epi64(2, 3, 10, 11, 6, 7, 14, 15);
    return {
        {_mm512_permutex2var_pd(even01, first, even23)}, {_mm512_permutex2var_pd(odd01, first, odd23)},
        {_mm512_permutex2var_pd(even01, second, even23)}, {_mm512_permutex2var_pd(odd01, second, odd23)}};
}

struct LaneF16 {
    static constexpr int width = 16;
    __m512 v;

    static SIMFEEL_INLINE LaneF16 of(double value) { return {_mm512_set1_ps(static_cast<float>(value))}; }
};

SIMFEEL_INLINE LaneF16 operator+(LaneF16 a, LaneF16 b) { return {_mm512_add_ps(a.v, b.v)}; }
SIMFEEL_INLINE LaneF16 operator-(LaneF16 a, LaneF16 b) { return {_mm512_sub_ps(a.v, b.v)}; }
SIMFEEL_INLINE LaneF16 operator*(LaneF16 a, LaneF16 b) { return {_mm512_mul_ps(a.v, b.v)}; }
SIMFEEL_INLINE LaneF16 operator/(LaneF16 a, LaneF16 b) { return {_mm512_div_ps(a.v, b.v)}; }
SIMFEEL_INLINE LaneF16 operator-(LaneF16 a) { return {_mm512_xor_ps(a.v, _mm512_set1_ps(-0.0f))}; }
SIMFEEL_INLINE LaneF16 fma(LaneF16 a, LaneF16 b, LaneF16 c) { return {_mm512_fmadd_ps(a.v, b.v, c.v)}; }
SIMFEEL_INLINE LaneF16 fms(LaneF16 a, LaneF16 b, LaneF16 c) { return {_mm512_fmsub_ps(a.v, b.v, c.v)}; }
SIMFEEL_INLINE LaneF16 fnma(LaneF16 a, LaneF16 b, LaneF16 c) { return {_mm512_fnmadd_ps(a.v, b.v, c.v)}; }
SIMFEEL_INLINE LaneF16 sqrt(LaneF16 a) { return {_mm512_sqrt_ps(a.v)}; }
SIMFEEL_INLINE LaneF16 abs(LaneF16 a) { return {_mm512_abs_ps(a.v)}; }
SIMFEEL_INLINE LaneF16 min(LaneF16 a, LaneF16 b) { return {_mm512_min_ps(a.v, b.v)}; }
SIMFEEL_INLINE LaneF16 max(LaneF16 a, LaneF16 b) { return {_mm512_max_ps(a.v, b.v)}; }
SIMFEEL_INLINE LaneF16 if_less(LaneF16 a, LaneF16 b, LaneF16 then, LaneF16 otherwise) {
    return {_mm512_mask_blend_ps(_mm512_cmp_ps_mask(a.v, b.v, _CMP_LT_OQ), otherwise.v, then.v)};
}
SIMFEEL_INLINE bool all_equal(LaneF16 a, LaneF16 b) { return _mm512_cmp_ps_mask(a.v, b.v, _CMP_EQ_OQ) == 0xffff; }

SIMFEEL_INLINE void locate(LaneF16 angle, LaneF16 in_plane, LaneF16 speed, const TableLanes& table, CellLanes<LaneF16>& cell) {
    constexpr int truncate = _MM_FROUND_TO_ZERO | _MM_FROUND_NO_EXC;
    __m512 i = _mm512_roundscale_ps(angle.v, truncate);
    __m512 j = _mm512_roundscale_ps(in_plane.v, truncate);
    __m512 k = _mm512_roundscale_ps(speed.v, truncate);
    __m512 number = _mm512_fmadd_ps(
        k, _mm512_set1_ps(static_cast<float>(slab_stride)),
        _mm512_fmadd_ps(j, _mm512_set1_ps(static_cast<float>(row_stride)), i));
    __m512i whole = _mm512_cvttps_epi32(number);
    __m512i low = _mm512_slli_epi64(_mm512_cvtepi32_epi64(_mm512_castsi512_si256(whole)), single_cell_shift);
    __m512i high = _mm512_slli_epi64(_mm512_cvtepi32_epi64(_mm512_extracti64x4_epi64(whole, 1)), single_cell_shift);
    _mm512_storeu_si512(cell.cell.address, _mm512_add_epi64(low, _mm512_loadu_si512(table.address)));
    _mm512_storeu_si512(cell.cell.address + 8, _mm512_add_epi64(high, _mm512_loadu_si512(table.address + 8)));
    cell.x.v = _mm512_sub_ps(angle.v, i);
    cell.y.v = _mm512_sub_ps(in_plane.v, j);
    cell.z.v = _mm512_sub_ps(speed.v, k);
}

// A cell at a speed: its terms of 1, x, y, xy.
SIMFEEL_INLINE __m512 at_speed(const float* at, const float* z) {
    return _mm512_fmadd_ps(_mm512_set1_ps(*z), _mm512_load_ps(at + 16), _mm512_load_ps(at));
}

// The rows of craft n, n + 4, n + 8, n + 12.
SIMFEEL_INLINE __m512 quad(const float* const* at, const float* z, __m512 y, __m512 x) {
    __m512 a = at_speed(at[0], z), b = at_speed(at[4], z + 4), c = at_speed(at[8], z + 8), d = at_speed(at[12], z + 12);
    __m512 low_ab = _mm512_shuffle_f32x4(a, b, 0x44), high_ab = _mm512_shuffle_f32x4(a, b, 0xee);
    __m512 low_cd = _mm512_shuffle_f32x4(c, d, 0x44), high_cd = _mm512_shuffle_f32x4(c, d, 0xee);
    __m512 constant = _mm512_fmadd_ps(
        y, _mm512_shuffle_f32x4(high_ab, high_cd, 0x88), _mm512_shuffle_f32x4(low_ab, low_cd, 0x88));
    __m512 times_x = _mm512_fmadd_ps(
        y, _mm512_shuffle_f32x4(high_ab, high_cd, 0xdd), _mm512_shuffle_f32x4(low_ab, low_cd, 0xdd));
    return _mm512_fmadd_ps(x, times_x, constant);
}

SIMFEEL_INLINE Coefficients<LaneF16> interpolate(const CellLanes<LaneF16>& cell) {
    auto at = reinterpret_cast<const float* const*>(cell.cell.address);
    auto z = reinterpret_cast<const float*>(&cell.z);
    __m512 x = cell.x.v, y = cell.y.v;
    __m512 r0 = quad(at, z, _mm512_permute_ps(y, 0x00), _mm512_permute_ps(x, 0x00));
    __m512 r1 = quad(at + 1, z + 1, _mm512_permute_ps(y, 0x55), _mm512_permute_ps(x, 0x55));
    __m512 r2 = quad(at + 2, z + 2, _mm512_permute_ps(y, 0xaa), _mm512_permute_ps(x, 0xaa));
    __m512 r3 = quad(at + 3, z + 3, _mm512_permute_ps(y, 0xff), _mm512_permute_ps(x, 0xff));
    __m512 low01 = _mm512_unpacklo_ps(r0, r1), high01 = _mm512_unpackhi_ps(r0, r1);
    __m512 low23 = _mm512_unpacklo_ps(r2, r3), high23 = _mm512_unpackhi_ps(r2, r3);
    return {
        {_mm512_shuffle_ps(low01, low23, 0x44)}, {_mm512_shuffle_ps(low01, low23, 0xee)},
        {_mm512_shuffle_ps(high01, high23, 0x44)}, {_mm512_shuffle_ps(high01, high23, 0xee)}};
}
