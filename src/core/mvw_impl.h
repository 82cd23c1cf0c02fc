/* Shared by the core's files; not for its users. */
#ifndef MVW_IMPL_H
#define MVW_IMPL_H

#include "movewright.h"

/* A segment wherever it lies: row i of it is rows[(first + i) mod size], turned about the long
 * axis when sin or cos say so. */
typedef struct mvw_view {
  const int16_t (*rows)[MVW_AXES];
  uint16_t size;   /* rows in the buffer */
  uint16_t first;  /* buffer row of the segment's first sample */
  uint16_t count;  /* samples in the segment */
  uint8_t roll;    /* enum mvw_roll */
  uint8_t cross_u; /* first axis across the long one, 0..2 */
  uint8_t cross_v; /* second */
  int16_t cos_q14; /* turn that brings gravity onto cross_u, 1 << 14 is one */
  int16_t sin_q14;
  int16_t minus_sin_q14;
  const int16_t *gravity; /* accelerometer before the movement, counts, not turned; or NULL */
} mvw_view;

/* Where down is while a segment is read row by row: what the accelerometer shows at rest, as a unit
 * vector, 1 << 14 being one; nought while unknown. */
typedef struct mvw_level {
  int32_t down[3];
} mvw_level;

/* mvw_math.c */
uint32_t mvw_isqrt(uint32_t value);                     /* floor of the square root */
int16_t mvw_saturate16(int32_t value);                  /* into int16_t */
int32_t mvw_divide_round(int32_t value, int32_t by);    /* by > 0; halves away from zero */
int32_t mvw_shift_round(int32_t value, uint8_t shift);  /* by 2^shift, shift > 0; as above */
uint32_t mvw_magnitude(int32_t value);                  /* absolute value */

/* mvw_local.c: local costs between one point of a and count points of b, MVW_FLASH; count > 0. */
void mvw_local_costs(const int8_t *point, const int8_t *b, uint8_t count, uint8_t channels,
                     uint8_t cost, uint32_t *costs);

/* mvw_roll.c: fills in the turn of a view from gravity (counts) before the movement, or NULL. */
void mvw_roll_set(mvw_view *view, const mvw_model *model, const int16_t *gravity);
/* Accelerometer or gyroscope of the view, turned and saturated. */
void mvw_view_turn(const mvw_view *view, const int16_t triple[3], int16_t out[3]);
/* Both, at a row of the view. */
void mvw_view_row(const mvw_view *view, uint16_t row, int16_t out[MVW_AXES]);

/* mvw_level.c: the levelled channels. Rows must be given in order, each once. */
void mvw_level_setup(mvw_state *state, const mvw_board *board);
void mvw_level_start(mvw_level *level, const mvw_view *view);
void mvw_level_row(mvw_level *level, const mvw_state *state, const int16_t row[MVW_AXES],
                   int16_t out[MVW_CHANNELS - MVW_AXES]);

/* mvw_resample.c: writes length * channels int16 values into state->query. */
void mvw_resample(mvw_state *state, const mvw_view *view);

/* mvw_kernel.c */
uint32_t mvw_kernel_bytes(const mvw_model *model);                 /* of the table */
int mvw_kernel_valid(const mvw_model *model, uint8_t channels);    /* its entries, 1 or 0 */
void mvw_kernel_scores(mvw_state *state, int32_t *scores);         /* one a gesture; uses row */
int32_t mvw_kernel_base(const mvw_model *model, uint8_t gesture);

/* mvw_normalise.c: turns them into int8 values, in place. */
void mvw_normalise(mvw_state *state);

/* mvw_core.c: bits set in a channel mask. */
uint8_t mvw_bits_set(uint16_t mask);

/* mvw_match.c: normalises and compares; fills in everything of the event but start and end. */
void mvw_match(mvw_state *state, const mvw_view *view, mvw_event *event);
void mvw_event_clear(mvw_event *event);

/* mvw_segment.c: takes the sample just put into the ring.
 * Returns MVW_EVENT with a view of the segment and event->reason NONE (to be compared), SHORT or
 * LONG, or MVW_OK. */
int mvw_segment_step(mvw_state *state, mvw_view *view, mvw_event *event);

#endif
