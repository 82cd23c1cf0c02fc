#include "mvw_impl.h"

/* The innermost loops: for speed also where the rest is compiled for size. */
#if defined(__GNUC__) && !defined(__clang__) && defined(__OPTIMIZE_SIZE__)
#pragma GCC optimize("O2")
#endif

/* Columns whose local costs are computed at a time, so that each loop is short enough for the
 * registers of a small processor. */
#define BLOCK 16u

/* Of a cell that no path reaches: above any sum of costs, and with room for one more. */
#define BEYOND 0x80000000u

/* What stays the same for all rows. */
typedef struct warp {
  const int8_t *b;
  uint32_t *row;
  uint8_t channels;
  uint8_t cost;
} warp;

/* One row of the matrix, in place: row[j] holds D(i - 1, j) before and D(i, j) after.
 * left: D(i, from - 1), or 0 to begin the path here. diagonal: D(i - 1, from - 1).
 * Returns the least value in it. */
static uint32_t advance_row(const warp *w, const int8_t *point, uint16_t from, uint16_t to,
                            uint32_t left, uint32_t diagonal) {
  uint32_t costs[BLOCK];
  uint32_t least = MVW_NO_DISTANCE;
  uint32_t *cell = w->row + from;
  uint16_t left_over = (uint16_t)(to - from + 1);
  const int8_t *column = w->b + (uint32_t)from * w->channels;
  while (left_over > 0) {
    uint8_t count = (uint8_t)(left_over < BLOCK ? left_over : BLOCK);
    const uint32_t *cost = costs;
    const uint32_t *block_end = cell + count;
    mvw_local_costs(point, column, count, w->channels, w->cost, costs);
    column += (uint16_t)(count * w->channels);
    left_over = (uint16_t)(left_over - count);
    while (cell < block_end) {
      uint32_t up = *cell;
      if (up < left) left = up;
      if (diagonal < left) left = diagonal;
      diagonal = up;
      left += *cost++;
      *cell++ = left;
      if (left < least) least = left;
    }
  }
  return least;
}

uint32_t mvw_dtw(const int8_t *a, uint16_t a_length, const int8_t *b, uint16_t b_length,
                 uint8_t channels, uint8_t band, uint8_t cost, uint32_t limit, uint32_t *row) {
  uint16_t gap = (uint16_t)(a_length > b_length ? a_length - b_length : b_length - a_length);
  if (gap > band) return MVW_NO_DISTANCE;
  warp w = {b, row, channels, cost};
  for (uint16_t j = 0; j < b_length; j++) row[j] = BEYOND;
  for (uint16_t i = 0; i < a_length; i++) {
    uint16_t from = (uint16_t)(i > band ? i - band : 0);
    uint16_t to = (uint16_t)(i + band);
    if (to > b_length - 1) to = (uint16_t)(b_length - 1);
    uint32_t left = i == 0 ? 0 : BEYOND;
    uint32_t diagonal = from > 0 ? row[from - 1] : BEYOND;
    uint32_t least = advance_row(&w, a, from, to, left, diagonal);
    /* Every path passes through every row, and costs only grow. */
    if (least > limit) return MVW_NO_DISTANCE;
    a += channels;
  }
  uint32_t distance = row[b_length - 1];
  return distance >= BEYOND || distance > limit ? MVW_NO_DISTANCE : distance;
}
