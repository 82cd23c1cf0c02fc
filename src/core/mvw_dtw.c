#include "mvw_impl.h"

/* The two costs stand apart: this is the innermost loop, and a branch in it shows. */
static uint32_t absolute_cost(const int8_t *a, const int8_t *b, uint8_t channels) {
  uint32_t sum = 0;
  do {
    int difference = *a++ - MVW_READ_I8(b);
    b++;
    sum += (uint32_t)(difference < 0 ? -difference : difference);
  } while (--channels);
  return sum;
}

static uint32_t squared_cost(const int8_t *a, const int8_t *b, uint8_t channels) {
  uint32_t sum = 0;
  do {
    int32_t difference = *a++ - MVW_READ_I8(b);
    b++;
    sum += (uint32_t)(difference * difference);
  } while (--channels);
  return sum;
}

/* One row of the matrix, in place: row[j] holds D(i - 1, j) before and D(i, j) after.
 * Returns the least value in it. */
static uint32_t advance_row(const int8_t *point, const int8_t *b, uint16_t i, uint16_t from,
                            uint16_t to, uint8_t channels, uint8_t cost, uint32_t *row) {
  uint32_t least = MVW_NO_DISTANCE;
  uint32_t left = MVW_NO_DISTANCE;
  uint32_t diagonal = from > 0 ? row[from - 1] : MVW_NO_DISTANCE;
  const int8_t *column = b + (uint32_t)from * channels;
  for (uint16_t j = from; j <= to; j++) {
    uint32_t best = row[j];
    if (left < best) best = left;
    if (diagonal < best) best = diagonal;
    if (i == 0 && j == 0) best = 0;
    diagonal = row[j];
    if (best != MVW_NO_DISTANCE)
      best += cost == MVW_COST_SQUARED ? squared_cost(point, column, channels)
                                       : absolute_cost(point, column, channels);
    column += channels;
    row[j] = best;
    left = best;
    if (best < least) least = best;
  }
  return least;
}

uint32_t mvw_dtw(const int8_t *a, uint16_t a_length, const int8_t *b, uint16_t b_length,
                 uint8_t channels, uint8_t band, uint8_t cost, uint32_t limit, uint32_t *row) {
  uint16_t gap = (uint16_t)(a_length > b_length ? a_length - b_length : b_length - a_length);
  if (gap > band) return MVW_NO_DISTANCE;
  for (uint16_t j = 0; j < b_length; j++) row[j] = MVW_NO_DISTANCE;
  for (uint16_t i = 0; i < a_length; i++) {
    uint16_t from = (uint16_t)(i > band ? i - band : 0);
    uint16_t to = (uint16_t)(i + band);
    if (to > b_length - 1) to = (uint16_t)(b_length - 1);
    uint32_t least =
        advance_row(a + (uint32_t)i * channels, b, i, from, to, channels, cost, row);
    /* Every path passes through every row, and costs only grow. */
    if (least > limit) return MVW_NO_DISTANCE;
  }
  uint32_t distance = row[b_length - 1];
  return distance > limit ? MVW_NO_DISTANCE : distance;
}
