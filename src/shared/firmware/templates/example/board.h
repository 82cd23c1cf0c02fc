/* What the main loop asks of the hardware: write these functions for your board. */
#ifndef BOARD_H
#define BOARD_H

#include <stdint.h>

#include "effects.h"
#include "movewright.h"

/* Waits for the sensor's next reading (its data-ready pin or interrupt, not a delay: the recogniser
 * counts on the output data rate) and stores accelerometer x y z, gyroscope x y z as signed counts.
 * Returns 1, or 0 when there will be no more readings. */
int read_sample(int16_t sample[MVW_AXES]);

/* Whether the button is pressed, already debounced. Called only by models that cut movements by a
 * button (MODEL_BUTTON is 1). */
int button_pressed(void);

/* Sets the duty of the three channels. */
void show_light(light_colour colour);

#endif
