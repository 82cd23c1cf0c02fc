/*
 * For a sensor that is mounted otherwise than the target says: turns its samples into the axes that
 * the model was trained for. A board like the target needs none of this.
 */
#ifndef AXES_H
#define AXES_H

#include "movewright.h"

/*
 * Where each axis of the model comes from: 1, 2, 3 are the sensor's x, y, z, negative ones point the
 * other way. {1, 2, 3} changes nothing; {-2, 1, 3} is a sensor turned by 90 degrees about z.
 */
typedef int8_t axes_map[3];

/* Whether a map is a rotation: each axis once, and right-handed. A left-handed one is a mirror,
 * which no way of mounting gives, and always a mistake. Returns 1 or 0. */
int axes_valid(const axes_map map);

/* Turns accelerometer and gyroscope alike. -32768 turned round becomes 32767. */
void axes_apply(const axes_map map, int16_t sample[MVW_AXES]);

#endif
