/* Shared by the files of teaching; not for its users. */
#ifndef MVW_TEACH_IMPL_H
#define MVW_TEACH_IMPL_H

#include "mvw_impl.h"
#include "mvw_teach.h"

/* mvw_teach_dtw.c: distance as mvw_dtw() under the model's settings, both series in RAM. */
uint32_t mvw_taught_distance(const mvw_state *state, const int8_t *a, const int8_t *b,
                             uint32_t limit);

/* mvw_teach_match.c */
/* Values of a template. */
uint16_t mvw_taught_values(const mvw_state *state);
/* Slot of a gesture, or memory.slot_count. */
uint8_t mvw_taught_slot(const mvw_teach *teach, uint8_t gesture);
/* Number of the first gesture that is not the model's and not below it: one past those there may be. */
uint8_t mvw_taught_end(const mvw_teach *teach, const mvw_state *state);
/* Distance of the last compared segment to a gesture as it is now, or MVW_NO_DISTANCE when it has no
 * template or is not below bound. */
uint32_t mvw_taught_gesture(const mvw_teach *teach, const mvw_state *state, uint8_t gesture,
                            uint32_t bound);
/* Puts what was taught into an event. */
void mvw_taught_match(const mvw_teach *teach, const mvw_state *state, mvw_event *event);

#endif
