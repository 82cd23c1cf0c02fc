#include "mvw_impl.h"

static void take_off_mean(const mvw_state *state, uint8_t channel) {
  uint16_t length = state->model->normaliser.length;
  const int16_t *end = state->query + (uint16_t)(length * state->channels);
  int32_t sum = 0;
  for (const int16_t *point = state->query + channel; point < end; point += state->channels)
    sum += *point;
  int32_t mean = mvw_divide_round(sum, length);
  for (int16_t *point = state->query + channel; point < end; point += state->channels)
    *point = mvw_saturate16(*point - mean);
}

/* Takes off the means asked for, saturating. */
static void centre(mvw_state *state) {
  const mvw_normaliser *normaliser = &state->model->normaliser;
  uint8_t channel = 0;
  for (uint8_t axis = 0; axis < MVW_AXES; axis++) {
    if ((normaliser->channel_mask >> axis & 1u) == 0) continue;
    if (normaliser->centre_mask >> axis & 1u) take_off_mean(state, channel);
    channel++;
  }
}

/* Greatest magnitude in channels first..last (one past). */
static uint32_t peak_of(const mvw_state *state, uint8_t first, uint8_t last) {
  const int16_t *point = state->query;
  uint32_t peak = 0;
  for (uint16_t k = state->model->normaliser.length; k > 0; k--, point += state->channels)
    for (uint8_t c = first; c < last; c++) {
      uint32_t size = mvw_magnitude(point[c]);
      if (size > peak) peak = size;
    }
  return peak;
}

/* Root of the mean square of channels first..last (one past), counts * 16. Values are first scaled
 * down until their squares are sure to fit: 768 values below 2^10 come to less than 2^30. */
static uint32_t rms_q4(const mvw_state *state, uint8_t first, uint8_t last) {
  uint16_t length = state->model->normaliser.length;
  const int16_t *point = state->query;
  uint8_t shift = 0;
  uint32_t sum = 0;
  for (uint32_t peak = peak_of(state, first, last); peak >= 1024u; peak >>= 1) shift++;
  for (uint16_t k = length; k > 0; k--, point += state->channels)
    for (uint8_t c = first; c < last; c++) {
      uint16_t size = (uint16_t)(mvw_magnitude(point[c]) >> shift);
      sum += (uint32_t)size * size;
    }
  uint32_t count = (uint32_t)length * (uint32_t)(last - first);
  /* sum * 256 / count without overflow: sum / count < 2^20, the rest < count < 2^10. */
  uint32_t mean = sum / count * 256u + sum % count * 256u / count;
  return mvw_isqrt(mean) << shift;
}

/* value / by rounded, halves away from zero, within -127..127; by below 2^24. A quotient of seven
 * bits takes seven steps; a general division takes thirty-two on parts without one. */
static int8_t scale(int32_t value, uint32_t by) {
  uint32_t rest = mvw_magnitude(value) + by / 2u;
  uint32_t part = by << 7;
  uint8_t size = 0;
  if (rest >= part) return value < 0 ? -127 : 127;
  for (uint8_t bit = 0; bit < 7; bit++) {
    part >>= 1;
    size = (uint8_t)(size << 1);
    if (rest >= part) {
      rest -= part;
      size |= 1u;
    }
  }
  return (int8_t)(value < 0 ? -size : size);
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

void mvw_normalise(mvw_state *state) {
  const mvw_normaliser *normaliser = &state->model->normaliser;
  uint8_t channels = state->channels;
  uint8_t ids[MVW_CHANNELS];
  uint32_t divisor[MVW_CHANNELS];
  int16_t gain[MVW_CHANNELS]; /* * 16, as the divisors are */

  channel_ids(state, ids);
  centre(state);
  divisors_q4(state, ids, divisor);

  /* In place, front to back: byte i is written after value i, which lies at bytes 2i and 2i + 1,
   * was read. */
  const int16_t *from = state->query;
  int8_t *to = (int8_t *)state->query;
  for (uint8_t c = 0; c < channels; c++) gain[c] = (int16_t)(gain_of(normaliser, ids[c]) * 16);
  for (uint16_t k = normaliser->length; k > 0; k--)
    for (uint8_t c = 0; c < channels; c++) {
      *to++ = scale((int32_t)*from * gain[c], divisor[c]);
      from++;
    }
}

const int8_t *mvw_query(const mvw_state *state) { return (const int8_t *)state->query; }
