#include <stddef.h>

#include "mvw_teach_impl.h"

static int memory_valid(const mvw_teach_memory *m) {
  return m->slots != NULL && m->templates != NULL && m->segments != NULL && m->slot_count > 0 &&
         m->slot_count <= MVW_TEACH_MAX_SLOTS && m->takes >= MVW_TEACH_LEAST_TAKES &&
         m->takes <= MVW_TEACH_MOST_TAKES;
}

int mvw_teach_init(mvw_teach *teach, const mvw_state *state, const mvw_teach_memory *memory) {
  if (teach == NULL || state == NULL || memory == NULL || !memory_valid(memory))
    return MVW_E_ARGUMENT;
  if (state->model->kernel_features > 0) return MVW_TEACH_E_MODEL;
  teach->memory = *memory;
  teach->count = 0;
  teach->nearest = MVW_NO_GESTURE;
  teach->nearest_distance = MVW_NO_DISTANCE;
  teach->spread = 0;
  teach->threshold = 0;
  mvw_teach_cancel(teach);
  for (uint8_t slot = 0; slot < memory->slot_count; slot++) {
    mvw_taught *taught = memory->slots + slot;
    if (taught->gesture >= mvw_taught_end(teach, state) ||
        mvw_taught_slot(teach, taught->gesture) != slot)
      taught->takes = 0;
  }
  return MVW_OK;
}

static uint8_t empty_slot(const mvw_teach *teach) {
  uint8_t slot = 0;
  while (slot < teach->memory.slot_count && teach->memory.slots[slot].takes > 0) slot++;
  return slot;
}

/* Slot that a gesture has or would get, or slot_count. */
static uint8_t slot_for(const mvw_teach *teach, uint8_t gesture) {
  uint8_t slot = mvw_taught_slot(teach, gesture);
  return slot < teach->memory.slot_count ? slot : empty_slot(teach);
}

int mvw_teach_begin(mvw_teach *teach, const mvw_state *state, uint8_t gesture) {
  if (teach == NULL || state == NULL) return MVW_E_ARGUMENT;
  uint8_t slots = teach->memory.slot_count;
  if (gesture == MVW_TEACH_NEW) {
    gesture = state->model->gesture_count;
    while (mvw_taught_slot(teach, gesture) < slots) gesture++;
  } else if (gesture >= state->model->gesture_count && mvw_taught_slot(teach, gesture) == slots) {
    return MVW_E_ARGUMENT;
  }
  if (slot_for(teach, gesture) == slots) return MVW_TEACH_E_FULL;
  teach->gesture = gesture;
  teach->count = 0;
  teach->nearest = MVW_NO_GESTURE;
  teach->nearest_distance = MVW_NO_DISTANCE;
  teach->spread = 0;
  teach->threshold = 0;
  return gesture;
}

void mvw_teach_cancel(mvw_teach *teach) { teach->gesture = MVW_NO_GESTURE; }

int mvw_teach_forget(mvw_teach *teach, uint8_t gesture) {
  if (teach == NULL) return MVW_E_ARGUMENT;
  uint8_t slot = mvw_taught_slot(teach, gesture);
  if (slot == teach->memory.slot_count) return MVW_E_ARGUMENT;
  teach->memory.slots[slot].takes = 0;
  return MVW_OK;
}

static const int8_t *segment_of(const mvw_teach *teach, const mvw_state *state, uint8_t take) {
  return teach->memory.segments + (uint32_t)take * mvw_taught_values(state);
}

static void copy(int8_t *to, const int8_t *from, uint16_t count) {
  while (count--) *to++ = *from++;
}

/* Looks for the gesture that the last compared segment is nearest to besides the one being taught. */
static void look_around(mvw_teach *teach, const mvw_state *state) {
  uint8_t end = mvw_taught_end(teach, state);
  for (uint8_t gesture = 0; gesture < end; gesture++) {
    if (gesture == teach->gesture) continue;
    uint32_t distance = mvw_taught_gesture(teach, state, gesture, teach->nearest_distance);
    if (distance >= teach->nearest_distance) continue;
    teach->nearest_distance = distance;
    teach->nearest = gesture;
  }
}

