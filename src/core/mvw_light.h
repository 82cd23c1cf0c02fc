/*
 * Light for a prop: plays effects for gestures and at rest, pushed by ticks of a clock in ms.
 *
 * C99, integers only, no heap, no globals: the caller owns the state and the tables. The duty at an
 * instant depends on the tables, the seed and what was started when, never on how time was cut into
 * ticks. The same file draws the preview on the phone, so phone and board agree to the bit.
 *
 * Use:  mvw_light_init() once; mvw_light_start() when a gesture comes; every 5 to 20 ms
 *       mvw_light_tick(), then mvw_light_pwm() for each channel into the timer's compare register.
 *
 * Brightness is given in steps that look equal: CIE 1976 lightness, level 255 being L* = 100. A
 * colour is the share of each emitter in linear light; duty is its product with the luminance of
 * the level (mvw_luminance).
 */
#ifndef MVW_LIGHT_H
#define MVW_LIGHT_H

#include "movewright.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Red, green, blue. */
#define MVW_LIGHT_CHANNELS 3

/* Limits, checked by mvw_light_check(). */
#define MVW_LIGHT_MAX_EFFECTS 67     /* three of their own and one for each gesture */
#define MVW_LIGHT_MAX_KEYS 64        /* keyframes of one effect */
#define MVW_LIGHT_MIN_PERIOD_MS 20   /* shortest round, and between two keyframes half of it */

/* Effects by number. Gesture g answers with effect MVW_LIGHT_GESTURE + g. */
#define MVW_LIGHT_IDLE 0    /* at rest */
#define MVW_LIGHT_REJECT 1  /* a movement was seen and rejected */
#define MVW_LIGHT_LOW 2     /* at rest with low cells (mvw_light_low) */
#define MVW_LIGHT_GESTURE 3 /* the first gesture's */
#define MVW_LIGHT_REST 255  /* mvw_light_effect.next: back to rest */

enum mvw_light_kind {
  MVW_LIGHT_OFF = 0,     /* dark; as an answer it is not taken, the light stays as it is */
  MVW_LIGHT_STEADY = 1,  /* level high */
  MVW_LIGHT_BREATHE = 2, /* from low to high and back in a round, smoothly */
  MVW_LIGHT_FLICKER = 3, /* like a flame between low and high; a round is one wave of it */
  MVW_LIGHT_SPARKLE = 4, /* at low, and once a round, at a time not foreseen, up to high and back
                            within a third of the round */
  MVW_LIGHT_HUE = 5,     /* level high; the hue walks round the wheel */
  MVW_LIGHT_KEYS = 6     /* keyframes */
};

/* How a keyframe passes into the next. */
enum mvw_light_ease {
  MVW_EASE_STEP = 0,   /* holds, then jumps */
  MVW_EASE_LINEAR = 1,
  MVW_EASE_SMOOTH = 2, /* 3u^2 - 2u^3 */
  MVW_EASE_IN = 3,     /* u^2, slow at first */
  MVW_EASE_OUT = 4     /* 1 - (1-u)^2, slow at last */
};

/* What an effect does when another is asked for while it answers. At rest all are taken at once. */
enum mvw_light_rule {
  MVW_LIGHT_AT_ONCE = 0,     /* makes way */
  MVW_LIGHT_AFTER_ROUND = 1, /* makes way at the end of its round; the last one asked for waits */
  MVW_LIGHT_NOT_BEFORE_END = 2 /* plays to its end; others are not taken */
};

typedef struct mvw_light_key {
  uint16_t at_ms;                      /* from the start of the round; the first is 0, each at
                                          least MVW_LIGHT_MIN_PERIOD_MS / 2 after the one before */
  uint8_t level;                       /* lightness, 255 is L* = 100 */
  uint8_t colour[MVW_LIGHT_CHANNELS];  /* share of each emitter, linear */
  uint8_t ease;                        /* enum mvw_light_ease, to the next */
  uint8_t unused;                      /* 0 */
} mvw_light_key;

typedef struct mvw_light_effect {
  uint8_t kind;                        /* enum mvw_light_kind */
  uint8_t rule;                        /* enum mvw_light_rule */
  uint8_t next;                        /* effect that follows, or MVW_LIGHT_REST */
  uint8_t low;                         /* levels, low <= high */
  uint8_t high;
  uint8_t colour[MVW_LIGHT_CHANNELS];  /* share of each emitter, linear; not used by KEYS, HUE */
  uint8_t hue;                         /* HUE: where it starts, 256 a turn; 0 is red, 85 green */
  uint8_t turn;                        /* HUE: how far it walks, (turn + 1) / 256; all the way round
                                          at 255, there and back when less */
  uint16_t rounds;                     /* rounds until the next; 0: until another effect starts */
  uint16_t period_ms;                  /* length of a round; KEYS: at_ms of the last keyframe */
  uint16_t fade_ms;                    /* crossfade from the light before, at the effect's start;
                                          two lamps mixed, linear in duty */
  uint16_t first_key;                  /* KEYS: index of its first keyframe */
  uint8_t key_count;                   /* KEYS: 2..MVW_LIGHT_MAX_KEYS, otherwise 0 */
  uint8_t unused;                      /* 0 */
} mvw_light_effect;

