#include "rate.h"

/* Once at start-up, so a division of 64 bits does no harm. */
uint32_t rate_millihertz(uint32_t samples, uint32_t elapsed_us) {
  if (elapsed_us == 0 || samples > elapsed_us) return 0;
  return (uint32_t)((uint64_t)samples * 1000000000u / elapsed_us);
}
