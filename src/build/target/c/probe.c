/*
 * Measures mvw_push() from outside: the linker puts __wrap_mvw_push() in its place (--wrap), so the
 * self-test and the core are those of the bundle, unaltered. After each decision and at the end of
 * each vector it adds lines that begin with '#' to the log:
 *   # decision 1 <ticks>
 *   # idle|moving <samples> <ticks in all>
 *   # stack <bytes of mvw_push() and all below it, highest so far> <bytes watched>
 */
#include "probe.h"

#include "movewright.h"
#include "probe_text.h"
#include "vector_run.h"

#define PAINT 0xa5u
#define PAINTED 640u

int __real_mvw_push(mvw_state *state, const int16_t sample[MVW_AXES], mvw_event *event);
int __wrap_mvw_push(mvw_state *state, const int16_t sample[MVW_AXES], mvw_event *event);
void __real_vector_end(vector_run *run);
void __wrap_vector_end(vector_run *run);

static struct {
  uint32_t samples;
  uint32_t ticks;
} idle, moving;
static uint32_t stack_bytes;

int __wrap_mvw_push(mvw_state *state, const int16_t sample[MVW_AXES], mvw_event *event) {
  uint8_t phase = state->phase;
  volatile uint8_t *top = probe_stack();
  for (uint16_t i = 1; i <= PAINTED; i++) top[-(int16_t)i] = PAINT;
  uint32_t from = probe_ticks();
  int status = __real_mvw_push(state, sample, event);
  uint32_t ticks = probe_elapsed(from, probe_ticks());
  uint16_t used = PAINTED;
  while (used > 0 && top[-(int16_t)used] == PAINT) used--;
  if (used > stack_bytes) stack_bytes = used;

  if (status == MVW_EVENT && event->reason < MVW_REASON_SHORT) {
    put_numbers("# decision ", 1, ticks);
  } else if (phase == MVW_PHASE_MOVING) {
    moving.samples++;
    moving.ticks += ticks;
  } else {
    idle.samples++;
    idle.ticks += ticks;
  }
  return status;
}

void __wrap_vector_end(vector_run *run) {
  __real_vector_end(run);
  put_numbers("# idle ", idle.samples, idle.ticks);
  put_numbers("# moving ", moving.samples, moving.ticks);
  put_numbers("# stack ", stack_bytes, PAINTED);
  idle.samples = idle.ticks = 0;
  moving.samples = moving.ticks = 0;
}