typedef struct mvw_light_table {
  const mvw_light_effect *effects;        /* MVW_FLASH */
  const mvw_light_key *keys;              /* MVW_FLASH; may be null without KEYS */
  uint8_t effect_count;                   /* MVW_LIGHT_GESTURE..MVW_LIGHT_MAX_EFFECTS */
  uint8_t full_ma[MVW_LIGHT_CHANNELS];    /* current of each channel at full duty, mA */
  uint16_t limit_ma;                      /* most for all together, average over a PWM period, mA;
                                             above it all three are dimmed alike; 0: no limit */
  uint16_t min_change_ms;                 /* least time between a change of effect and one that was
                                             asked for, which waits so long: keeps fast gestures
                                             from flashing */
  uint32_t seed;                          /* of flicker and sparkle */
} mvw_light_table;

/* Player's state. All members are private. */
typedef struct mvw_light {
  const mvw_light_table *table;
  mvw_light_effect effect;             /* copy of the one that plays */
  uint32_t round;                      /* rounds since it started */
  uint16_t clock_ms;                   /* within the round */
  uint16_t since_ms;                   /* since the last change of effect, saturating */
  uint16_t from[MVW_LIGHT_CHANNELS];   /* duty at that change */
  uint8_t playing;                     /* number of the effect */
  uint8_t wanted;                      /* effect that waits for the end of the round, or REST */
  uint8_t rest;                        /* MVW_LIGHT_IDLE or MVW_LIGHT_LOW */
} mvw_light;

/* Checks every field of a table against its range. Returns MVW_OK or MVW_E_ARGUMENT. */
int mvw_light_check(const mvw_light_table *table);

/* At rest, faded in from dark. The table must outlive the state.
 * Returns what mvw_light_check() does; on failure the state must not be used. */
int mvw_light_init(mvw_light *light, const mvw_light_table *table);

/* Asks for an effect by number.
 * Returns 1 when it started, 2 when it waits (for min_change_ms or the end of the round; the last
 * one asked for is kept), 0 when it was not taken, or MVW_E_ARGUMENT for a number the table does
 * not have. */
int mvw_light_start(mvw_light *light, uint8_t effect);

/* Says whether the cells are low: at rest MVW_LIGHT_LOW plays instead of MVW_LIGHT_IDLE. An effect
 * that is answering plays on. */
void mvw_light_low(mvw_light *light, int low);

/* Lets time pass and gives the duty of red, green, blue, 0 (off) to 65535 (full on). Work is bounded
 * by the rounds that end within elapsed_ms. */
void mvw_light_tick(mvw_light *light, uint16_t elapsed_ms, uint16_t duty[MVW_LIGHT_CHANNELS]);

/* Luminance of a level with eight bits of fraction, 0..65280, as a share of 65535: the inverse of
 * CIE 1976 lightness (CIE 15), exact at whole levels, a straight line between them. */
uint16_t mvw_luminance(uint16_t level);

/* Compare value of a timer that counts 0..top for a duty, rounded; top is full on.
 * 255 for 8 bits, 1023 for 10, 4095 for 12. */
uint16_t mvw_light_pwm(uint16_t duty, uint16_t top);

/* One step of a tune or a vibration: a pitch in Hz or a strength 0..255, 0 being a pause. */
typedef struct mvw_step {
  uint16_t value;
  uint16_t ms; /* > 0 */
} mvw_step;

/* Plays steps. All members are private. */
typedef struct mvw_steps {
  const mvw_step *next;
  uint16_t value;
  uint16_t left_ms;
  uint8_t left;
} mvw_steps;

/* Starts count steps in flash (MVW_FLASH), over whatever played; count 0 is silence. */
void mvw_steps_start(mvw_steps *steps, const mvw_step *first, uint8_t count);

/* Lets time pass. Returns the value that holds from now on, 0 after the last step. */
uint16_t mvw_steps_tick(mvw_steps *steps, uint16_t elapsed_ms);

#ifdef __cplusplus
}
#endif

#endif
