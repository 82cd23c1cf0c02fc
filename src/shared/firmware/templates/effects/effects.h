/*
 * How the prop answers: light, tune and vibration for each gesture, at rest and to a rejected
 * movement. The tables are in effect_table.c, the player is core/mvw_light.c. Integers only; the
 * caller owns the state and tells the time.
 */
#ifndef EFFECTS_H
#define EFFECTS_H

#include "mvw_light.h"

/* Steps of one answer within tune_steps or shake_steps. */
typedef struct effect_steps {
  uint16_t first;
  uint8_t count;
} effect_steps;

/* effect_table.c, in the order of the effects in mvw_light.h. */
extern const mvw_light_table light_table;
extern const mvw_step tune_steps[];    /* Hz */
extern const effect_steps tunes[];
extern const mvw_step shake_steps[];   /* strength, 0 to 255 */
extern const effect_steps shakes[];

/* State of all three. All members are private. */
typedef struct answer {
  mvw_light light;
  mvw_steps tune;
  mvw_steps shake;
} answer;

/* What the prop gives out now. */
typedef struct answer_now {
  uint16_t duty[MVW_LIGHT_CHANNELS]; /* red, green, blue; 65535 is full on */
  uint16_t tune_hz;                  /* 0: silence */
  uint8_t shake;                     /* 0: still, 255: strongest */
} answer_now;

/* At rest. Returns MVW_OK or a negative status of mvw_light_init(). */
int answer_init(answer *state);

/* Answers an event of the recogniser. The light may wait or not be taken (mvw_light_start); tune and
 * vibration start at once. Returns what mvw_light_start() does. */
int answer_event(answer *state, const mvw_event *event);

/* Low cells: another light at rest. */
void answer_low_cells(answer *state, int low);

/* Lets time pass. Call every 5 to 20 ms. */
void answer_tick(answer *state, uint16_t elapsed_ms, answer_now *now);

#endif
