/*
 * What the core cuts out of recordings whose energy is known already, for training's search: the same
 * recording is cut under hundreds of thresholds, and its energy hangs on none of them. Gives the
 * segments of mvw_push() with motion segmentation, a test holds; knows nothing of matching.
 */
#include "movewright.h"

#define EXPORT(name) __attribute__((export_name(name)))

/* Words of a segment in the host's view. */
#define SEGMENT_WORDS 8
/* Samples of rest that make gravity known. */
#define REST_ENOUGH 4u

typedef struct scan {
  const mvw_segmenter *segmenter;
  uint32_t start;
  uint32_t last_moving;
  uint32_t hold;
  uint32_t wait;
  uint32_t phase;
  uint32_t rest_count;
  int32_t rest[3];
  uint32_t gravity_known;
  int32_t gravity[3];
} scan;

static int32_t divided(int32_t value, uint32_t by) {
  uint32_t size = ((value < 0 ? 0u - (uint32_t)value : (uint32_t)value) + by / 2u) / by;
  return value < 0 ? -(int32_t)size : (int32_t)size;
}

static int32_t shifted(int32_t value, uint32_t by) {
  uint32_t size = (value < 0 ? 0u - (uint32_t)value : (uint32_t)value) + (1u << (by - 1u));
  return value < 0 ? -(int32_t)(size >> by) : (int32_t)(size >> by);
}

static void see_rest(scan *s, const int16_t *now) {
  uint32_t shift = s->segmenter->rest_shift;
  uint32_t window = 1u << shift;
  if (s->rest_count < window) s->rest_count++;
  for (int axis = 0; axis < 3; axis++) {
    int32_t change = now[axis] * 256 - s->rest[axis];
    s->rest[axis] += s->rest_count == window ? shifted(change, shift) : divided(change, s->rest_count);
  }
}

static void open_at(scan *s, uint32_t n) {
  uint32_t back = (uint32_t)s->segmenter->on_hold - 1u + s->segmenter->pre_roll;
  uint32_t start = n >= back ? n - back : 0;
  if (start > s->start) s->start = start;
  s->last_moving = n;
  s->hold = 0;
  s->phase = MVW_PHASE_MOVING;
  s->gravity_known = s->rest_count >= REST_ENOUGH;
  for (int axis = 0; axis < 3; axis++) {
    int32_t value = shifted(s->rest[axis], 8);
    s->gravity[axis] = value > INT16_MAX ? INT16_MAX : value < INT16_MIN ? INT16_MIN : value;
  }
}

/* Writes the segment that ends before sample end: stream, start, end, reason, gravity. */
static void close_at(scan *s, uint32_t stream, uint32_t end, uint32_t phase, uint32_t *out) {
  uint32_t count = end - s->start;
  uint32_t reason = MVW_REASON_NONE;
  if (count >= s->segmenter->max_length)
    reason = MVW_REASON_LONG;
  else if (count < s->segmenter->min_length)
    reason = MVW_REASON_SHORT;
  out[0] = stream;
  out[1] = s->start;
  out[2] = end;
  out[3] = reason;
  out[4] = s->gravity_known;
  for (int axis = 0; axis < 3; axis++) out[5 + axis] = (uint32_t)s->gravity[axis];
  s->start = end;
  s->hold = 0;
  s->wait = s->segmenter->refractory;
  s->phase = phase;
}

/* One sample's energy; returns 1 when a segment was written to out. */
static int step(scan *s, uint32_t stream, uint32_t n, uint32_t energy, uint32_t *out) {
  const mvw_segmenter *segmenter = s->segmenter;
  int moves = energy >= segmenter->off_threshold;
  if (s->phase == MVW_PHASE_IDLE) {
    if (s->wait > 0) {
      s->wait--;
      s->hold = 0;
    } else if (energy < segmenter->on_threshold) {
      s->hold = 0;
    } else if (++s->hold >= segmenter->on_hold) {
      open_at(s, n);
    }
    return 0;
  }
  if (moves) {
    s->hold = 0;
    if (s->phase != MVW_PHASE_MOVING) return 0;
    s->last_moving = n;
    if (n + 1u - s->start < segmenter->max_length) return 0;
    close_at(s, stream, n + 1u, MVW_PHASE_WAIT_REST, out);
    return 1;
  }
  if (++s->hold < segmenter->off_hold) return 0;
  if (s->phase == MVW_PHASE_MOVING) {
    close_at(s, stream, s->last_moving + 1u, MVW_PHASE_IDLE, out);
    return 1;
  }
  s->hold = 0;
  s->start = n + 1u;
  s->phase = MVW_PHASE_IDLE;
  return 0;
}

static mvw_segmenter read_segmenter(const uint32_t *words) {
  mvw_segmenter segmenter = {0};
  segmenter.on_threshold = words[0];
  segmenter.off_threshold = words[1];
  segmenter.on_hold = (uint16_t)words[2];
  segmenter.off_hold = (uint16_t)words[3];
  segmenter.min_length = (uint16_t)words[4];
  segmenter.max_length = (uint16_t)words[5];
  segmenter.pre_roll = (uint16_t)words[6];
  segmenter.refractory = (uint16_t)words[7];
  segmenter.rest_shift = (uint8_t)words[8];
  return segmenter;
}

/* Cuts streams, each from a reset. energy: of the samples of one stream after the other; counts: the
 * samples, or null where gravity is not asked for; lengths: samples of each stream; words: on and off
 * threshold, on and off hold, least and greatest length, pre-roll, refractory, rest shift; phases: a
 * byte a sample, or null. out: SEGMENT_WORDS a segment, room for one every other sample and stream.
 * Returns the number of segments. */
EXPORT("cut")
int port_cut(const uint32_t *energy, const int16_t *counts, const uint32_t *lengths, int streams,
             const uint32_t *words, uint8_t *phases, uint32_t *out) {
  mvw_segmenter segmenter = read_segmenter(words);
  int found = 0;
  for (int stream = 0; stream < streams; stream++) {
    scan s = {0};
    s.segmenter = &segmenter;
    for (uint32_t n = 0; n < lengths[stream]; n++, energy++) {
      uint32_t before = s.phase;
      found += step(&s, (uint32_t)stream, n, *energy, out + found * SEGMENT_WORDS);
      if (phases) *phases++ = (uint8_t)s.phase;
      if (counts == 0) continue;
      if (*energy < segmenter.off_threshold)
        see_rest(&s, counts);
      else if (before != MVW_PHASE_IDLE)
        s.rest_count = 0;
      counts += MVW_AXES;
    }
  }
  return found;
}
