/* store.h in RAM: for a desk, and for boards that get their model at every start. */
#include "store.h"

#include "model.h"

/* The model of this export and a kilobyte more. */
#ifndef STORE_HALF_BYTES
#define STORE_HALF_BYTES (MODEL_BYTES + 1024u)
#endif

static uint8_t halves[2][STORE_HALF_BYTES];

uint32_t store_size(void) { return STORE_HALF_BYTES; }

const uint8_t *store_half(uint8_t half) { return halves[half]; }

int store_erase(uint8_t half) {
  for (uint32_t i = 0; i < STORE_HALF_BYTES; i++) halves[half][i] = 0xffu;
  return 1;
}

int store_write(uint8_t half, uint32_t at, const uint8_t *bytes, uint8_t count) {
  if (at > STORE_HALF_BYTES || count > STORE_HALF_BYTES - at) return 0;
  for (uint8_t i = 0; i < count; i++) halves[half][at + i] = bytes[i];
  return 1;
}
