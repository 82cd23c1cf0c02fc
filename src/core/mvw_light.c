#include "mvw_light_impl.h"

/* One, for shares of time and noise. */
#define ONE_Q15 ((uint32_t)32768)

/* Light before emitters: lightness and colour with eight bits of fraction, 0..65280. */
typedef struct tint {
  uint16_t level;
  uint16_t colour[MVW_LIGHT_CHANNELS];
} tint;

/* part of whole, part <= whole, whole > 0. */
static uint32_t share_q15(uint16_t part, uint16_t whole) { return part * ONE_Q15 / whole; }

/* A byte with eight bits of fraction. */
static uint16_t whole_q8(uint8_t value) { return (uint16_t)((uint16_t)value << 8); }

static uint16_t between(uint16_t from, uint16_t to, uint32_t share) {
  if (from <= to) return (uint16_t)(from + (((uint32_t)(to - from) * share) >> 15));
  return (uint16_t)(from - (((uint32_t)(from - to) * share) >> 15));
}

static uint32_t eased(uint8_t ease, uint32_t u) {
  uint32_t rest = ONE_Q15 - u;
  switch (ease) {
    case MVW_EASE_STEP: return u < ONE_Q15 ? 0 : ONE_Q15;
    case MVW_EASE_SMOOTH: return (((u * u) >> 15) * (3u * ONE_Q15 - 2u * u)) >> 15;
    case MVW_EASE_IN: return (u * u) >> 15;
    case MVW_EASE_OUT: return ONE_Q15 - ((rest * rest) >> 15);
    default: return u;
  }
}

/* Up and down again: 0 at 0 and 1, one in the middle. */
static uint32_t there_and_back(uint32_t u) {
  return u <= ONE_Q15 / 2 ? 2u * u : 2u * (ONE_Q15 - u);
}

/* Noise by position: the finaliser of MurmurHash3 (A. Appleby, public domain) over a Weyl step. */
static uint32_t noise(uint32_t seed, uint32_t position) {
  uint32_t x = seed + position * 0x9e3779b9u;
  x = (x ^ (x >> 16)) * 0x85ebca6bu;
  x = (x ^ (x >> 13)) * 0xc2b2ae35u;
  return x ^ (x >> 16);
}

/* Noise that passes smoothly from one position to the next, 0..ONE_Q15. */
static uint32_t wave(uint32_t seed, uint32_t position, uint32_t u) {
  uint16_t from = (uint16_t)(noise(seed, position) >> 17);
  uint16_t to = (uint16_t)(noise(seed, position + 1u) >> 17);
  return between(from, to, eased(MVW_EASE_SMOOTH, u));
}

/* A slow wave and one of twice its speed and half its size. */
static uint32_t flame(const mvw_light *light, uint32_t u) {
  uint32_t seed = light->table->seed;
  uint32_t half = u < ONE_Q15 / 2 ? 0 : 1u;
  uint32_t slow = wave(seed, light->round, u);
  uint32_t fast = wave(~seed, light->round * 2u + half, 2u * u - half * ONE_Q15);
  return (2u * slow + fast) / 3u;
}

/* Height of the round's one sparkle. */
static uint32_t sparkle(const mvw_light *light) {
  uint16_t period = light->effect.period_ms;
  uint16_t length = (uint16_t)(period / 3u);
  uint32_t room = (uint32_t)(period - length) + 1u;
  uint16_t start = (uint16_t)(((noise(light->table->seed, light->round) >> 16) * room) >> 16);
  if (light->clock_ms < start || light->clock_ms > start + length) return 0;
  uint32_t u = share_q15((uint16_t)(light->clock_ms - start), length);
  return eased(MVW_EASE_SMOOTH, there_and_back(u));
}

/* Hues whose channels add up to one channel at full, so that the current stays the same.
 * hue: 65536 a turn. */
static void wheel(uint16_t hue, uint16_t colour[MVW_LIGHT_CHANNELS]) {
  uint32_t third = (uint32_t)hue * 3u;
  uint8_t falling = (uint8_t)(third >> 16);
  uint32_t part = third & 0xffffu;
  uint16_t up = (uint16_t)((part * 65280u) >> 16);
  for (uint8_t i = 0; i < MVW_LIGHT_CHANNELS; i++) colour[i] = 0;
  colour[falling] = (uint16_t)(65280u - up);
  colour[(falling + 1u) % MVW_LIGHT_CHANNELS] = up;
}

