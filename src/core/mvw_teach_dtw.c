#include "mvw_teach_impl.h"

#if defined(__AVR__) && !defined(MVW_TABLES_IN_RAM)

/* mvw_dtw() reads one series from flash, which takes other loads on this processor than RAM. The same
 * sums, in their plain form. */

#define BEYOND 0x80000000u

static uint32_t local_cost(const int8_t *a, const int8_t *b, uint8_t channels, uint8_t cost) {
  uint32_t sum = 0;
  for (uint8_t c = 0; c < channels; c++) {
    uint32_t size = mvw_magnitude((int32_t)a[c] - b[c]);
    sum += cost == MVW_COST_SQUARED ? size * size : size;
  }
  return sum;
}

uint32_t mvw_taught_distance(const mvw_state *state, const int8_t *a, const int8_t *b,
                             uint32_t limit) {
  const mvw_model *model = state->model;
  uint16_t length = model->normaliser.length;
  uint8_t channels = state->channels;
  uint32_t *row = state->row;
  for (uint16_t j = 0; j < length; j++) row[j] = BEYOND;
  for (uint16_t i = 0; i < length; i++, a += channels) {
    uint16_t from = (uint16_t)(i > model->band ? i - model->band : 0);
    uint16_t to = (uint16_t)(i + model->band);
    if (to > length - 1) to = (uint16_t)(length - 1);
    uint32_t left = i == 0 ? 0 : BEYOND;
    uint32_t diagonal = from > 0 ? row[from - 1] : BEYOND;
    uint32_t least = MVW_NO_DISTANCE;
    for (uint16_t j = from; j <= to; j++) {
      uint32_t up = row[j];
      if (up < left) left = up;
      if (diagonal < left) left = diagonal;
      diagonal = up;
      left += local_cost(a, b + j * channels, channels, model->cost);
      row[j] = left;
      if (left < least) least = left;
    }
    if (least > limit) return MVW_NO_DISTANCE;
  }
  return row[length - 1] > limit ? MVW_NO_DISTANCE : row[length - 1];
}

#else

uint32_t mvw_taught_distance(const mvw_state *state, const int8_t *a, const int8_t *b,
                             uint32_t limit) {
  const mvw_model *model = state->model;
  uint16_t length = model->normaliser.length;
  return mvw_dtw(a, length, b, length, state->channels, model->band, model->cost, limit,
                 state->row);
}

#endif
