/*
 * Many comparisons at once, for training and evaluation. With -msimd128 eight series go side by side
 * through one instruction; the integers are those of the core, which does all without it and whatever
 * might not fit sixteen bits. Knows the core only through its public header.
 */
#include "movewright.h"

#define EXPORT(name) __attribute__((export_name(name)))

/* Series side by side. */
#define LANES 8

#ifdef __wasm_simd128__
#include <wasm_simd128.h>

/* A distance this large may have been cut off. */
#define CUT_OFF 0xffffu
/* Kernel outputs fit int16 up to so many channels: each is below 254 a point, taps weigh 12. */
#define MOST_CHANNELS 10
#define TAPS 9

static v128_t lanes_at(const int16_t *from) { return wasm_v128_load(from); }

#define INLINE static inline __attribute__((always_inline))

/* One row of the warping matrix, eight series at once, saturating. */
INLINE void advance(const int8_t *point, const int16_t *columns, int channels, int from, int to,
                    v128_t left, v128_t diagonal, v128_t *row) {
  v128_t value[MVW_CHANNELS];
  for (int c = 0; c < channels; c++) value[c] = wasm_i16x8_splat(point[c]);
  const int16_t *column = columns + from * channels * LANES;
  for (int j = from; j <= to; j++) {
    v128_t cost = wasm_i16x8_abs(wasm_i16x8_sub(value[0], lanes_at(column)));
    for (int c = 1; c < channels; c++) {
      v128_t gap = wasm_i16x8_sub(value[c], lanes_at(column + c * LANES));
      cost = wasm_i16x8_add(cost, wasm_i16x8_abs(gap));
    }
    column += channels * LANES;
    v128_t up = row[j];
    v128_t least = wasm_u16x8_min(wasm_u16x8_min(up, diagonal), left);
    diagonal = up;
    left = wasm_u16x8_add_sat(least, cost);
    row[j] = left;
  }
}

INLINE void warp_eight(const int8_t *a, const int16_t *columns, int length, int channels, int band,
                       uint16_t out[LANES]) {
  v128_t row[MVW_MAX_LENGTH];
  v128_t beyond = wasm_i16x8_splat(-1);
  for (int j = 0; j < length; j++) row[j] = beyond;
  for (int i = 0; i < length; i++, a += channels) {
    int from = i > band ? i - band : 0;
    int to = i + band < length ? i + band : length - 1;
    v128_t left = i == 0 ? wasm_i16x8_splat(0) : beyond;
    advance(a, columns, channels, from, to, left, from > 0 ? row[from - 1] : beyond, row);
  }
  wasm_v128_store(out, row[length - 1]);
}

/* Distances of a to eight series of its length; CUT_OFF where the sum is that or more. The usual
 * numbers of channels have loops of their own, which keep the point in registers. */
static void distances_of_eight(const int8_t *a, const int16_t *columns, int length, int channels,
                               int band, uint16_t out[LANES]) {
  if (channels == MVW_AXES)
    warp_eight(a, columns, length, MVW_AXES, band, out);
  else if (channels == MVW_CHANNELS)
    warp_eight(a, columns, length, MVW_CHANNELS, band, out);
  else
    warp_eight(a, columns, length, channels, band, out);
}

#endif

/* Rows for packing count series, in int16 values: whole groups of eight. */
EXPORT("pack_values")
int port_pack_values(int count, int size) { return (count + LANES - 1) / LANES * LANES * size; }

/* Lays count series of size values side by side, eight to a group; lanes that are left are 0. */
EXPORT("pack")
void port_pack(const int8_t *series, int count, int size, int16_t *packed) {
  for (int first = 0; first < count; first += LANES, packed += size * LANES)
    for (int v = 0; v < size; v++)
      for (int lane = 0; lane < LANES; lane++) {
        int at = first + lane;
        packed[v * LANES + lane] = (int16_t)(at < count ? series[at * size + v] : 0);
      }
}

/* Distances of a to series first..count-1, of equal length, into out[first..]. packed: series as
 * from pack(). Absolute costs that fit go eight at once. */
EXPORT("dtw_row")
void port_dtw_row(const int8_t *a, const int8_t *series, const int16_t *packed, int first,
                  int count, int length, int channels, int band, int cost, uint32_t *out,
                  uint32_t *row) {
  int size = length * channels;
  int at = first;
#ifdef __wasm_simd128__
  for (int group = first / LANES; cost == MVW_COST_ABSOLUTE && group * LANES < count; group++) {
    uint16_t eight[LANES];
    distances_of_eight(a, packed + group * LANES * size, length, channels, band, eight);
    for (at = at > group * LANES ? at : group * LANES; at < count && at < (group + 1) * LANES;
         at++) {
      out[at] = eight[at - group * LANES];
      if (out[at] == CUT_OFF)
        out[at] = mvw_dtw(a, (uint16_t)length, series + at * size, (uint16_t)length,
                          (uint8_t)channels, (uint8_t)band, (uint8_t)cost, MVW_NO_DISTANCE, row);
    }
  }
#else
  (void)packed;
#endif
  for (; at < count; at++)
    out[at] = mvw_dtw(a, (uint16_t)length, series + at * size, (uint16_t)length,
                      (uint8_t)channels, (uint8_t)band, (uint8_t)cost, MVW_NO_DISTANCE, row);
}

