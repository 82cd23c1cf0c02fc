/* Shared by the files of the light; not for its users. */
#ifndef MVW_LIGHT_IMPL_H
#define MVW_LIGHT_IMPL_H

#include "mvw_light.h"

/* Copies a structure out of flash byte by byte, as 8-bit AVR needs it; elsewhere a plain copy. */
void mvw_light_copy(void *to, const void *from, uint8_t bytes);

#endif
