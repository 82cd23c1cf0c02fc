/*
 * The light as part of the WebAssembly module: one player in static memory, fed with tables as
 * 16-bit words. Knows the player only through its public header.
 */
#include "mvw_light.h"

#define EXPORT(name) __attribute__((export_name(name)))

/* Words of an effect, a keyframe and the head of a table, in the order read below. */
#define EFFECT_WORDS 15
#define KEY_WORDS 6
#define HEAD_WORDS 7

#define MAX_KEYS (MVW_LIGHT_MAX_EFFECTS * MVW_LIGHT_MAX_KEYS)

static mvw_light_effect effects[MVW_LIGHT_MAX_EFFECTS];
static mvw_light_key keys[MAX_KEYS];
static mvw_light_table table;
static mvw_light light;

static void read_effect(mvw_light_effect *to, const uint16_t *words) {
  to->kind = (uint8_t)words[0];
  to->rule = (uint8_t)words[1];
  to->next = (uint8_t)words[2];
  to->low = (uint8_t)words[3];
  to->high = (uint8_t)words[4];
  for (int c = 0; c < MVW_LIGHT_CHANNELS; c++) to->colour[c] = (uint8_t)words[5 + c];
  to->hue = (uint8_t)words[8];
  to->turn = (uint8_t)words[9];
  to->rounds = words[10];
  to->period_ms = words[11];
  to->fade_ms = words[12];
  to->first_key = words[13];
  to->key_count = (uint8_t)words[14];
  to->unused = 0;
}

static void read_key(mvw_light_key *to, const uint16_t *words) {
  to->at_ms = words[0];
  to->level = (uint8_t)words[1];
  for (int c = 0; c < MVW_LIGHT_CHANNELS; c++) to->colour[c] = (uint8_t)words[2 + c];
  to->ease = (uint8_t)words[5];
  to->unused = 0;
}

/* Takes a table and starts at rest. words: seed low and high half, limit_ma, min_change_ms, full_ma
 * of each channel; then effects, then keyframes. Returns MVW_OK or a negative status. */
EXPORT("light_load")
int port_light_load(const uint16_t *words, int effect_count, int key_count) {
  if (effect_count < 0 || effect_count > MVW_LIGHT_MAX_EFFECTS) return MVW_E_ARGUMENT;
  if (key_count < 0 || key_count > MAX_KEYS) return MVW_E_ARGUMENT;
  const uint16_t *effect_words = words + HEAD_WORDS;
  const uint16_t *key_words = effect_words + effect_count * EFFECT_WORDS;
  for (int i = 0; i < effect_count; i++) read_effect(effects + i, effect_words + i * EFFECT_WORDS);
  for (int i = 0; i < key_count; i++) read_key(keys + i, key_words + i * KEY_WORDS);
  table.effects = effects;
  table.keys = keys;
  table.effect_count = (uint8_t)effect_count;
  table.seed = words[0] | (uint32_t)words[1] << 16;
  table.limit_ma = words[2];
  table.min_change_ms = words[3];
  for (int c = 0; c < MVW_LIGHT_CHANNELS; c++) table.full_ma[c] = (uint8_t)words[4 + c];
  return mvw_light_init(&light, &table);
}

EXPORT("light_start") int port_light_start(int effect) {
  if (effect < 0 || effect > 255) return MVW_E_ARGUMENT;
  return mvw_light_start(&light, (uint8_t)effect);
}

EXPORT("light_low") void port_light_low(int low) { mvw_light_low(&light, low); }

/* count ticks of elapsed_ms each; three duties for each into duty. */
EXPORT("light_tick") void port_light_tick(int elapsed_ms, int count, uint16_t *duty) {
  for (int i = 0; i < count; i++)
    mvw_light_tick(&light, (uint16_t)elapsed_ms, duty + i * MVW_LIGHT_CHANNELS);
}

/* Number of the effect that plays. */
EXPORT("light_playing") int port_light_playing(void) { return light.playing; }

EXPORT("luminance") int port_luminance(int level) { return mvw_luminance((uint16_t)level); }

EXPORT("light_pwm") int port_light_pwm(int duty, int top) {
  return mvw_light_pwm((uint16_t)duty, (uint16_t)top);
}
