/* Semihosting: an operation and its argument for the emulator. */
#ifndef CORTEX_START_H
#define CORTEX_START_H

#include <stdint.h>

#define HOST_WRITE_TEXT 0x04u

void host_call(uint32_t operation, const void *argument);

#endif
