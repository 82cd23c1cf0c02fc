#include "effects.h"

static void play(mvw_steps *steps, const mvw_step *all, const effect_steps *part) {
  if (part->count > 0) mvw_steps_start(steps, all + part->first, part->count);
}

int answer_init(answer *state) {
  mvw_steps_start(&state->tune, tune_steps, 0);
  mvw_steps_start(&state->shake, shake_steps, 0);
  return mvw_light_init(&state->light, &light_table);
}

int answer_event(answer *state, const mvw_event *event) {
  uint8_t effect = MVW_LIGHT_REJECT;
  if (event->kind == MVW_KIND_GESTURE) effect = (uint8_t)(MVW_LIGHT_GESTURE + event->gesture);
  int taken = mvw_light_start(&state->light, effect);
  if (taken < 0) return taken;
  /* Sound and vibration do not flash: they answer at once, also while the light waits. */
  play(&state->tune, tune_steps, tunes + effect);
  play(&state->shake, shake_steps, shakes + effect);
  return taken;
}

void answer_low_cells(answer *state, int low) { mvw_light_low(&state->light, low); }

void answer_tick(answer *state, uint16_t elapsed_ms, answer_now *now) {
  mvw_light_tick(&state->light, elapsed_ms, now->duty);
  now->tune_hz = mvw_steps_tick(&state->tune, elapsed_ms);
  now->shake = (uint8_t)mvw_steps_tick(&state->shake, elapsed_ms);
}