#ifdef __wasm_simd128__

typedef struct feature {
  uint8_t heavy[3];
  int differences;
  int dilation;
  int channels; /* mask */
  int16_t bias;
} feature;

/* A record as in mvw_model.kernel; whether its outputs fit. */
static int read_record(const uint8_t *at, feature *f) {
  int kernel = at[0] & 0x7f;
  for (int a = 0; a < 7; a++)
    for (int b = a + 1; b < 8; b++)
      for (int c = b + 1; c < 9; c++)
        if (kernel-- == 0) {
          f->heavy[0] = (uint8_t)a;
          f->heavy[1] = (uint8_t)b;
          f->heavy[2] = (uint8_t)c;
        }
  f->differences = at[0] >> 7;
  f->dilation = at[1];
  f->channels = at[2] | at[3] << 8;
  f->bias = (int16_t)(at[4] | at[5] << 8);
  return __builtin_popcount((unsigned)f->channels) <= MOST_CHANNELS;
}

static void sum_channels(const int16_t *packed, int length, int channels, const feature *f,
                         v128_t *line) {
  v128_t before = wasm_i16x8_splat(0);
  for (int k = 0; k < length; k++, packed += channels * LANES) {
    v128_t sum = wasm_i16x8_splat(0);
    for (int mask = f->channels; mask != 0; mask &= mask - 1)
      sum = wasm_i16x8_add(sum, lanes_at(packed + __builtin_ctz((unsigned)mask) * LANES));
    line[k] = f->differences ? (k == 0 ? wasm_i16x8_splat(0) : wasm_i16x8_sub(sum, before)) : sum;
    before = sum;
  }
}

/* Twice the heavy taps minus the others, at point k. */
static v128_t output_at(const v128_t *line, int length, const feature *f, int k) {
  v128_t all = wasm_i16x8_splat(0);
  v128_t heavy = all;
  for (int tap = 0; tap < TAPS; tap++) {
    int at = k + (tap - 4) * f->dilation;
    if (at >= 0 && at < length) all = wasm_i16x8_add(all, line[at]);
  }
  for (int h = 0; h < 3; h++) {
    int at = k + (f->heavy[h] - 4) * f->dilation;
    if (at >= 0 && at < length) heavy = wasm_i16x8_add(heavy, line[at]);
  }
  v128_t thrice = wasm_i16x8_add(wasm_i16x8_add(heavy, heavy), heavy);
  return wasm_i16x8_sub(thrice, all);
}

/* Counts of one feature for eight segments. */
static void pool_eight(const v128_t *line, int length, const feature *f, v128_t counts[MVW_POOLS]) {
  v128_t run = wasm_i16x8_splat(0);
  v128_t bias = wasm_i16x8_splat(f->bias);
  for (int p = 0; p < MVW_POOLS; p++) counts[p] = run;
  for (int k = 0; k < length; k++) {
    /* -1 where it is above. */
    v128_t above = wasm_i16x8_gt(output_at(line, length, f, k), bias);
    int half = k < length / 2 ? 0 : 1;
    counts[half] = wasm_i16x8_sub(counts[half], above);
    run = wasm_v128_and(wasm_i16x8_sub(run, above), above);
    counts[2] = wasm_i16x8_max(counts[2], run);
  }
}

#endif

/* Counts of features over count segments as from pack(), count rows of feature_count * MVW_POOLS.
 * Returns 1, or 0 when this build cannot: then the core counts one by one. */
EXPORT("kernel_counts_packed")
int port_kernel_counts_packed(const int16_t *packed, int count, int length, int channels,
                              const uint8_t *records, int feature_count, uint8_t *out) {
#ifdef __wasm_simd128__
  v128_t line[MVW_MAX_LENGTH];
  feature f;
  for (int i = 0; i < feature_count; i++) {
    if (!read_record(records + i * (int)MVW_FEATURE_BYTES, &f)) return 0;
    for (int first = 0; first < count; first += LANES) {
      v128_t counts[MVW_POOLS];
      int16_t lane[MVW_POOLS][LANES];
      sum_channels(packed + first * length * channels, length, channels, &f, line);
      pool_eight(line, length, &f, counts);
      for (int p = 0; p < MVW_POOLS; p++) wasm_v128_store(lane[p], counts[p]);
      for (int q = 0; q < LANES && first + q < count; q++)
        for (int p = 0; p < MVW_POOLS; p++)
          out[((first + q) * feature_count + i) * MVW_POOLS + p] = (uint8_t)lane[p][q];
    }
  }
  return 1;
#else
  (void)packed, (void)count, (void)length, (void)channels;
  (void)records, (void)feature_count, (void)out;
  return 0;
#endif
}

#ifdef __wasm_simd128__

/* Of one segment eight points go side by side. Nine taps of the widest dilation reach so many points
 * beyond either end, where all is nought. */
