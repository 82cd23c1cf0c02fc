#include "mvw_light_impl.h"

void mvw_light_copy(void *to, const void *from, uint8_t bytes) {
  for (uint8_t i = 0; i < bytes; i++)
    ((uint8_t *)to)[i] = (uint8_t)MVW_READ_I8((const int8_t *)from + i);
}

static int keys_fit(const mvw_light_key *keys, const mvw_light_effect *effect) {
  uint8_t count = effect->key_count;
  uint16_t before = 0;
  if (keys == 0 || count < 2 || count > MVW_LIGHT_MAX_KEYS) return 0;
  for (uint8_t i = 0; i < count; i++) {
    mvw_light_key key;
    mvw_light_copy(&key, keys + effect->first_key + i, sizeof key);
    if (key.ease > MVW_EASE_OUT) return 0;
    if (i == 0 && key.at_ms != 0) return 0;
    if (i > 0 && (key.at_ms <= before || key.at_ms - before < MVW_LIGHT_MIN_PERIOD_MS / 2)) return 0;
    before = key.at_ms;
  }
  return before == effect->period_ms;
}

static int effect_fits(const mvw_light_table *table, const mvw_light_effect *effect) {
  if (effect->kind > MVW_LIGHT_KEYS || effect->rule > MVW_LIGHT_NOT_BEFORE_END) return 0;
  if (effect->next != MVW_LIGHT_REST && effect->next >= table->effect_count) return 0;
  if (effect->low > effect->high || effect->period_ms < MVW_LIGHT_MIN_PERIOD_MS) return 0;
  return effect->kind == MVW_LIGHT_KEYS ? keys_fit(table->keys, effect) : effect->key_count == 0;
}

int mvw_light_check(const mvw_light_table *table) {
  if (table == 0 || table->effects == 0) return MVW_E_ARGUMENT;
  if (table->effect_count < MVW_LIGHT_GESTURE || table->effect_count > MVW_LIGHT_MAX_EFFECTS)
    return MVW_E_ARGUMENT;
  for (uint8_t i = 0; i < table->effect_count; i++) {
    mvw_light_effect effect;
    mvw_light_copy(&effect, table->effects + i, sizeof effect);
    if (!effect_fits(table, &effect)) return MVW_E_ARGUMENT;
  }
  return MVW_OK;
}
