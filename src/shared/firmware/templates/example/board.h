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

/* Whether the cells are low; with some hysteresis, so that the light does not waver. */
int cells_low(void);

/* Sets light, tone and vibration. For a timer that counts 0..LIGHT_TOP (effect_table.h) the compare
 * values are mvw_light_pwm(now->duty[0], LIGHT_TOP) and so on; run it at LIGHT_PWM_HZ. */
void show(const answer_now *now);

#endif
