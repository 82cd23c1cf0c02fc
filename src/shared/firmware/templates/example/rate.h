/*
 * Measures the sensor's output data rate against the processor's clock. Sensors are allowed to be
 * off by several percent, and a wrong register is off by a factor of two: mvw_init() refuses more
 * than 5 %, but it can only judge the rate that it is told.
 */
#ifndef RATE_H
#define RATE_H

#include <stdint.h>

/* Samples to count: with one sample of doubt at either end, 200 of them are good for 1 %. */
#define RATE_SAMPLES 200u

/* Rate in mHz of `samples` samples in `elapsed_us` microseconds; 0 when that cannot be. */
uint32_t rate_millihertz(uint32_t samples, uint32_t elapsed_us);

#endif
