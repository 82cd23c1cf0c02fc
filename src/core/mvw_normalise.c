#include "mvw_impl.h"

static int32_t channel_mean(const int16_t *points, uint16_t length, uint8_t channels) {
  int32_t sum = 0;
  for (uint16_t k = 0; k < length; k++) sum += points[(uint32_t)k * channels];
  return mvw_divide_round(sum, length);
}

/* Takes off the means asked for, saturating. */
static void centre(mvw_state *state) {
  const mvw_normaliser *normaliser = &state->model->normaliser;
  uint8_t channels = state->channels;
  uint8_t channel = 0;
  for (uint8_t axis = 0; axis < MVW_AXES; axis++) {
    if ((normaliser->channel_mask >> axis & 1u) == 0) continue;
    int16_t *points = state->query + channel++;
    if ((normaliser->centre_mask >> axis & 1u) == 0) continue;
    int32_t mean = channel_mean(points, normaliser->length, channels);
    for (uint16_t k = 0; k < normaliser->length; k++) {
      uint32_t at = (uint32_t)k * channels;
      points[at] = mvw_saturate16(points[at] - mean);
    }
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

/* Channels that are scaled together, by id: accelerometer, gyroscope, levelled acceleration, levelled
 * rotation, gravity. */
static const uint8_t GROUP_END[] = {3, 6, 8, 10, MVW_CHANNELS};
#define GRAVITY_GROUP 4

/* Ids of the segment's channels. */
static void channel_ids(const mvw_state *state, uint8_t ids[MVW_CHANNELS]) {
  uint8_t channel = 0;
  for (uint8_t id = 0; id < MVW_CHANNELS; id++)
    if (state->model->normaliser.channel_mask >> id & 1u) ids[channel++] = id;
}

/* Divisor of each channel, counts * 16. */
static void divisors_q4(const mvw_state *state, const uint8_t ids[MVW_CHANNELS],
                        uint32_t divisor[MVW_CHANNELS]) {
  const mvw_normaliser *normaliser = &state->model->normaliser;
  uint8_t last = 0;
  for (uint8_t group = 0; group <= GRAVITY_GROUP; group++) {
    uint8_t first = last;
    while (last < state->channels && ids[last] < GROUP_END[group]) last++;
    uint32_t common = normaliser->floor[group & 1u] * (uint32_t)16;
    if (group == GRAVITY_GROUP)
      common = (uint32_t)16384 * 16u;
    else if (normaliser->scale_mode == MVW_SCALE_GROUP && first < last) {
      uint32_t rms = rms_q4(state, first, last);
      if (rms > common) common = rms;
    }
    for (uint8_t c = first; c < last; c++) {
      divisor[c] = common;
      if (normaliser->scale_mode != MVW_SCALE_CHANNEL || group == GRAVITY_GROUP) continue;
      uint32_t rms = rms_q4(state, c, (uint8_t)(c + 1));
      if (rms > common) divisor[c] = rms;
    }
  }
}

static uint8_t gain_of(const mvw_normaliser *normaliser, uint8_t id) {
  if (id < MVW_AXES) return normaliser->gain[id];
  if (id >= MVW_CHANNEL_GRAVITY_X) return normaliser->gravity_gain;
  return normaliser->gain[id < MVW_CHANNEL_VERTICAL_TURN ? 0 : 3];
}

void mvw_normalise(mvw_state *state, const mvw_view *view) {
  const mvw_normaliser *normaliser = &state->model->normaliser;
  uint8_t channels = state->channels;
  uint8_t ids[MVW_CHANNELS];
  uint32_t divisor[MVW_CHANNELS];

  channel_ids(state, ids);
  mvw_resample(state, view);
  centre(state);
  divisors_q4(state, ids, divisor);

  /* In place, front to back: byte i is written after value i, which lies at bytes 2i and 2i + 1,
   * was read. */
  int8_t *query = (int8_t *)state->query;
  uint16_t count = (uint16_t)(normaliser->length * channels);
  for (uint16_t i = 0; i < count; i++) {
    uint8_t c = (uint8_t)(i % channels);
    int32_t value = (int32_t)state->query[i] * gain_of(normaliser, ids[c]) * 16;
    query[i] = to_int8(mvw_divide_round(value, (int32_t)divisor[c]));
  }
}

const int8_t *mvw_query(const mvw_state *state) { return (const int8_t *)state->query; }
