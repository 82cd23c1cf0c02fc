#include "mvw_light.h"

static void take_next(mvw_steps *steps) {
  steps->value = 0;
  steps->left_ms = 0;
  if (steps->left == 0) return;
  steps->value = MVW_READ_U16(&steps->next->value);
  steps->left_ms = MVW_READ_U16(&steps->next->ms);
  steps->next++;
  steps->left--;
}

void mvw_steps_start(mvw_steps *steps, const mvw_step *first, uint8_t count) {
  steps->next = first;
  steps->left = count;
  take_next(steps);
}

uint16_t mvw_steps_tick(mvw_steps *steps, uint16_t elapsed_ms) {
  while (elapsed_ms >= steps->left_ms && (steps->left_ms > 0 || steps->left > 0)) {
    elapsed_ms = (uint16_t)(elapsed_ms - steps->left_ms);
    take_next(steps);
  }
  if (steps->left_ms > 0) steps->left_ms = (uint16_t)(steps->left_ms - elapsed_ms);
  return steps->value;
}