#define REACH (4 * MVW_MAX_LENGTH)
#define GROUPS (MVW_MAX_LENGTH / LANES)

/* A segment channel by channel: its values, and their differences to the point before. */
typedef struct planes {
  v128_t values[MVW_CHANNELS][GROUPS];
  v128_t differences[MVW_CHANNELS][GROUPS];
  int16_t line[REACH + MVW_MAX_LENGTH + REACH];
} planes;

static planes one;

/* One bit a point, the first lowest. */
typedef struct points {
  uint64_t low;
  uint64_t high;
} points;

static points both(points a, points b) { return (points){a.low & b.low, a.high & b.high}; }

static int points_in(points p) {
  return __builtin_popcountll(p.low) + __builtin_popcountll(p.high);
}

static points first_points(int count) {
  points p = {count >= 64 ? ~0ull : (1ull << count) - 1ull, 0};
  if (count >= 128) p.high = ~0ull;
  else if (count > 64) p.high = (1ull << (count - 64)) - 1ull;
  return p;
}

static int longest_run(points p) {
  int run = 0;
  for (; (p.low | p.high) != 0; run++)
    p = both(p, (points){p.low << 1, p.high << 1 | p.low >> 63});
  return run;
}

static void spread(const mvw_state *state, int length) {
  const int8_t *query = mvw_query(state);
  for (int c = 0; c < state->channels; c++) {
    int16_t *values = (int16_t *)one.values[c];
    int16_t *differences = (int16_t *)one.differences[c];
    for (int k = 0; k < MVW_MAX_LENGTH; k++) {
      values[k] = (int16_t)(k < length ? query[k * state->channels + c] : 0);
      differences[k] = (int16_t)(k == 0 || k >= length ? 0 : values[k] - values[k - 1]);
    }
  }
}

/* Points at which the feature's output is above its bias, among the first 8 * groups. */
static points points_above(const feature *f, int groups) {
  int16_t *line = one.line + REACH;
  for (int g = 0; g < groups; g++) {
    v128_t sum = wasm_i16x8_splat(0);
    for (int mask = f->channels; mask != 0; mask &= mask - 1) {
      int c = __builtin_ctz((unsigned)mask);
      sum = wasm_i16x8_add(sum, f->differences ? one.differences[c][g] : one.values[c][g]);
    }
    wasm_v128_store(line + g * LANES, sum);
  }
  points above = {0, 0};
  v128_t bias = wasm_i16x8_splat(f->bias);
  for (int g = 0; g < groups; g++) {
    const int16_t *at = line + g * LANES - 4 * f->dilation;
    v128_t all = lanes_at(at);
    for (int tap = 1; tap < TAPS; tap++) all = wasm_i16x8_add(all, lanes_at(at + tap * f->dilation));
    v128_t heavy = lanes_at(at + f->heavy[0] * f->dilation);
    for (int h = 1; h < 3; h++) heavy = wasm_i16x8_add(heavy, lanes_at(at + f->heavy[h] * f->dilation));
    v128_t output = wasm_i16x8_sub(wasm_i16x8_add(wasm_i16x8_add(heavy, heavy), heavy), all);
    uint64_t bits = wasm_i16x8_bitmask(wasm_i16x8_gt(output, bias));
    if (g < 8)
      above.low |= bits << (g * LANES);
    else
      above.high |= bits << ((g - 8) * LANES);
  }
  return above;
}

/* The core's own: for masks of more channels than sixteen bits hold. */
void __real_mvw_kernel_scores(mvw_state *state, int32_t *scores);
void __wrap_mvw_kernel_scores(mvw_state *state, int32_t *scores);

/* Stands for mvw_kernel_scores() of the core (linked with --wrap), with the same integers. */
void __wrap_mvw_kernel_scores(mvw_state *state, int32_t *scores) {
  const mvw_model *model = state->model;
  int length = model->normaliser.length;
  int groups = (length + LANES - 1) / LANES;
  int gestures = model->gesture_count;
  points inside = first_points(length);
  points first_half = first_points(length / 2);
  int32_t sums[MVW_MAX_GESTURES] = {0};
  const uint8_t *at = model->kernel + 4 * gestures;
  spread(state, length);
  for (int v = 0; v < groups * LANES + REACH; v++) one.line[REACH + v] = 0;
  for (int i = 0; i < model->kernel_features; i++) {
    feature f;
    if (!read_record(at, &f)) {
      __real_mvw_kernel_scores(state, scores);
      return;
    }
    points above = both(points_above(&f, groups), inside);
    int first = points_in(both(above, first_half));
    int counts[MVW_POOLS] = {first, points_in(above) - first, 0};
    if (model->kernel_pools == MVW_POOLS) counts[2] = longest_run(above);
    at += MVW_FEATURE_BYTES;
    for (int p = 0; p < model->kernel_pools; p++, at += gestures)
      for (int g = 0; g < gestures; g++) sums[g] += counts[p] * (int8_t)at[g];
  }
  for (int g = 0; g < gestures; g++) scores[g] = sums[g];
}

#endif
