#include "axes.h"

int axes_valid(const axes_map map) {
  /* Determinant of a matrix with one entry of +-1 in each row: sign of the permutation times signs. */
  int seen = 0;
  int sign = 1;
  for (int i = 0; i < 3; i++) {
    int axis = map[i] < 0 ? -map[i] : map[i];
    if (axis < 1 || axis > 3) return 0;
    seen |= 1 << axis;
    if (map[i] < 0) sign = -sign;
    for (int j = 0; j < i; j++)
      if ((map[j] < 0 ? -map[j] : map[j]) > axis) sign = -sign;
  }
  return seen == 14 && sign == 1;
}

static int16_t turned(const int16_t *triple, int8_t from) {
  if (from > 0) return triple[from - 1];
  int16_t value = triple[-from - 1];
  return value == INT16_MIN ? INT16_MAX : (int16_t)-value;
}

void axes_apply(const axes_map map, int16_t sample[MVW_AXES]) {
  for (int sensor = 0; sensor < MVW_AXES; sensor += 3) {
    const int16_t *triple = sample + sensor;
    int16_t x = turned(triple, map[0]);
    int16_t y = turned(triple, map[1]);
    int16_t z = turned(triple, map[2]);
    sample[sensor] = x;
    sample[sensor + 1] = y;
    sample[sensor + 2] = z;
  }
}
