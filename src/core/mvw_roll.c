#include <stddef.h>

#include "mvw_impl.h"

#define ONE_Q14 16384

static uint32_t square(int16_t value) {
  uint32_t size = mvw_magnitude(value);
  return size * size;
}

void mvw_roll_set(mvw_view *view, const mvw_model *model, const int16_t *gravity) {
  view->cross_u = (uint8_t)((model->long_axis + 1) % 3);
  view->cross_v = (uint8_t)((model->long_axis + 2) % 3);
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

int32_t mvw_view_turn(const mvw_view *view, const int16_t triple[3], uint8_t direction) {
  if (view->roll != MVW_ROLL_ALIGNED) return triple[direction];
  int32_t u = triple[view->cross_u];
  int32_t v = triple[view->cross_v];
  if (direction == view->cross_u)
    return mvw_divide_round(view->cos_q14 * u + view->sin_q14 * v, ONE_Q14);
  if (direction == view->cross_v)
    return mvw_divide_round(view->cos_q14 * v - view->sin_q14 * u, ONE_Q14);
  return triple[direction];
}

int32_t mvw_view_get(const mvw_view *view, uint16_t row, uint8_t axis) {
  uint32_t at = (uint32_t)view->first + row;
  if (at >= view->size) at -= view->size;
  uint8_t base = (uint8_t)(axis < 3 ? 0 : 3);
  return mvw_view_turn(view, view->rows[at] + base, (uint8_t)(axis - base));
}
