/*
 * Where models that came as bytes are kept: two halves of one size, so that the running model stays
 * while the next is written. Write these functions for your flash, a whole number of pages a half;
 * store_ram.c has them for RAM, which forgets.
 */
#ifndef STORE_H
#define STORE_H

#include <stdint.h>

/* Bytes of a half. The model bytes take eight less. */
uint32_t store_size(void);

/* Where a half (0 or 1) can be read. On AVR this must be RAM. */
const uint8_t *store_half(uint8_t half);

/* Makes a half ready to be written: all bytes 0xff. Returns 1, or 0 when it cannot. */
int store_erase(uint8_t half);

/* Writes bytes to a half that was erased, each place once. Returns 1, or 0 when it cannot. */
int store_write(uint8_t half, uint32_t at, const uint8_t *bytes, uint8_t count);

#endif
