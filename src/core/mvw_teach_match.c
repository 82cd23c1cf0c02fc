#include <stddef.h>

#include "mvw_teach_impl.h"

uint16_t mvw_taught_values(const mvw_state *state) {
  return (uint16_t)(state->model->normaliser.length * state->channels);
}

uint8_t mvw_taught_slot(const mvw_teach *teach, uint8_t gesture) {
  uint8_t slot = 0;
  while (slot < teach->memory.slot_count &&
         (teach->memory.slots[slot].takes == 0 || teach->memory.slots[slot].gesture != gesture))
    slot++;
  return slot;
}

uint8_t mvw_taught_end(const mvw_teach *teach, const mvw_state *state) {
  return (uint8_t)(state->model->gesture_count + teach->memory.slot_count);
}

/* To the nearest template the model has for a gesture. */
static uint32_t model_distance(const mvw_state *state, uint8_t gesture) {
  const mvw_gesture *entry = state->model->gestures + gesture;
  uint16_t first = MVW_READ_U16(&entry->first_template);
  uint16_t count = MVW_READ_U16(&entry->template_count);
  uint32_t nearest = MVW_NO_DISTANCE;
  for (uint16_t i = 0; i < count; i++) {
    uint32_t distance = mvw_template_distance(state, (uint16_t)(first + i));
    if (distance < nearest) nearest = distance;
  }
  return nearest;
}

uint32_t mvw_taught_gesture(const mvw_teach *teach, const mvw_state *state, uint8_t gesture,
                            uint32_t bound) {
  uint8_t slot = mvw_taught_slot(teach, gesture);
  uint32_t distance = MVW_NO_DISTANCE;
  if (slot < teach->memory.slot_count) {
    const int8_t *taught = teach->memory.templates + (uint32_t)slot * mvw_taught_values(state);
    if (bound > 0) distance = mvw_taught_distance(state, mvw_query(state), taught, bound - 1u);
  } else if (gesture < state->model->gesture_count) {
    distance = model_distance(state, gesture);
  }
  return distance < bound ? distance : MVW_NO_DISTANCE;
}

static void consider(mvw_event *event, uint8_t gesture, uint32_t distance) {
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

/* As the recogniser judges (mvw_match.c). */
static void judge(const mvw_teach *teach, const mvw_model *model, mvw_event *event) {
  uint8_t slot = mvw_taught_slot(teach, event->gesture);
  event->threshold = 0;
  if (slot < teach->memory.slot_count)
    event->threshold = teach->memory.slots[slot].threshold;
  else if (event->gesture < model->gesture_count)
    event->threshold = MVW_READ_U32(&model->gestures[event->gesture].threshold);
  event->reason = MVW_REASON_NONE;
  if (event->gesture == MVW_NO_GESTURE || event->distance > event->threshold)
    event->reason = MVW_REASON_FAR;
  else if (model->margin_percent > 0 && event->runner_up != MVW_NO_GESTURE &&
           event->runner_up_distance - event->distance <
               event->distance / 100u * model->margin_percent)
    event->reason = MVW_REASON_AMBIGUOUS;
  event->kind = event->reason == MVW_REASON_NONE ? MVW_KIND_GESTURE : MVW_KIND_REJECT;
}

void mvw_taught_match(const mvw_teach *teach, const mvw_state *state, mvw_event *event) {
  const mvw_model *model = state->model;
  uint8_t slots = teach->memory.slot_count;
  /* What the recogniser found still stands unless it was found by templates no longer compared. */
  if (mvw_taught_slot(teach, event->gesture) < slots ||
      mvw_taught_slot(teach, event->runner_up) < slots) {
    event->gesture = event->runner_up = MVW_NO_GESTURE;
    event->distance = event->runner_up_distance = MVW_NO_DISTANCE;
    for (uint8_t gesture = 0; gesture < model->gesture_count; gesture++)
      if (mvw_taught_slot(teach, gesture) == slots)
        consider(event, gesture, model_distance(state, gesture));
  }
  for (uint8_t slot = 0; slot < slots; slot++) {
    const mvw_taught *taught = teach->memory.slots + slot;
    if (taught->takes == 0) continue;
    consider(event, taught->gesture,
             mvw_taught_gesture(teach, state, taught->gesture, event->runner_up_distance));
  }
  judge(teach, model, event);
}
