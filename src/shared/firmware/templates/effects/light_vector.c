#include "light_vector.h"

#include "effects.h"

#define TICKS 200
#define TICK_MS 23

static uint32_t take(uint32_t hash, uint8_t byte) { return (hash ^ byte) * 0x01000193u; }

uint32_t light_vector(void) {
  mvw_light light;
  uint32_t hash = 0x811c9dc5u;
  if (mvw_light_init(&light, &light_table) != MVW_OK) return 0;
  for (uint8_t effect = 0; effect < light_table.effect_count; effect++) {
    mvw_light_low(&light, effect % 2 == 1);
    (void)mvw_light_start(&light, effect);
    for (uint8_t i = 0; i < TICKS; i++) {
      uint16_t duty[MVW_LIGHT_CHANNELS];
      mvw_light_tick(&light, TICK_MS, duty);
      for (uint8_t c = 0; c < MVW_LIGHT_CHANNELS; c++)
        hash = take(take(hash, (uint8_t)duty[c]), (uint8_t)(duty[c] >> 8));
    }
  }
  return hash;
}
