/* Proof that this build of the light computes what the phone showed. */
#ifndef LIGHT_VECTOR_H
#define LIGHT_VECTOR_H

#include <stdint.h>

/* Asks for each effect of light_table in turn and hashes every duty (FNV-1a, 32 bits). Takes no time
 * but that of computing; equal to LIGHT_VECTOR of effect_table.h when all is well. */
uint32_t light_vector(void);

#endif
