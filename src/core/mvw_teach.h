/*
 * Teaching on the prop: a few movements just made become a template, without training and without
 * the phone. Optional: firmware that does not call it does not have it, and the recogniser knows
 * nothing of it. C99, integers only, no heap: the caller owns all memory, as with movewright.h.
 *
 * Use:  mvw_teach_init() once after mvw_init(); give mvw_teach_event() every event of mvw_push()
 *       before acting on it; mvw_teach_begin() starts a session, which takes the next movements.
 *
 * A taught gesture is either one more, numbered behind those of the model, or takes the place of a
 * gesture of the model, whose own templates are then no longer compared. It has one template: the
 * taught segment that is nearest to the others.
 *
 * Only for models that compare with templates alone (mvw_model.kernel_features is 0).
 */
#ifndef MVW_TEACH_H
#define MVW_TEACH_H

#include "movewright.h"

#ifdef __cplusplus
extern "C" {
#endif

#define MVW_TEACH_LEAST_TAKES 2 /* movements of a session */
#define MVW_TEACH_MOST_TAKES 5
#define MVW_TEACH_MAX_SLOTS 16

/* For mvw_teach_begin(): one gesture more. */
#define MVW_TEACH_NEW 254

/* What mvw_teach_begin() and mvw_teach_event() return besides enum mvw_status. */
enum mvw_teach_status {
  MVW_TEACH_MORE = 2,      /* the movement was taken; make it again */
  MVW_TEACH_DONE = 3,      /* it was the last one; the gesture is known from now on */
  MVW_TEACH_E_CUT = -16,   /* too short or too long to be compared; not taken, make it again */
  MVW_TEACH_E_UNLIKE = -17, /* the movements differ more than any gesture of the model may; the
                               session is over and nothing was changed */
  MVW_TEACH_E_NEAR = -18,  /* another gesture is about as near as these movements are to each other;
                              over, nothing changed; .nearest says which */
  MVW_TEACH_E_FULL = -19,  /* no slot is free: forget one first */
  MVW_TEACH_E_MODEL = -20  /* the model has kernel features */
};

/* A slot. One of only noughts is empty. With its template it may be kept in flash or EEPROM and given
 * back to mvw_teach_init() of the same model. */
typedef struct mvw_taught {
  uint8_t gesture;    /* number in events: below gesture_count it takes that one's place */
  uint8_t takes;      /* movements it was taught with; 0: empty */
  uint32_t threshold; /* largest distance that is still this gesture */
} mvw_taught;

/* Buffers, owned by the caller; they must outlive the session or all slots. values is length *
 * channels, as in mvw_memory. */
typedef struct mvw_teach_memory {
  mvw_taught *slots;   /* slot_count entries */
  int8_t *templates;   /* slot_count * values, slot by slot */
  int8_t *segments;    /* takes * values; free for other use between sessions */
  uint8_t slot_count;  /* 1..MVW_TEACH_MAX_SLOTS */
  uint8_t takes;       /* of a session; MVW_TEACH_LEAST_TAKES..MVW_TEACH_MOST_TAKES; 3 is usual */
} mvw_teach_memory;

/* A session is open while .gesture is not MVW_NO_GESTURE. */
typedef struct mvw_teach {
  mvw_teach_memory memory;
  uint8_t gesture;           /* being taught, or MVW_NO_GESTURE */
  uint8_t count;             /* movements the session has taken */
  uint8_t nearest;           /* nearest other gesture to any of them, or MVW_NO_GESTURE */
  uint32_t nearest_distance; /* of it, or MVW_NO_DISTANCE */
  uint32_t spread;           /* from the chosen segment to the farthest other; after the last take */
  uint32_t threshold;        /* learned; after the last take, also when it was refused as NEAR */
} mvw_teach;

/* Looks through the slots and empties those that cannot be: of a gesture that another slot has, or
 * beyond the numbers there are.
 * Returns MVW_OK, MVW_E_ARGUMENT or MVW_TEACH_E_MODEL. */
int mvw_teach_init(mvw_teach *teach, const mvw_state *state, const mvw_teach_memory *memory);

/* Opens a session; one that is open is dropped.
 * gesture: one of the model's or of those taught, to take its place, or MVW_TEACH_NEW.
 * Returns the gesture's number (0 or greater), MVW_E_ARGUMENT or MVW_TEACH_E_FULL. */
int mvw_teach_begin(mvw_teach *teach, const mvw_state *state, uint8_t gesture);

/* Ends a session without a change. */
void mvw_teach_cancel(mvw_teach *teach);

/* Empties the slot of a gesture; a gesture of the model is then the model's again. Returns MVW_OK, or
 * MVW_E_ARGUMENT when it was not taught. */
int mvw_teach_forget(mvw_teach *teach, uint8_t gesture);

/* Takes an event of mvw_push() or mvw_classify() of this state, right after it came.
 * In a session: takes the segment; returns MVW_TEACH_MORE, _DONE, _E_CUT, _E_UNLIKE or _E_NEAR and
 * leaves the event as it is: it says what the model makes of the movement that is being taught. The work is that of a decision, and at the last take a distance for each
 * two segments.
 * Otherwise: puts what was taught into the event, as if the model had held it, and returns MVW_EVENT.
 * The work is a distance for each slot, and once more that of a decision where the event names a
 * gesture whose place was taken. */
int mvw_teach_event(mvw_teach *teach, const mvw_state *state, mvw_event *event);

#ifdef __cplusplus
}
#endif

#endif
