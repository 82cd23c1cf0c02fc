#include "effects.h"

static const light_colour dark = {0, 0, 0};

/* Between two values, part of whole of the way; part <= whole < 2^15. */
static uint8_t blend(uint8_t from, uint8_t to, uint32_t part, uint32_t whole) {
  uint32_t sum = (uint32_t)from * (whole - part) + (uint32_t)to * part;
  return (uint8_t)((sum + whole / 2u) / whole);
}

static light_colour fade(light_colour from, light_colour to, uint32_t part, uint32_t whole) {
  light_colour now;
  now.red = blend(from.red, to.red, part, whole);
  now.green = blend(from.green, to.green, part, whole);
  now.blue = blend(from.blue, to.blue, part, whole);
  return now;
}

void light_init(light *lamp) {
  lamp->from = dark;
  lamp->to = dark;
  lamp->started_ms = 0;
  lamp->running = 0;
}

int light_start(light *lamp, uint8_t gesture, uint32_t now_ms) {
  light_colour now = light_at(lamp, now_ms);
  uint32_t age_ms = now_ms - lamp->started_ms;
  if (lamp->running && age_ms < LIGHT_FADE_IN_MS) return 0;
  lamp->from = now;
  lamp->to = light_colours[gesture];
  lamp->started_ms = now_ms;
  lamp->running = 1;
  return 1;
}

light_colour light_at(light *lamp, uint32_t now_ms) {
  uint32_t age_ms = now_ms - lamp->started_ms;
  if (!lamp->running) return dark;
  if (age_ms < LIGHT_FADE_IN_MS) return fade(lamp->from, lamp->to, age_ms, LIGHT_FADE_IN_MS);
  age_ms -= LIGHT_FADE_IN_MS;
  if (age_ms < LIGHT_HOLD_MS) return lamp->to;
  age_ms -= LIGHT_HOLD_MS;
  if (age_ms < LIGHT_FADE_OUT_MS) return fade(lamp->to, dark, age_ms, LIGHT_FADE_OUT_MS);
  lamp->running = 0;
  return dark;
}
