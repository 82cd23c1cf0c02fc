#include "mvw_impl.h"

void mvw_event_clear(mvw_event *event) {
  event->kind = MVW_KIND_REJECT;
  event->reason = MVW_REASON_NONE;
  event->roll = MVW_ROLL_OFF;
  event->gesture = MVW_NO_GESTURE;
  event->runner_up = MVW_NO_GESTURE;
  event->start = 0;
  event->end = 0;
  event->distance = MVW_NO_DISTANCE;
  event->threshold = 0;
  event->runner_up_distance = MVW_NO_DISTANCE;
}

static uint32_t template_distance(const mvw_state *state, uint16_t index, uint32_t limit) {
  const mvw_model *model = state->model;
  uint16_t length = model->normaliser.length;
  const int8_t *points = model->templates + (uint32_t)index * length * state->channels;
  return mvw_dtw(mvw_query(state), length, points, length, state->channels, model->band,
                 model->cost, limit, state->row);
}

uint32_t mvw_template_distance(const mvw_state *state, uint16_t template_index) {
  if (template_index >= state->model->template_count) return MVW_NO_DISTANCE;
  return template_distance(state, template_index, MVW_NO_DISTANCE);
}

/* Distance to the nearest template of a gesture, or MVW_NO_DISTANCE when that is not below bound. */
static uint32_t gesture_distance(const mvw_state *state, uint8_t gesture, uint32_t bound) {
  const mvw_gesture *entry = state->model->gestures + gesture;
  uint16_t first = MVW_READ_U16(&entry->first_template);
  uint16_t count = MVW_READ_U16(&entry->template_count);
  uint32_t nearest = MVW_NO_DISTANCE;
  for (uint16_t i = 0; i < count && bound > 0; i++) {
    uint32_t distance = template_distance(state, (uint16_t)(first + i), bound - 1);
    if (distance < bound) nearest = bound = distance;
  }
  return nearest;
}

/* log2(value), 1 <= value, on straight lines between powers of two, in 1/256. */
static uint32_t log2_q8(uint32_t value) {
  uint32_t exponent = 0;
  while (value >> exponent > 1u) exponent++;
  uint32_t above = value - ((uint32_t)1 << exponent);
  uint32_t part = exponent >= 8 ? above >> (exponent - 8) : above << (8 - exponent);
  return exponent * 256u + part;
}

/* Base minus score plus the weighted logarithm of the template distance. */
static uint32_t kernel_distance(const mvw_state *state, uint8_t gesture, int32_t score) {
  const mvw_model *model = state->model;
  /* Base up to 2^30, score below 4096 * 256 * 128 = 2^27, logarithm below 2^16 * 28. */
  int32_t distance = mvw_kernel_base(model, gesture) - score;
  if (model->template_count > 0) {
    uint32_t nearest = gesture_distance(state, gesture, MVW_NO_DISTANCE);
    if (nearest == MVW_NO_DISTANCE) return MVW_NO_DISTANCE - 1u;
    distance += (int32_t)(model->log_weight * log2_q8(nearest + 1u) / 256u);
  }
  return distance > 0 ? (uint32_t)distance : 0;
}

static uint8_t reason_for(const mvw_model *model, const mvw_event *event) {
  if (event->gesture == MVW_NO_GESTURE || event->distance > event->threshold)
    return MVW_REASON_FAR;
  if (model->margin_percent == 0 || event->runner_up == MVW_NO_GESTURE) return MVW_REASON_NONE;
  uint32_t lead = event->runner_up_distance - event->distance;
  return lead < event->distance / 100u * model->margin_percent ? MVW_REASON_AMBIGUOUS
                                                                : MVW_REASON_NONE;
}

void mvw_match(mvw_state *state, const mvw_view *view, mvw_event *event) {
  const mvw_model *model = state->model;
  /* One after the other, not one within the other: stack is dear. */
  mvw_resample(state, view);
  mvw_normalise(state);
  event->roll = view->roll;
  int32_t *scores = (int32_t *)state->row + model->normaliser.length;
  if (model->kernel_features > 0) mvw_kernel_scores(state, scores);
  for (uint8_t gesture = 0; gesture < model->gesture_count; gesture++) {
    /* Only what beats the second best so far matters. */
    uint32_t distance = model->kernel_features > 0
                            ? kernel_distance(state, gesture, scores[gesture])
                            : gesture_distance(state, gesture, event->runner_up_distance);
    if (distance < event->distance) {
      event->runner_up = event->gesture;
      event->runner_up_distance = event->distance;
      event->gesture = gesture;
      event->distance = distance;
    } else if (distance < event->runner_up_distance) {
      event->runner_up = gesture;
      event->runner_up_distance = distance;
    }
  }
  if (event->gesture != MVW_NO_GESTURE)
    event->threshold = MVW_READ_U32(&model->gestures[event->gesture].threshold);
  event->reason = reason_for(model, event);
  event->kind = event->reason == MVW_REASON_NONE ? MVW_KIND_GESTURE : MVW_KIND_REJECT;
}
