/*
 * What the parts of a decision cost, for a model of any shape: takes the place of the packed
 * self-test. For segments of several lengths it prints
 *   # normalise <samples> <ticks>
 *   # kernel <ticks>              models with kernel features
 *   # templates <ticks>           all of them, none given up early
 */
#include <stddef.h>

#include "board.h"
#include "model.h"
#include "mvw_impl.h"
#include "probe.h"
#include "probe_text.h"

#define MOST 180u

static const uint16_t lengths[] = {60, 100, MOST};

static int16_t samples[MOST][MVW_AXES];
static int16_t ring[MODEL_RING_SAMPLES][MVW_AXES];
static int16_t query[MODEL_QUERY_VALUES];
static uint32_t row[MODEL_ROW_VALUES];
static mvw_state state;
static uint16_t count;

void __real_mvw_resample(mvw_state *s, const mvw_view *view);
void __wrap_mvw_resample(mvw_state *s, const mvw_view *view);
void __real_mvw_normalise(mvw_state *s);
void __wrap_mvw_normalise(mvw_state *s);
void __real_mvw_kernel_scores(mvw_state *s, int32_t *scores);
void __wrap_mvw_kernel_scores(mvw_state *s, int32_t *scores);

static uint32_t resample_ticks;

void __wrap_mvw_resample(mvw_state *s, const mvw_view *view) {
  uint32_t from = probe_ticks();
  __real_mvw_resample(s, view);
  resample_ticks = probe_elapsed(from, probe_ticks());
}

void __wrap_mvw_normalise(mvw_state *s) {
  uint32_t from = probe_ticks();
  __real_mvw_normalise(s);
  put_numbers("# normalise ", count, resample_ticks + probe_elapsed(from, probe_ticks()));
}

void __wrap_mvw_kernel_scores(mvw_state *s, int32_t *scores) {
  uint32_t from = probe_ticks();
  __real_mvw_kernel_scores(s, scores);
  put_numbers("# kernel ", model.kernel_features, probe_elapsed(from, probe_ticks()));
}

/* Swings of all axes with some noise: values as movements have them, the same on every machine. */
static void make_samples(void) {
  uint32_t seed = 1;
  for (uint16_t i = 0; i < MOST; i++)
    for (uint8_t axis = 0; axis < MVW_AXES; axis++) {
      uint16_t phase = (uint16_t)(i * (axis + 3u) % 64u);
      int16_t triangle = (int16_t)(phase < 32u ? phase : 64 - phase);
      seed = seed * 1664525u + 1013904223u;
      samples[i][axis] = (int16_t)((triangle - 16) * 250 + (int16_t)(seed >> 24) - 128);
    }
}

void selftest_packed(void) {
  static const int16_t gravity[3] = {3000, 2000, 1000};
  mvw_memory memory = {ring, MODEL_RING_SAMPLES, query, MODEL_QUERY_VALUES, row, MODEL_ROW_VALUES};
  mvw_event event;
  make_samples();
  if (mvw_init(&state, &model, NULL, &memory) != MVW_OK) return;
  for (uint8_t i = 0; i < sizeof lengths / sizeof lengths[0]; i++) {
    count = lengths[i];
    mvw_classify(&state, (const int16_t(*)[MVW_AXES])samples, count, gravity, &event);
    uint32_t ticks = 0;
    for (uint16_t t = 0; t < model.template_count; t++) {
      uint32_t from = probe_ticks();
      (void)mvw_template_distance(&state, t);
      ticks += probe_elapsed(from, probe_ticks());
    }
    put_numbers("# templates ", model.template_count, ticks);
  }
}
