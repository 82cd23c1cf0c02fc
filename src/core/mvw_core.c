#include <stddef.h>

#include "mvw_impl.h"

uint8_t mvw_bits_set(uint16_t mask) {
  uint8_t count = 0;
  for (; mask; mask >>= 1) count = (uint8_t)(count + (mask & 1u));
  return count;
}

void mvw_memory_sizes(const mvw_model *model, mvw_memory *memory) {
  const mvw_segmenter *segmenter = &model->segmenter;
  memory->ring_samples = (uint32_t)MVW_RING_SAMPLES(segmenter->max_length, segmenter->off_hold,
                                                    segmenter->accel_lag);
  memory->query_values =
      (uint32_t)model->normaliser.length * mvw_bits_set(model->normaliser.channel_mask);
  memory->row_values = model->normaliser.length;
  if (model->kernel_features > 0) memory->row_values += model->gesture_count;
}

/* Whether value is within percent of expected. */
static int near_enough(uint32_t value, uint32_t expected, uint32_t percent) {
  uint32_t difference = value > expected ? value - expected : expected - value;
  return difference <= expected / 100u * percent;
}

static int board_fits(const mvw_model *model, const mvw_board *board) {
  if (!near_enough(board->rate_millihertz, model->board.rate_millihertz, 5)) return MVW_E_RATE;
  if (!near_enough(board->accel_ng_per_lsb, model->board.accel_ng_per_lsb, 1)) return MVW_E_RANGE;
  if (!near_enough(board->gyro_ndps_per_lsb, model->board.gyro_ndps_per_lsb, 1))
    return MVW_E_RANGE;
  return MVW_OK;
}

static int memory_fits(const mvw_memory *memory, const mvw_memory *least) {
  return memory->ring_samples >= least->ring_samples &&
         memory->query_values >= least->query_values && memory->row_values >= least->row_values;
}

int mvw_init(mvw_state *state, const mvw_model *model, const mvw_board *board,
             const mvw_memory *memory) {
  if (state == NULL || model == NULL || memory == NULL || memory->ring == NULL ||
      memory->query == NULL || memory->row == NULL)
    return MVW_E_ARGUMENT;
  int status = mvw_model_check(model);
  if (status == MVW_OK && board != NULL) status = board_fits(model, board);
  if (status != MVW_OK) return status;
  mvw_memory least;
  mvw_memory_sizes(model, &least);
  if (!memory_fits(memory, &least)) return MVW_E_MEMORY;

  state->model = model;
  for (uint8_t axis = 0; axis < MVW_AXES; axis++)
    state->zero[axis] = (int16_t)(board != NULL ? board->zero[axis] : 0);
  state->channels = mvw_bits_set(model->normaliser.channel_mask);
  mvw_level_setup(state, board != NULL ? board : &model->board);
  state->ring_size = (uint16_t)least.ring_samples;
  state->ring = memory->ring;
  state->query = memory->query;
  state->row = memory->row;
  for (uint32_t i = 0; i < least.query_values; i++) state->query[i] = 0;
  mvw_reset(state);
  return MVW_OK;
}

void mvw_reset(mvw_state *state) {
  state->clock = 0;
  state->start = 0;
  state->last_moving = 0;
  state->energy = 0;
  state->rest_count = 0;
  state->gravity_known = 0;
  for (uint8_t axis = 0; axis < 3; axis++) {
    state->rest[axis] = 0;
    state->gravity[axis] = 0;
  }
  state->ring_next = 0;
  state->hold = 0;
  state->wait = 0;
  state->phase = MVW_PHASE_IDLE;
  state->pressed = 0;
}

int mvw_push(mvw_state *state, const int16_t sample[MVW_AXES], mvw_event *event) {
  if (state == NULL || sample == NULL || event == NULL) return MVW_E_ARGUMENT;
  int16_t *row = state->ring[state->ring_next];
  for (uint8_t axis = 0; axis < MVW_AXES; axis++)
    row[axis] = mvw_saturate16((int32_t)sample[axis] - state->zero[axis]);
  state->ring_next++;
  if (state->ring_next == state->ring_size) state->ring_next = 0;
  state->clock++;

  mvw_view view;
  int status = mvw_segment_step(state, &view, event);
  if (status == MVW_EVENT && event->reason == MVW_REASON_NONE) mvw_match(state, &view, event);
  return status;
}

int mvw_button(mvw_state *state, int pressed) {
  if (state == NULL) return MVW_E_ARGUMENT;
  state->pressed = pressed != 0;
  return MVW_OK;
}

int mvw_classify(mvw_state *state, const int16_t (*samples)[MVW_AXES], uint16_t count,
                 const int16_t *gravity, mvw_event *event) {
  if (state == NULL || samples == NULL || event == NULL) return MVW_E_ARGUMENT;
  if (count < 2 || count > MVW_MAX_SEGMENT) return MVW_E_ARGUMENT;
  mvw_view view;
  view.rows = samples;
  view.size = count;
  view.first = 0;
  view.count = count;
  mvw_roll_set(&view, state->model, gravity);
  mvw_event_clear(event);
  event->end = count;
  mvw_match(state, &view, event);
  return MVW_EVENT;
}
