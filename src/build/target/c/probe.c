/*
 * Measures mvw_push() from outside: the linker puts __wrap_mvw_push() in its place (--wrap), so the
 * self-test and the core are those of the bundle, unaltered. After each decision and at the end of
 * each vector it adds lines that begin with '#' to the log:
 *   # decision <ticks>
 *   # idle|moving <samples> <ticks in all>
 *   # stack <bytes of mvw_push() and all below it, highest so far>
 */
#include "probe.h"

#include "board.h"
#include "movewright.h"
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

static void put_text(const char *text) {
  while (*text != '\0') port_put(*text++);
}

static void put_number(uint32_t value) {
  char digits[10];
  uint8_t count = 0;
  do {
    digits[count++] = (char)('0' + value % 10u);
    value /= 10u;
  } while (value != 0);
  while (count > 0) port_put(digits[--count]);
}

static void put_sum(const char *name, uint32_t samples, uint32_t ticks) {
  put_text(name);
  put_number(samples);
  put_text(" ");
  put_number(ticks);
  put_text("\n");
}

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
    put_text("# decision ");
    put_number(ticks);
    put_text("\n");
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
  put_sum("# idle ", idle.samples, idle.ticks);
  put_sum("# moving ", moving.samples, moving.ticks);
  put_sum("# stack ", stack_bytes, PAINTED);
  idle.samples = idle.ticks = 0;
  moving.samples = moving.ticks = 0;
}
