#include <stddef.h>

#include "mvw_impl.h"

#define ONE_Q14 16384

static uint32_t square(int16_t value) {
  uint32_t size = mvw_magnitude(value);
  return size * size;
}

/* Without a remainder, which would pull in a division of signed numbers. */
static uint8_t next_axis(uint8_t axis) { return (uint8_t)(axis < MVW_AXIS_Z ? axis + 1 : 0); }

void mvw_roll_set(mvw_view *view, const mvw_model *model, const int16_t *gravity) {
  view->cross_u = next_axis(model->long_axis);
  view->cross_v = next_axis(view->cross_u);
  view->cos_q14 = ONE_Q14;
  view->sin_q14 = view->minus_sin_q14 = 0;
  view->roll = MVW_ROLL_OFF;
  view->gravity = gravity;
  if ((model->flags & MVW_FLAG_ROLL_ALIGN) == 0) return;
  view->roll = MVW_ROLL_NO_REST;
  if (gravity == NULL) return;

  /* Three squares of int16 come to 3 * 2^30 at most: more than int32 holds, within uint32. */
  uint32_t across_squared = square(gravity[view->cross_u]) + square(gravity[view->cross_v]);
  uint32_t across = mvw_isqrt(across_squared);
  uint32_t whole = mvw_isqrt(across_squared + square(gravity[model->long_axis]));
  view->roll = MVW_ROLL_VERTICAL;
  if (across == 0 || across * 100u < whole * model->roll_min_percent) return;

  int32_t norm = (int32_t)across;
  view->cos_q14 = (int16_t)mvw_divide_round((int32_t)gravity[view->cross_u] * ONE_Q14, norm);
  view->sin_q14 = (int16_t)mvw_divide_round((int32_t)gravity[view->cross_v] * ONE_Q14, norm);
  view->minus_sin_q14 = (int16_t)-view->sin_q14;
  view->roll = MVW_ROLL_ALIGNED;
}

/* (a * x + b * y) / 2^14 for a unit vector (a, b), halves away from zero, saturated. The sum is below
 * 2^30, so that it can be shifted up by two and down by the 16 bits that an 8-bit part has for free. */
static int16_t turned(int16_t a, int16_t x, int16_t b, int16_t y) {
  int32_t sum = (int32_t)a * x + (int32_t)b * y;
  int32_t size = (int32_t)((mvw_magnitude(sum) + ONE_Q14 / 2u) << 2 >> 16);
  return mvw_saturate16(sum < 0 ? -size : size);
}

void mvw_view_turn(const mvw_view *view, const int16_t triple[3], int16_t out[3]) {
  int16_t u = triple[view->cross_u];
  int16_t v = triple[view->cross_v];
  for (uint8_t i = 0; i < 3; i++) out[i] = triple[i];
  if (view->roll != MVW_ROLL_ALIGNED) return;
  out[view->cross_u] = turned(view->cos_q14, u, view->sin_q14, v);
  out[view->cross_v] = turned(view->cos_q14, v, view->minus_sin_q14, u);
}

void mvw_view_row(const mvw_view *view, uint16_t row, int16_t out[MVW_AXES]) {
  uint32_t at = (uint32_t)view->first + row;
  if (at >= view->size) at -= view->size;
  mvw_view_turn(view, view->rows[at], out);
  mvw_view_turn(view, view->rows[at] + 3, out + 3);
}
