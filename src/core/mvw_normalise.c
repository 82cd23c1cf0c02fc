#include "mvw_impl.h"

/* Mean over the k-th of length equal parts of the segment. In units of 1 / length of a sample, part
 * k covers [k * count, (k + 1) * count) and row i covers [i * length, (i + 1) * length). Keeps
 * content above the new rate from folding down. */
static int32_t part_mean(const mvw_view *view, uint16_t length, uint16_t k, uint8_t axis) {
  uint32_t at = (uint32_t)k * view->count;
  uint32_t to = at + view->count;
  uint16_t row = (uint16_t)(at / length);
  uint32_t next = (row + 1u) * (uint32_t)length;
  int32_t sum = 0;
  while (at < to) {
    if (next > to) next = to;
    sum += mvw_view_get(view, row, axis) * (int32_t)(next - at);
    at = next;
    next += length;
    row++;
  }
  return mvw_divide_round(sum, view->count);
}

/* Value at point k of length points spread evenly from the first row to the last. */
static int32_t between_rows(const mvw_view *view, uint16_t length, uint16_t k, uint8_t axis) {
  uint16_t steps = (uint16_t)(length - 1);
  uint32_t at = (uint32_t)k * (uint32_t)(view->count - 1);
  uint16_t row = (uint16_t)(at / steps);
  int32_t part = (int32_t)(at % steps);
  int32_t value = mvw_view_get(view, row, axis);
  if (part == 0) return value;
  int32_t next = mvw_view_get(view, (uint16_t)(row + 1), axis);
  return mvw_divide_round(value * (steps - part) + next * part, steps);
}

static int32_t channel_mean(const int16_t *points, uint16_t length, uint8_t channels) {
  int32_t sum = 0;
  for (uint16_t k = 0; k < length; k++) sum += points[(uint32_t)k * channels];
  return mvw_divide_round(sum, length);
}

/* Fills points (length * channels) and takes off the means asked for, saturating. */
static void resample(const mvw_state *state, const mvw_view *view) {
  const mvw_normaliser *normaliser = &state->model->normaliser;
  uint8_t channels = state->channels;
  uint8_t channel = 0;
  for (uint8_t axis = 0; axis < MVW_AXES; axis++) {
    if ((normaliser->channel_mask >> axis & 1u) == 0) continue;
    int16_t *points = state->query + channel;
    for (uint16_t k = 0; k < normaliser->length; k++) {
      int32_t value = view->count > normaliser->length
                          ? part_mean(view, normaliser->length, k, axis)
                          : between_rows(view, normaliser->length, k, axis);
      points[(uint32_t)k * channels] = mvw_saturate16(value);
    }
    if (normaliser->centre_mask >> axis & 1u) {
      int32_t mean = channel_mean(points, normaliser->length, channels);
      for (uint16_t k = 0; k < normaliser->length; k++) {
        uint32_t at = (uint32_t)k * channels;
        points[at] = mvw_saturate16(points[at] - mean);
      }
    }
    channel++;
  }
}

/* Root of the mean square of channels first..last (one past), counts * 16. Values are first scaled
 * down until their squares are sure to fit: 768 values below 2^10 come to less than 2^30. */
static uint32_t rms_q4(const mvw_state *state, uint8_t first, uint8_t last) {
  uint16_t length = state->model->normaliser.length;
  uint32_t peak = 0;
  for (uint16_t k = 0; k < length; k++)
    for (uint8_t c = first; c < last; c++) {
      uint32_t size = mvw_magnitude(state->query[(uint32_t)k * state->channels + c]);
      if (size > peak) peak = size;
    }
  uint8_t shift = 0;
  while (peak >> shift >= 1024u) shift++;
  uint32_t sum = 0;
  for (uint16_t k = 0; k < length; k++)
    for (uint8_t c = first; c < last; c++) {
      uint32_t size = mvw_magnitude(state->query[(uint32_t)k * state->channels + c]) >> shift;
      sum += size * size;
    }
  uint32_t mean = sum / ((uint32_t)length * (uint32_t)(last - first));
  uint32_t rest = sum % ((uint32_t)length * (uint32_t)(last - first));
  /* sum * 256 / n without overflow: mean < 2^20, rest < n < 2^10. */
  mean = mean * 256u + rest * 256u / ((uint32_t)length * (uint32_t)(last - first));
  return mvw_isqrt(mean) << shift;
}

static int8_t to_int8(int32_t value) {
  if (value > 127) return 127;
  if (value < -127) return -127;
  return (int8_t)value;
}

/* Divisor of each channel, counts * 16. */
static void divisors_q4(const mvw_state *state, uint32_t divisor[MVW_AXES]) {
  const mvw_normaliser *normaliser = &state->model->normaliser;
  uint8_t split = 0; /* accelerometer channels come first */
  for (uint8_t axis = 0; axis < 3; axis++)
    split = (uint8_t)(split + (normaliser->channel_mask >> axis & 1u));
  for (uint8_t c = 0; c < state->channels; c++) {
    uint8_t sensor = c < split ? 0 : 1;
    uint8_t first = normaliser->scale_mode == MVW_SCALE_CHANNEL ? c : (sensor ? split : 0);
    uint8_t last = normaliser->scale_mode == MVW_SCALE_CHANNEL
                       ? (uint8_t)(c + 1)
                       : (sensor ? state->channels : split);
    uint32_t floor = (uint32_t)normaliser->floor[sensor] * 16u;
    divisor[c] = floor;
    if (normaliser->scale_mode == MVW_SCALE_FIXED) continue;
    /* The group's rms is the same for all its channels: computed at the first. */
    uint32_t rms = c == first ? rms_q4(state, first, last) : divisor[first];
    divisor[c] = rms > floor ? rms : floor;
  }
}

void mvw_normalise(mvw_state *state, const mvw_view *view) {
  const mvw_normaliser *normaliser = &state->model->normaliser;
  uint32_t divisor[MVW_AXES];
  uint8_t gain[MVW_AXES];
  uint8_t channels = 0;
  for (uint8_t axis = 0; axis < MVW_AXES; axis++)
    if (normaliser->channel_mask >> axis & 1u) gain[channels++] = normaliser->gain[axis];

  resample(state, view);
  divisors_q4(state, divisor);

  /* In place, front to back: byte i is written after value i, which lies at bytes 2i and 2i + 1,
   * was read. */
  int8_t *query = (int8_t *)state->query;
  uint16_t count = (uint16_t)(normaliser->length * channels);
  for (uint16_t i = 0; i < count; i++) {
    uint8_t c = (uint8_t)(i % channels);
    int32_t value = (int32_t)state->query[i] * gain[c] * 16;
    query[i] = to_int8(mvw_divide_round(value, (int32_t)divisor[c]));
  }
}

const int8_t *mvw_query(const mvw_state *state) { return (const int8_t *)state->query; }