static uint16_t hue_at(const mvw_light_effect *effect, uint32_t u) {
  uint32_t start = (uint32_t)effect->hue << 8;
  if (effect->turn == 255) return (uint16_t)(start + 2u * u);
  return (uint16_t)(start + ((there_and_back(u) * (effect->turn + 1u)) >> 7));
}

static void keyframes(const mvw_light *light, tint *now) {
  const mvw_light_key *keys = light->table->keys + light->effect.first_key;
  uint8_t last = (uint8_t)(light->effect.key_count - 1u);
  uint8_t i = 0;
  while (i + 1u < last && MVW_READ_U16(&keys[i + 1u].at_ms) <= light->clock_ms) i++;
  mvw_light_key from, to;
  mvw_light_copy(&from, keys + i, sizeof from);
  mvw_light_copy(&to, keys + i + 1, sizeof to);
  uint32_t u = eased(from.ease, share_q15((uint16_t)(light->clock_ms - from.at_ms),
                                          (uint16_t)(to.at_ms - from.at_ms)));
  now->level = between(whole_q8(from.level), whole_q8(to.level), u);
  for (uint8_t c = 0; c < MVW_LIGHT_CHANNELS; c++)
    now->colour[c] = between(whole_q8(from.colour[c]), whole_q8(to.colour[c]), u);
}

static void tint_at(const mvw_light *light, tint *now) {
  const mvw_light_effect *effect = &light->effect;
  uint32_t u = share_q15(light->clock_ms, effect->period_ms);
  uint16_t low = whole_q8(effect->low);
  uint16_t high = whole_q8(effect->high);
  for (uint8_t c = 0; c < MVW_LIGHT_CHANNELS; c++) now->colour[c] = whole_q8(effect->colour[c]);
  now->level = high;
  switch (effect->kind) {
    case MVW_LIGHT_OFF: now->level = 0; break;
    case MVW_LIGHT_BREATHE:
      now->level = between(low, high, eased(MVW_EASE_SMOOTH, there_and_back(u)));
      break;
    case MVW_LIGHT_FLICKER: now->level = between(low, high, flame(light, u)); break;
    case MVW_LIGHT_SPARKLE: now->level = between(low, high, sparkle(light)); break;
    case MVW_LIGHT_HUE: wheel(hue_at(effect, u), now->colour); break;
    case MVW_LIGHT_KEYS: keyframes(light, now); break;
    default: break;
  }
}

/* Dims all channels alike until together they draw no more than the limit. */
static void limit_current(const mvw_light_table *table, uint16_t duty[MVW_LIGHT_CHANNELS]) {
  uint32_t sum = 0;
  uint32_t most = (uint32_t)table->limit_ma * 65535u;
  for (uint8_t c = 0; c < MVW_LIGHT_CHANNELS; c++) sum += (uint32_t)duty[c] * table->full_ma[c];
  if (table->limit_ma == 0 || sum <= most) return;
  /* Rounded down: never above the limit. sum > most, so the share is below 65536. */
  uint32_t share = (most << 6) / ((sum >> 10) + 1u);
  for (uint8_t c = 0; c < MVW_LIGHT_CHANNELS; c++) duty[c] = (uint16_t)((duty[c] * share) >> 16);
}

static void duty_now(const mvw_light *light, uint16_t duty[MVW_LIGHT_CHANNELS]) {
  tint now;
  tint_at(light, &now);
  uint32_t luminance = mvw_luminance(now.level);
  for (uint8_t c = 0; c < MVW_LIGHT_CHANNELS; c++)
    duty[c] = (uint16_t)((luminance * now.colour[c] + 32640u) / 65280u);
  if (light->since_ms < light->effect.fade_ms) {
    uint32_t u = share_q15(light->since_ms, light->effect.fade_ms);
    for (uint8_t c = 0; c < MVW_LIGHT_CHANNELS; c++) duty[c] = between(light->from[c], duty[c], u);
  }
  limit_current(light->table, duty);
}

