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
  view->sin_q14 = 0;
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
  view->roll = MVW_ROLL_ALIGNED;
}

void mvw_view_turn(const mvw_view *view, const int16_t triple[3], int16_t out[3]) {
  int32_t u = triple[view->cross_u];
  int32_t v = triple[view->cross_v];
  for (uint8_t i = 0; i < 3; i++) out[i] = triple[i];
  if (view->roll != MVW_ROLL_ALIGNED) return;
  out[view->cross_u] =
      mvw_saturate16(mvw_shift_round(view->cos_q14 * u + view->sin_q14 * v, 14));
  out[view->cross_v] =
      mvw_saturate16(mvw_shift_round(view->cos_q14 * v - view->sin_q14 * u, 14));
}

void mvw_view_row(const mvw_view *view, uint16_t row, int16_t out[MVW_AXES]) {
  uint32_t at = (uint32_t)view->first + row;
  if (at >= view->size) at -= view->size;
  mvw_view_turn(view, view->rows[at], out);
  mvw_view_turn(view, view->rows[at] + 3, out + 3);
}
