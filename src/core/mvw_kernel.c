#include "mvw_impl.h"

#define TAPS 9
/* Kernels that have three of nine taps of weight 2: 9 over 3. */
#define KERNELS 84u

#define BASE_BYTES 4u
#define MOST_BASE 0x40000000u
#define DIFFERENCES 0x80u

/* A feature as it stands in the table (mvw_model.h, mvw_model.kernel). */
typedef struct feature {
  uint8_t heavy[3]; /* taps of weight 2 */
  uint8_t differences;
  uint8_t dilation;
  uint16_t channels;
  int32_t bias;
} feature;

/* Three of nine in lexicographic order: 012, 013, ... 678. */
static void taps_of(uint8_t kernel, uint8_t heavy[3]) {
  for (heavy[0] = 0; heavy[0] < 7; heavy[0]++)
    for (heavy[1] = (uint8_t)(heavy[0] + 1); heavy[1] < 8; heavy[1]++)
      for (heavy[2] = (uint8_t)(heavy[1] + 1); heavy[2] < 9; heavy[2]++)
        if (kernel-- == 0) return;
}

static uint16_t table_u16(const uint8_t *at) {
  return (uint16_t)(MVW_READ_U8(at) | MVW_READ_U8(at + 1) << 8);
}

static void read_feature(const uint8_t *at, feature *f) {
  uint8_t kernel = MVW_READ_U8(at);
  uint16_t bias = table_u16(at + 4);
  taps_of((uint8_t)(kernel & ~DIFFERENCES), f->heavy);
  f->differences = (kernel & DIFFERENCES) != 0;
  f->dilation = MVW_READ_U8(at + 1);
  f->channels = table_u16(at + 2);
  f->bias = bias < 0x8000u ? (int32_t)bias : (int32_t)bias - 0x10000;
}

int32_t mvw_kernel_base(const mvw_model *model, uint8_t gesture) {
  const uint8_t *at = model->kernel + BASE_BYTES * gesture;
  uint32_t bits = table_u16(at) | (uint32_t)table_u16(at + 2) << 16;
  return bits < 0x80000000u ? (int32_t)bits : -(int32_t)(~bits) - 1;
}

int mvw_kernel_valid(const mvw_model *model, uint8_t channels) {
  uint32_t record = MVW_FEATURE_BYTES + (uint32_t)model->kernel_pools * model->gesture_count;
  if (model->kernel_features == 0) return 1;
  for (uint8_t gesture = 0; gesture < model->gesture_count; gesture++)
    if (mvw_magnitude(mvw_kernel_base(model, gesture)) > MOST_BASE) return 0;
  const uint8_t *at = model->kernel + BASE_BYTES * model->gesture_count;
  for (uint16_t i = 0; i < model->kernel_features; i++, at += record) {
    uint8_t dilation = MVW_READ_U8(at + 1);
    uint16_t mask = table_u16(at + 2);
    if ((MVW_READ_U8(at) & ~DIFFERENCES) >= KERNELS || dilation == 0 ||
        dilation >= model->normaliser.length || mask == 0 || mask >> channels != 0)
      return 0;
  }
  return 1;
}

uint32_t mvw_kernel_bytes(const mvw_model *model) {
  if (model->kernel_features == 0) return 0;
  return BASE_BYTES * model->gesture_count +
         (uint32_t)model->kernel_features *
             (MVW_FEATURE_BYTES + (uint32_t)model->kernel_pools * model->gesture_count);
}

/* Sum of the feature's channels at every point into line, or of their differences to the point
 * before. At most 13 channels * 254. */
static void sum_channels(const mvw_state *state, const feature *f, int32_t *line) {
  const int8_t *query = mvw_query(state);
  uint8_t channels = state->channels;
  uint16_t length = state->model->normaliser.length;
  int32_t before = 0;
  for (uint16_t k = 0; k < length; k++, query += channels) {
    int32_t sum = 0;
    for (uint8_t c = 0; c < channels; c++)
      if (f->channels >> c & 1u) sum += query[c];
    line[k] = f->differences ? (k == 0 ? 0 : sum - before) : sum;
    before = sum;
  }
}

/* Kernel output at point k: twice the heavy taps minus the others, outside is nought. */
static int32_t output_at(const int32_t *line, uint16_t length, const feature *f, uint16_t k) {
  int32_t all = 0;
  int32_t heavy = 0;
  uint8_t next = 0;
  int32_t at = (int32_t)k - 4 * (int32_t)f->dilation;
  for (uint8_t tap = 0; tap < TAPS; tap++, at += f->dilation) {
    int32_t value = at >= 0 && at < length ? line[at] : 0;
    all += value;
    if (next < 3 && tap == f->heavy[next]) {
      heavy += value;
      next++;
    }
  }
  return heavy + heavy + heavy - all;
}

/* How often the output is above the bias in either half, and the longest run of it. */
static void pool(const int32_t *line, uint16_t length, const feature *f, uint8_t counts[MVW_POOLS]) {
  uint8_t run = 0;
  counts[0] = counts[1] = counts[2] = 0;
  for (uint16_t k = 0; k < length; k++) {
    if (output_at(line, length, f, k) > f->bias) {
      counts[k < length / 2u ? 0 : 1]++;
      run++;
      if (run > counts[2]) counts[2] = run;
    } else {
      run = 0;
    }
  }
}

void mvw_kernel_scores(mvw_state *state, int32_t *scores) {
  const mvw_model *model = state->model;
  uint8_t gestures = model->gesture_count;
  const uint8_t *at = model->kernel + BASE_BYTES * gestures;
  for (uint8_t gesture = 0; gesture < gestures; gesture++) scores[gesture] = 0;
  for (uint16_t i = 0; i < model->kernel_features; i++) {
    feature f;
    uint8_t counts[MVW_POOLS];
    read_feature(at, &f);
    at += MVW_FEATURE_BYTES;
    sum_channels(state, &f, (int32_t *)state->row);
    pool((const int32_t *)state->row, model->normaliser.length, &f, counts);
    for (uint8_t p = 0; p < model->kernel_pools; p++)
      for (uint8_t gesture = 0; gesture < gestures; gesture++, at++)
        scores[gesture] += counts[p] * MVW_READ_I8((const int8_t *)at);
  }
}


void mvw_kernel_counts(mvw_state *state, const uint8_t record[MVW_FEATURE_BYTES],
                       uint8_t counts[MVW_POOLS]) {
  feature f;
  read_feature(record, &f);
  sum_channels(state, &f, (int32_t *)state->row);
  pool((const int32_t *)state->row, state->model->normaliser.length, &f, counts);
}

void mvw_kernel_outputs(mvw_state *state, const uint8_t record[MVW_FEATURE_BYTES], int32_t *out) {
  uint16_t length = state->model->normaliser.length;
  const int32_t *line = (const int32_t *)state->row;
  feature f;
  read_feature(record, &f);
  sum_channels(state, &f, (int32_t *)state->row);
  for (uint16_t k = 0; k < length; k++) out[k] = output_at(line, length, &f, k);
}