static void begin(mvw_light *light, uint8_t number) {
  duty_now(light, light->from);
  mvw_light_copy(&light->effect, light->table->effects + number, sizeof light->effect);
  light->playing = number;
  if (light->wanted == number) light->wanted = MVW_LIGHT_REST;
  light->round = 0;
  light->clock_ms = 0;
  light->since_ms = 0;
}

static void end_round(mvw_light *light) {
  const mvw_light_effect *effect = &light->effect;
  int ready = light->wanted != MVW_LIGHT_REST && light->since_ms >= light->table->min_change_ms;
  if (ready) {
    begin(light, light->wanted);
  } else if (effect->rounds == 0 || light->round + 1u < effect->rounds) {
    light->clock_ms = 0;
    light->round++;
  } else {
    begin(light, effect->next == MVW_LIGHT_REST ? light->rest : effect->next);
  }
}

static int is_resting(const mvw_light *light) {
  return light->playing == MVW_LIGHT_IDLE || light->playing == MVW_LIGHT_LOW;
}

/* The one that waits, if any, waits for the end of the round and not only for min_change_ms. */
static int keeps_round(const mvw_light *light) {
  return !is_resting(light) && light->effect.rule != MVW_LIGHT_AT_ONCE;
}

static int ask(mvw_light *light, uint8_t number) {
  if (light->since_ms >= light->table->min_change_ms && !keeps_round(light)) {
    begin(light, number);
    return 1;
  }
  light->wanted = number;
  return 2;
}

int mvw_light_init(mvw_light *light, const mvw_light_table *table) {
  if (light == 0) return MVW_E_ARGUMENT;
  int status = mvw_light_check(table);
  if (status != MVW_OK) return status;
  light->table = table;
  light->rest = MVW_LIGHT_IDLE;
  light->wanted = MVW_LIGHT_REST;
  mvw_light_copy(&light->effect, table->effects, sizeof light->effect);
  light->effect.kind = MVW_LIGHT_OFF;
  light->effect.fade_ms = 0;
  light->clock_ms = 0;
  light->since_ms = 0;
  begin(light, MVW_LIGHT_IDLE);
  return MVW_OK;
}

int mvw_light_start(mvw_light *light, uint8_t effect) {
  mvw_light_effect asked;
  if (effect >= light->table->effect_count) return MVW_E_ARGUMENT;
  mvw_light_copy(&asked, light->table->effects + effect, sizeof asked);
  if (asked.kind == MVW_LIGHT_OFF) return 0;
  if (!is_resting(light) && light->effect.rule == MVW_LIGHT_NOT_BEFORE_END) return 0;
  return ask(light, effect);
}

void mvw_light_low(mvw_light *light, int low) {
  uint8_t rest = low ? MVW_LIGHT_LOW : MVW_LIGHT_IDLE;
  if (rest == light->rest) return;
  light->rest = rest;
  if (is_resting(light)) (void)ask(light, rest);
}

static void advance(mvw_light *light, uint16_t ms) {
  light->clock_ms = (uint16_t)(light->clock_ms + ms);
  light->since_ms = light->since_ms > 65535u - ms ? 65535u : (uint16_t)(light->since_ms + ms);
}

void mvw_light_tick(mvw_light *light, uint16_t elapsed_ms, uint16_t duty[MVW_LIGHT_CHANNELS]) {
  for (;;) {
    int waits = light->wanted != MVW_LIGHT_REST && !keeps_round(light);
    uint16_t step = (uint16_t)(light->effect.period_ms - light->clock_ms);
    uint16_t rest_ms = light->table->min_change_ms;
    uint16_t soon = light->since_ms < rest_ms ? (uint16_t)(rest_ms - light->since_ms) : 0;
    if (waits && soon < step) step = soon;
    if (elapsed_ms < step) break;
    elapsed_ms = (uint16_t)(elapsed_ms - step);
    advance(light, step);
    if (waits && step == soon)
      begin(light, light->wanted);
    else
      end_round(light);
  }
  advance(light, elapsed_ms);
  duty_now(light, duty);
}
