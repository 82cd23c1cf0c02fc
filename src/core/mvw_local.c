#include "mvw_impl.h"

/* The innermost loops: for speed also where the rest is compiled for size. */
#if defined(__GNUC__) && !defined(__clang__) && defined(__OPTIMIZE_SIZE__)
#pragma GCC optimize("O2")
#endif

#if defined(__AVR__)

/* An 8-bit part subtracts bytes at once, and would pay more to look the difference up. */
static uint32_t absolute_cost(const int8_t *a, const int8_t *b, uint8_t channels) {
  uint16_t sum = 0;
  do {
    int8_t p = *a++;
    int8_t q = MVW_READ_I8(b);
    b++;
    sum = (uint16_t)(sum + (uint8_t)(p > q ? p - q : q - p));
  } while (--channels);
  return sum;
}

static void absolute_costs(const int8_t *point, const int8_t *b, uint8_t count, uint8_t channels,
                           uint32_t *costs) {
  for (; count > 0; count--) {
    *costs++ = absolute_cost(point, b, channels);
    b += channels;
  }
}

#else

/* |k - 255|. Thumb-1 has no instruction for the magnitude; looking it up halves the work. */
static const uint8_t magnitude[511] = {
    255, 254, 253, 252, 251, 250, 249, 248, 247, 246, 245, 244, 243, 242, 241, 240, 239, 238,
    237, 236, 235, 234, 233, 232, 231, 230, 229, 228, 227, 226, 225, 224, 223, 222, 221, 220,
    219, 218, 217, 216, 215, 214, 213, 212, 211, 210, 209, 208, 207, 206, 205, 204, 203, 202,
    201, 200, 199, 198, 197, 196, 195, 194, 193, 192, 191, 190, 189, 188, 187, 186, 185, 184,
    183, 182, 181, 180, 179, 178, 177, 176, 175, 174, 173, 172, 171, 170, 169, 168, 167, 166,
    165, 164, 163, 162, 161, 160, 159, 158, 157, 156, 155, 154, 153, 152, 151, 150, 149, 148,
    147, 146, 145, 144, 143, 142, 141, 140, 139, 138, 137, 136, 135, 134, 133, 132, 131, 130,
    129, 128, 127, 126, 125, 124, 123, 122, 121, 120, 119, 118, 117, 116, 115, 114, 113, 112,
    111, 110, 109, 108, 107, 106, 105, 104, 103, 102, 101, 100, 99, 98, 97, 96, 95, 94, 93, 92,
    91, 90, 89, 88, 87, 86, 85, 84, 83, 82, 81, 80, 79, 78, 77, 76, 75, 74, 73, 72, 71, 70, 69,
    68, 67, 66, 65, 64, 63, 62, 61, 60, 59, 58, 57, 56, 55, 54, 53, 52, 51, 50, 49, 48, 47, 46,
    45, 44, 43, 42, 41, 40, 39, 38, 37, 36, 35, 34, 33, 32, 31, 30, 29, 28, 27, 26, 25, 24, 23,
    22, 21, 20, 19, 18, 17, 16, 15, 14, 13, 12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1, 0, 1, 2, 3,
    4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27,
    28, 29, 30, 31, 32, 33, 34, 35, 36, 37, 38, 39, 40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 50,
    51, 52, 53, 54, 55, 56, 57, 58, 59, 60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70, 71, 72, 73,
    74, 75, 76, 77, 78, 79, 80, 81, 82, 83, 84, 85, 86, 87, 88, 89, 90, 91, 92, 93, 94, 95, 96,
    97, 98, 99, 100, 101, 102, 103, 104, 105, 106, 107, 108, 109, 110, 111, 112, 113, 114, 115,
    116, 117, 118, 119, 120, 121, 122, 123, 124, 125, 126, 127, 128, 129, 130, 131, 132, 133,
    134, 135, 136, 137, 138, 139, 140, 141, 142, 143, 144, 145, 146, 147, 148, 149, 150, 151,
    152, 153, 154, 155, 156, 157, 158, 159, 160, 161, 162, 163, 164, 165, 166, 167, 168, 169,
    170, 171, 172, 173, 174, 175, 176, 177, 178, 179, 180, 181, 182, 183, 184, 185, 186, 187,
    188, 189, 190, 191, 192, 193, 194, 195, 196, 197, 198, 199, 200, 201, 202, 203, 204, 205,
    206, 207, 208, 209, 210, 211, 212, 213, 214, 215, 216, 217, 218, 219, 220, 221, 222, 223,
    224, 225, 226, 227, 228, 229, 230, 231, 232, 233, 234, 235, 236, 237, 238, 239, 240, 241,
    242, 243, 244, 245, 246, 247, 248, 249, 250, 251, 252, 253, 254, 255,
};

static void absolute_costs_of_six(const int8_t *point, const int8_t *b, uint8_t count,
                                  uint32_t *costs) {
  /* Where the magnitudes of the differences to the point's values lie, to be indexed by b's. */
  const uint8_t *from[6];
  for (uint8_t c = 0; c < 6; c++) from[c] = magnitude + 255 - point[c];
  do {
    uint32_t sum = from[0][*b++];
    sum += from[1][*b++];
    sum += from[2][*b++];
    sum += from[3][*b++];
    sum += from[4][*b++];
    sum += from[5][*b++];
    *costs++ = sum;
  } while (--count);
}

/* Six channels are the usual number and have a loop of their own. */
static void absolute_costs(const int8_t *point, const int8_t *b, uint8_t count, uint8_t channels,
                           uint32_t *costs) {
  if (channels == 6) {
    absolute_costs_of_six(point, b, count, costs);
    return;
  }
  for (; count > 0; count--) {
    uint32_t sum = 0;
    for (uint8_t c = 0; c < channels; c++) sum += magnitude[255 - point[c] + *b++];
    *costs++ = sum;
  }
}

#endif

static void squared_costs(const int8_t *point, const int8_t *b, uint8_t count, uint8_t channels,
                          uint32_t *costs) {
  for (; count > 0; count--) {
    uint32_t sum = 0;
    for (uint8_t c = 0; c < channels; c++) {
      int32_t difference = point[c] - MVW_READ_I8(b);
      b++;
      sum += (uint32_t)(difference * difference);
    }
    *costs++ = sum;
  }
}

void mvw_local_costs(const int8_t *point, const int8_t *b, uint8_t count, uint8_t channels,
                     uint8_t cost, uint32_t *costs) {
  if (cost == MVW_COST_SQUARED)
    squared_costs(point, b, count, channels, costs);
  else
    absolute_costs(point, b, count, channels, costs);
}
