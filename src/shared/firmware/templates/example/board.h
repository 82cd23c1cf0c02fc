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

/*
 * The rest is for main_fifo.c only.
 */

/* Reads up to most samples from the sensor's FIFO, oldest first. Returns how many there were. */
uint8_t fifo_read(int16_t samples[][MVW_AXES], uint8_t most);

/* Whether the FIFO lost samples since the last call: its overrun flag. */
int fifo_overrun(void);

/* Sleeps until the sensor's interrupt pin says that the FIFO holds the watermark, a quarter of its
 * depth or so. Returns 0 when there will be no more. */
int fifo_wait(void);

/* Sets the sensor to its lowest power with only its motion interrupt on, stops the processor until
 * that comes, and sets the sensor up as before with an empty FIFO. */
void sleep_until_motion(void);

/* Microseconds of a clock that does not come from the sensor; wraps around. */
uint32_t clock_us(void);

/* Starts the watchdog's time anew. */
void feed_watchdog(void);

#endif
