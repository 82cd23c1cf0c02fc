/* What the measurement asks of a board. */
#ifndef PROBE_H
#define PROBE_H

#include <stdint.h>

void probe_start(void);
uint32_t probe_ticks(void);
uint32_t probe_elapsed(uint32_t from, uint32_t to);

/* The stack pointer in the caller. Inlined or not: what a call adds is below it. */
uint8_t *probe_stack(void);

#endif
