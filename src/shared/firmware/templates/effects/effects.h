/*
 * Light for gestures: each gesture turns the light to its own steady colour, holds it and lets it
 * go dark, slowly. Integers only; the caller owns the state and tells the time.
 *
 * It never flashes. A change of colour takes at least LIGHT_FADE_IN_MS, and a new gesture is taken
 * only when the last change is over. Two opposite changes of brightness, which make one flash, are
 * thus at least 2 * LIGHT_FADE_IN_MS = 1.2 s apart, less than one flash a second; guidelines for
 * people with photosensitive epilepsy allow three (WCAG 2.2, success criterion 2.3.1).
 */
#ifndef EFFECTS_H
#define EFFECTS_H

#include <stdint.h>

#define LIGHT_FADE_IN_MS 600u   /* from the light as it is to the gesture's colour */
#define LIGHT_HOLD_MS 1500u     /* steady */
#define LIGHT_FADE_OUT_MS 1200u /* to dark; not less than LIGHT_FADE_IN_MS */

/* Duty of each channel, 0 (off) to 255 (full on). */
typedef struct light_colour {
  uint8_t red;
  uint8_t green;
  uint8_t blue;
} light_colour;

/* State of the light. All members are private. */
typedef struct light {
  light_colour from;    /* colour when the gesture was taken */
  light_colour to;      /* colour of the gesture */
  uint32_t started_ms;  /* when it was taken */
  uint8_t running;      /* 0: dark */
} light;

/* Colours by gesture, in the order of enum model_gesture (effect_table.c). */
extern const light_colour light_colours[];

/* Dark. */
void light_init(light *lamp);

/* Takes a gesture at now_ms, a clock that may wrap around.
 * Returns 1, or 0 when the light is still changing and the gesture was not taken. */
int light_start(light *lamp, uint8_t gesture, uint32_t now_ms);

/* Colour at now_ms. Call at least every 20 ms for a smooth fade, and at least once in 49 days. */
light_colour light_at(light *lamp, uint32_t now_ms);

#endif
