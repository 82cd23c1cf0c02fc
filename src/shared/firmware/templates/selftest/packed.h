/*
 * Vectors as bytes in flash. A sequence of records, each begun by one of these; a sample is six
 * differences to the one before (zeros at first), zigzag-coded (0, -1, 1, -2 as 0, 1, 2, 3) in
 * groups of seven bits, low ones first, with the eighth bit set where another follows.
 */
#ifndef PACKED_H
#define PACKED_H

#include "movewright.h"

#define PACKED_END 0u    /* of everything */
#define PACKED_VECTOR 1u /* name, zero: a vector begins */
#define PACKED_LINE 2u   /* text without line end, zero: a line that is not a sample */
#define PACKED_SAMPLE 3u /* six differences */
#define PACKED_AGAIN 4u  /* count, 1..255: the last sample that many times more */

extern const uint8_t packed_vectors[] MVW_FLASH;

#endif
