#include <stddef.h>

#include "mvw_impl.h"

#define ONE_Q14 16384

/* A new direction of gravity counts for 1 / 2^this of the one carried along. */
#define TRUST_SHIFT 6

/* Samples averaged for gravity when no rest was seen before the movement. */
#define FIRST_SAMPLES 4u

static int32_t from_q14(int32_t value) { return mvw_shift_round(value, 14); }

static uint32_t size_of(const int32_t v[3]) {
  uint32_t sum = 0;
  for (uint8_t i = 0; i < 3; i++) {
    uint32_t part = mvw_magnitude(v[i]);
    sum += part * part;
  }
  return mvw_isqrt(sum);
}

/* v / |v|, 1 << 14 being one; left alone when |v| is 0. Entries of v fit in int16. */
static void to_unit(const int32_t v[3], int32_t unit[3]) {
  int32_t size = (int32_t)size_of(v);
  if (size == 0) return;
  for (uint8_t i = 0; i < 3; i++) unit[i] = mvw_divide_round(v[i] * ONE_Q14, size);
}

/* a x b / 2^14. */
static void cross_q14(const int32_t a[3], const int32_t b[3], int32_t out[3]) {
  out[0] = from_q14(a[1] * b[2]) - from_q14(a[2] * b[1]);
  out[1] = from_q14(a[2] * b[0]) - from_q14(a[0] * b[2]);
  out[2] = from_q14(a[0] * b[1]) - from_q14(a[1] * b[0]);
}

/* gyro * 74961 / rate, rounded down, without 64 bits: whole multiples of the rate first, the rest in
 * two steps, as 74961 = 292 * 256 + 209. The rate is below 2^21. At more than 57,000 times the rate,
 * far beyond any sensor, it stays there. */
static uint32_t turn_of(uint32_t gyro, uint32_t rate) {
  uint32_t whole = gyro / rate;
  uint32_t rest = gyro % rate;
  uint32_t high = rest * 292u;
  if (whole > 57000u) whole = 57000u;
  return whole * 74961u + high / rate * 256u + (high % rate * 256u + rest * 209u) / rate;
}

void mvw_level_setup(mvw_state *state, const mvw_board *board) {
  /* Angle of one count in one sample, rad * 2^32: 2^32 * pi / 180 * 1e-9 * 1000 = 74.961321. */
  uint32_t turn = turn_of(board->gyro_ndps_per_lsb, board->rate_millihertz) / 1000u;
  uint8_t shift = 18;
  while (turn > 0xffffu) {
    turn >>= 1;
    shift--;
  }
  state->turn = (uint16_t)turn;
  state->turn_shift = shift;
  uint32_t one_g = 1000000000u / board->accel_ng_per_lsb;
  state->one_g = (uint16_t)(one_g > INT16_MAX ? INT16_MAX : one_g);
}

void mvw_level_start(mvw_level *level, const mvw_view *view) {
  int32_t sum[3] = {0, 0, 0};
  int16_t values[MVW_AXES];
  uint16_t count = (uint16_t)(view->count < FIRST_SAMPLES ? view->count : FIRST_SAMPLES);
  if (view->gravity != NULL) {
    mvw_view_turn(view, view->gravity, values);
    for (uint8_t axis = 0; axis < 3; axis++) sum[axis] = values[axis];
    count = 1;
  } else {
    for (uint16_t row = 0; row < count; row++) {
      mvw_view_row(view, row, values);
      for (uint8_t axis = 0; axis < 3; axis++) sum[axis] += values[axis];
    }
  }
  for (uint8_t axis = 0; axis < 3; axis++) {
    sum[axis] = mvw_saturate16(mvw_divide_round(sum[axis], count));
    level->down[axis] = 0;
  }
  to_unit(sum, level->down);
}

/* Turns down against the rotation of one sample (to second order of the angle), so that it stays
 * where it is in the world. */
static void carry(mvw_level *level, const mvw_state *state, const int32_t turn[3]) {
  int32_t angle[3];
  int32_t first[3];
  int32_t second[3];
  for (uint8_t i = 0; i < 3; i++) {
    uint32_t size = (mvw_magnitude(turn[i]) * state->turn) >> state->turn_shift;
    if (size > ONE_Q14) size = ONE_Q14;
    angle[i] = turn[i] < 0 ? -(int32_t)size : (int32_t)size;
  }
  cross_q14(level->down, angle, first);
  cross_q14(first, angle, second);
  for (uint8_t i = 0; i < 3; i++)
    level->down[i] = mvw_saturate16(level->down[i] + first[i] + second[i] / 2);
}

/* Draws down towards the accelerometer where that shows hardly more than gravity. */
static void correct(mvw_level *level, const mvw_state *state, const int32_t accel[3]) {
  int32_t seen[3] = {0, 0, 0};
  uint32_t size = size_of(accel);
  uint32_t slack = state->one_g / 8u;
  if (size + slack >= state->one_g && size <= state->one_g + slack) {
    to_unit(accel, seen);
    for (uint8_t i = 0; i < 3; i++)
      level->down[i] = mvw_saturate16(level->down[i] +
                                      (seen[i] - level->down[i]) / (1 << TRUST_SHIFT));
  }
  to_unit(level->down, level->down);
}

/* Part of v along down, and the size of what is left. */
static void split(const int32_t v[3], const int32_t down[3], int32_t *along, int32_t *across) {
  int32_t rest[3];
  *along = from_q14(v[0] * down[0] + v[1] * down[1] + v[2] * down[2]);
  for (uint8_t i = 0; i < 3; i++) rest[i] = v[i] - from_q14(*along * down[i]);
  *across = (int32_t)size_of(rest);
}

void mvw_level_row(mvw_level *level, const mvw_state *state, const int16_t row[MVW_AXES],
                   int16_t out[MVW_CHANNELS - MVW_AXES]) {
  int32_t accel[3];
  int32_t turn[3];
  int32_t along;
  int32_t across;
  for (uint8_t i = 0; i < 3; i++) {
    accel[i] = row[i];
    turn[i] = row[3 + i];
  }
  carry(level, state, turn);
  correct(level, state, accel);
  split(accel, level->down, &along, &across);
  out[0] = mvw_saturate16(along - state->one_g);
  out[1] = mvw_saturate16(across);
  split(turn, level->down, &along, &across);
  out[2] = mvw_saturate16(along);
  out[3] = mvw_saturate16(across);
  for (uint8_t i = 0; i < 3; i++) out[4 + i] = (int16_t)level->down[i];
}
