/*
 * The least firmware with the recogniser in it: linked with and without (EMPTY), the difference is
 * what the recogniser takes of flash, with what it pulls from the compiler's library; linked with
 * teaching too (TEACH), what that takes: one slot, three movements.
 */
#include <stddef.h>

#include "model.h"
#include "mvw_teach.h"

volatile int16_t reading;
volatile uint8_t heard;

int main(void) {
#ifndef EMPTY
  static int16_t ring[MODEL_RING_SAMPLES][MVW_AXES];
  static int16_t query[MODEL_QUERY_VALUES];
  static uint32_t row[MODEL_ROW_VALUES];
  static mvw_state state;
  mvw_memory memory = {ring, MODEL_RING_SAMPLES, query, MODEL_QUERY_VALUES, row, MODEL_ROW_VALUES};
  mvw_event event;
  mvw_board board = MODEL_BOARD;
  if (mvw_init(&state, &model, &board, &memory) != MVW_OK) return 1;
#ifdef TEACH
  static mvw_taught slot;
  static int8_t template[MODEL_QUERY_VALUES];
  static int8_t segments[3 * MODEL_QUERY_VALUES];
  static mvw_teach teach;
  mvw_teach_memory room = {&slot, template, segments, 1, 3};
  if (mvw_teach_init(&teach, &state, &room) != MVW_OK) return 1;
#endif
  for (;;) {
    int16_t sample[MVW_AXES];
    for (uint8_t axis = 0; axis < MVW_AXES; axis++) sample[axis] = reading;
    if (mvw_push(&state, sample, &event) == MVW_EVENT) {
#ifdef TEACH
      if (reading < 0) mvw_teach_begin(&teach, &state, heard);
      if (reading == 0) mvw_teach_forget(&teach, heard);
      if (mvw_teach_event(&teach, &state, &event) != MVW_EVENT) continue;
#endif
      heard = event.gesture;
    }
  }
#endif
  for (;;) heard = (uint8_t)reading;
}
