#include <stddef.h>

#include "mvw_impl.h"

/* Samples of rest that make gravity known. */
#define REST_ENOUGH 4u

/* Ring row of sample number n, which must be among the last ring_size. */
static uint16_t row_of(const mvw_state *state, uint32_t n) {
  uint16_t back = (uint16_t)(state->clock - n);
  uint16_t at = state->ring_next;
  return (uint16_t)(at >= back ? at - back : at + state->ring_size - back);
}

static void update_energy(mvw_state *state, uint32_t n) {
  const mvw_segmenter *segmenter = &state->model->segmenter;
  const int16_t *now = state->ring[row_of(state, n)];
  uint32_t change = 0;
  uint32_t turning = 0;
  if (n >= segmenter->accel_lag) {
    const int16_t *before = state->ring[row_of(state, n - segmenter->accel_lag)];
    for (uint8_t axis = 0; axis < 3; axis++)
      change += mvw_magnitude((int32_t)now[axis] - before[axis]);
  }
  for (uint8_t axis = 3; axis < MVW_AXES; axis++) turning += mvw_magnitude(now[axis]);
  /* Below 3 * 65535 * 1023 + 3 * 32768 * 1023 = 3.1e8. */
  uint32_t raw = (change * segmenter->accel_weight + turning * segmenter->gyro_weight) / 256u;
  if (raw >= state->energy)
    state->energy += (raw - state->energy) >> segmenter->smooth_shift;
  else
    state->energy -= (state->energy - raw) >> segmenter->smooth_shift;
}

/* Running mean: of all samples at first, then over about 2^rest_shift of them. */
static void update_rest(mvw_state *state, uint32_t n) {
  const int16_t *now = state->ring[row_of(state, n)];
  uint8_t shift = state->model->segmenter.rest_shift;
  uint16_t window = (uint16_t)(1u << shift);
  if (state->rest_count < window) state->rest_count++;
  for (uint8_t axis = 0; axis < 3; axis++) {
    int32_t change = (int32_t)now[axis] * 256 - state->rest[axis];
    state->rest[axis] += state->rest_count == window
                             ? mvw_shift_round(change, shift)
                             : mvw_divide_round(change, state->rest_count);
  }
}

static void open_segment(mvw_state *state, uint32_t n, uint32_t back) {
  uint32_t free_from = state->start;
  uint32_t start = n >= back ? n - back : 0;
  state->start = start < free_from ? free_from : start;
  state->last_moving = n;
  state->hold = 0;
  state->phase = MVW_PHASE_MOVING;
  state->gravity_known = state->rest_count >= REST_ENOUGH;
  for (uint8_t axis = 0; axis < 3; axis++)
    state->gravity[axis] = mvw_saturate16(mvw_shift_round(state->rest[axis], 8));
}

/* Fills view and event with samples start..end (one past) and goes on to phase. */
static int close_segment(mvw_state *state, uint32_t end, uint8_t phase, mvw_view *view,
                         mvw_event *event) {
  const mvw_segmenter *segmenter = &state->model->segmenter;
  uint32_t count = end - state->start;
  mvw_event_clear(event);
  event->start = state->start;
  event->end = end;
  if (count >= segmenter->max_length) {
    event->reason = MVW_REASON_LONG;
  } else if (count < segmenter->min_length) {
    event->reason = MVW_REASON_SHORT;
  } else {
    view->rows = (const int16_t(*)[MVW_AXES])state->ring;
    view->size = state->ring_size;
    view->first = row_of(state, state->start);
    view->count = (uint16_t)count;
    mvw_roll_set(view, state->model, state->gravity_known ? state->gravity : NULL);
  }
  state->start = end;
  state->hold = 0;
  state->wait = segmenter->refractory;
  state->phase = phase;
  return MVW_EVENT;
}

static void step_idle(mvw_state *state, uint32_t n) {
  const mvw_segmenter *segmenter = &state->model->segmenter;
  if (state->wait > 0) {
    state->wait--;
    state->hold = 0;
  } else if (state->energy >= segmenter->on_threshold) {
    state->hold++;
    if (state->hold >= segmenter->on_hold)
      open_segment(state, n, (uint32_t)segmenter->on_hold - 1u + segmenter->pre_roll);
  } else {
    state->hold = 0;
  }
}

static int step_moving(mvw_state *state, uint32_t n, mvw_view *view, mvw_event *event) {
  const mvw_segmenter *segmenter = &state->model->segmenter;
  if (state->energy >= segmenter->off_threshold) {
    state->last_moving = n;
    state->hold = 0;
    if (n + 1u - state->start >= segmenter->max_length)
      return close_segment(state, n + 1u, MVW_PHASE_WAIT_REST, view, event);
    return MVW_OK;
  }
  state->hold++;
  if (state->hold < segmenter->off_hold) return MVW_OK;
  return close_segment(state, state->last_moving + 1u, MVW_PHASE_IDLE, view, event);
}

static void step_wait_rest(mvw_state *state, uint32_t n) {
  if (state->energy >= state->model->segmenter.off_threshold) {
    state->hold = 0;
    return;
  }
  state->hold++;
  if (state->hold < state->model->segmenter.off_hold) return;
  state->hold = 0;
  state->start = n + 1u;
  state->phase = MVW_PHASE_IDLE;
}

static int step_button(mvw_state *state, uint32_t n, mvw_view *view, mvw_event *event) {
  const mvw_segmenter *segmenter = &state->model->segmenter;
  if (state->phase == MVW_PHASE_IDLE && state->pressed)
    open_segment(state, n, segmenter->pre_roll);
  else if (state->phase == MVW_PHASE_WAIT_REST && !state->pressed)
    state->phase = MVW_PHASE_IDLE;
  if (state->phase != MVW_PHASE_MOVING) return MVW_OK;
  if (!state->pressed) return close_segment(state, n, MVW_PHASE_IDLE, view, event);
  if (n + 1u - state->start >= segmenter->max_length)
    return close_segment(state, n + 1u, MVW_PHASE_WAIT_REST, view, event);
  return MVW_OK;
}

int mvw_segment_step(mvw_state *state, mvw_view *view, mvw_event *event) {
  uint32_t n = state->clock - 1u;
  uint8_t phase = state->phase;
  int status = MVW_OK;
  update_energy(state, n);
  if (state->model->flags & MVW_FLAG_BUTTON)
    status = step_button(state, n, view, event);
  else if (phase == MVW_PHASE_IDLE)
    step_idle(state, n);
  else if (phase == MVW_PHASE_MOVING)
    status = step_moving(state, n, view, event);
  else
    step_wait_rest(state, n);

  /* While idle a twitch does not spoil the mean; after a movement it starts afresh. */
  if (state->energy < state->model->segmenter.off_threshold)
    update_rest(state, n);
  else if (phase != MVW_PHASE_IDLE)
    state->rest_count = 0;
  return status;
}