/* Finds the segment from which the others are least far in sum, and how far the farthest of them is.
 * Returns its number. */
static uint8_t choose_segment(mvw_teach *teach, const mvw_state *state) {
  uint32_t sum[MVW_TEACH_MOST_TAKES] = {0};
  uint32_t farthest[MVW_TEACH_MOST_TAKES] = {0};
  uint8_t best = 0;
  for (uint8_t i = 0; i < teach->count; i++)
    for (uint8_t j = (uint8_t)(i + 1); j < teach->count; j++) {
      uint32_t distance = mvw_taught_distance(state, segment_of(teach, state, i),
                                              segment_of(teach, state, j), MVW_NO_DISTANCE);
      sum[i] += distance;
      sum[j] += distance;
      if (distance > farthest[i]) farthest[i] = distance;
      if (distance > farthest[j]) farthest[j] = distance;
    }
  for (uint8_t i = 1; i < teach->count; i++)
    if (sum[i] < sum[best]) best = i;
  teach->spread = farthest[best];
  return best;
}

/* The model's thresholds: the tightest and the most generous. */
static void find_thresholds(const mvw_model *model, uint32_t *least, uint32_t *most) {
  *least = MVW_NO_DISTANCE;
  *most = 0;
  for (uint8_t gesture = 0; gesture < model->gesture_count; gesture++) {
    uint32_t threshold = MVW_READ_U32(&model->gestures[gesture].threshold);
    if (threshold < *least) *least = threshold;
    if (threshold > *most) *most = threshold;
  }
}

/* Twice as far as the farthest of the few that were made, as the next one is sure to be another, and
 * no tighter than the model's tightest; but no farther than three quarters of the way to the nearest
 * other gesture. */
static uint32_t learn_threshold(uint32_t spread, uint32_t other, uint32_t tightest) {
  uint32_t threshold = spread * 2u;
  uint32_t most = other - other / 4u;
  if (threshold < tightest) threshold = tightest;
  if (other != MVW_NO_DISTANCE && threshold > most) threshold = most;
  return threshold < spread ? spread : threshold;
}

static int finish(mvw_teach *teach, const mvw_state *state) {
  uint8_t gesture = teach->gesture;
  uint8_t best = choose_segment(teach, state);
  uint16_t values = mvw_taught_values(state);
  uint32_t tightest;
  uint32_t widest;
  find_thresholds(state->model, &tightest, &widest);
  mvw_teach_cancel(teach);
  if (teach->spread > widest) return MVW_TEACH_E_UNLIKE;
  teach->threshold = learn_threshold(teach->spread, teach->nearest_distance, tightest);
  if (teach->nearest_distance <= teach->spread) return MVW_TEACH_E_NEAR;
  uint8_t slot = slot_for(teach, gesture);
  mvw_taught *taught = teach->memory.slots + slot;
  copy(teach->memory.templates + (uint32_t)slot * values, segment_of(teach, state, best), values);
  taught->gesture = gesture;
  taught->takes = teach->count;
  taught->threshold = teach->threshold;
  return MVW_TEACH_DONE;
}

int mvw_teach_event(mvw_teach *teach, const mvw_state *state, mvw_event *event) {
  if (teach == NULL || state == NULL || event == NULL) return MVW_E_ARGUMENT;
  int compared = event->reason != MVW_REASON_SHORT && event->reason != MVW_REASON_LONG;
  if (teach->gesture == MVW_NO_GESTURE) {
    if (compared) mvw_taught_match(teach, state, event);
    return MVW_EVENT;
  }
  if (!compared) return MVW_TEACH_E_CUT;
  copy(teach->memory.segments + (uint32_t)teach->count * mvw_taught_values(state),
       mvw_query(state), mvw_taught_values(state));
  teach->count++;
  look_around(teach, state);
  return teach->count < teach->memory.takes ? MVW_TEACH_MORE : finish(teach, state);
}
