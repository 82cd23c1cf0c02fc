/* Lines of figures for the measurement. */
#ifndef PROBE_TEXT_H
#define PROBE_TEXT_H

#include <stdint.h>

void put_text(const char *text);

/* The name as it is, two numbers with a space between, and a line end. */
void put_numbers(const char *name, uint32_t first, uint32_t second);

#endif
