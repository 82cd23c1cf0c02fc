#include "mvw_impl.h"

uint32_t mvw_isqrt(uint32_t value) {
  uint32_t root = 0;
  uint32_t bit = (uint32_t)1 << 30;
  while (bit > value) bit >>= 2;
  while (bit != 0) {
    if (value >= root + bit) {
      value -= root + bit;
      root = (root >> 1) + bit;
    } else {
      root >>= 1;
    }
    bit >>= 2;
  }
  return root;
}

int16_t mvw_saturate16(int32_t value) {
  if (value > INT16_MAX) return INT16_MAX;
  if (value < INT16_MIN) return INT16_MIN;
  return (int16_t)value;
}

uint32_t mvw_magnitude(int32_t value) {
  return value < 0 ? 0u - (uint32_t)value : (uint32_t)value;
}

/* Written with magnitudes: the result must not hang on how a compiler shifts negative numbers. */
int32_t mvw_divide_round(int32_t value, int32_t by) {
  uint32_t half = (uint32_t)by / 2u;
  uint32_t quotient = (mvw_magnitude(value) + half) / (uint32_t)by;
  return value < 0 ? -(int32_t)quotient : (int32_t)quotient;
}

int32_t mvw_shift_round(int32_t value, uint8_t shift) {
  uint32_t half = (uint32_t)1 << (shift - 1u);
  uint32_t quotient = (mvw_magnitude(value) + half) >> shift;
  return value < 0 ? -(int32_t)quotient : (int32_t)quotient;
}
