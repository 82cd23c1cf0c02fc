/*
 * Movewright core: finds movements in a stream of six-axis inertial samples and names them.
 *
 * C99, integers only, no heap, no globals: the caller owns all memory. The same files run on the
 * phone (compiled to WebAssembly) and on the board, so both give the same answers to the bit.
 *
 * Use:  mvw_init() once, mvw_push() for every sample, act on the event when it returns MVW_EVENT.
 *
 * Sample: six int16 counts in the order accelerometer x y z, gyroscope x y z, in the board's axes,
 * as the sensor gives them at the sensitivities named in the model's mvw_board.
 *
 * All functions return MVW_OK (0) or a positive value on success and a negative mvw_status on
 * failure, unless their comment says otherwise. None of them blocks; the work of each is bounded
 * by the numbers in the model (see mvw_push).
 */
#ifndef MOVEWRIGHT_H
#define MOVEWRIGHT_H

#include <stdint.h>

#include "mvw_model.h"

#ifdef __cplusplus
extern "C" {
#endif

/* mvw_event.gesture and .runner_up when there is none. */
#define MVW_NO_GESTURE 255

/* mvw_event.distance and .runner_up_distance when there is none. */
#define MVW_NO_DISTANCE 0xffffffffu

enum mvw_status {
  MVW_OK = 0,           /* done, nothing to report */
  MVW_EVENT = 1,        /* done, the event was filled in */
  MVW_E_ARGUMENT = -1,  /* a pointer is null or a count is out of range */
  MVW_E_VERSION = -2,   /* the model was made for another version of the core */
  MVW_E_RATE = -3,      /* the board's output data rate is more than 5 % off the model's */
  MVW_E_RANGE = -4,     /* a sensitivity of the board is more than 1 % off the model's */
  MVW_E_MODEL = -5,     /* a field of the model is out of its range */
  MVW_E_MEMORY = -6,    /* a buffer is smaller than mvw_memory_sizes() says */
  MVW_E_BYTES = -7      /* model bytes are cut short, too long or damaged */
};

enum mvw_event_kind { MVW_KIND_GESTURE = 1, MVW_KIND_REJECT = 2 };

/* Why a segment was rejected. */
enum mvw_reason {
  MVW_REASON_NONE = 0,      /* not rejected */
  MVW_REASON_FAR = 1,       /* nearest gesture is farther than its threshold */
  MVW_REASON_AMBIGUOUS = 2, /* runner-up is too near (margin_percent) */
  MVW_REASON_SHORT = 3,     /* shorter than min_length; not compared */
  MVW_REASON_LONG = 4       /* reached max_length; not compared */
};

/* What became of the roll alignment. */
enum mvw_roll {
  MVW_ROLL_OFF = 0,      /* the model does not ask for it */
  MVW_ROLL_ALIGNED = 1,  /* turned */
  MVW_ROLL_VERTICAL = 2, /* left as it was: long axis too near the vertical to know roll */
  MVW_ROLL_NO_REST = 3   /* left as it was: no rest was seen before the movement */
};

typedef struct mvw_event {
  uint8_t kind;                /* enum mvw_event_kind */
  uint8_t reason;              /* enum mvw_reason */
  uint8_t roll;                /* enum mvw_roll */
  uint8_t gesture;             /* nearest gesture, also when rejected as FAR or AMBIGUOUS, else
                                  MVW_NO_GESTURE */
  uint8_t runner_up;           /* nearest other gesture or MVW_NO_GESTURE */
  uint32_t start;              /* first sample of the segment, counted from the last reset */
  uint32_t end;                /* one past its last sample */
  uint32_t distance;           /* of .gesture: sum of local costs to its nearest template, or with
                                  kernel features the sum in mvw_model.h; smaller is nearer */
  uint32_t threshold;          /* of .gesture */
  uint32_t runner_up_distance; /* the same of .runner_up */
} mvw_event;

/* Recogniser's state. All members are private. */
typedef struct mvw_state {
  const mvw_model *model;
  int16_t (*ring)[MVW_AXES];   /* last samples */
  int16_t *query;              /* scratch, then the normalised segment as int8 */
  uint32_t *row;               /* one row of the warping matrix, then a score a gesture */
  int16_t zero[MVW_AXES];      /* of the board */
  uint32_t clock;              /* samples since reset */
  uint32_t start;              /* first sample of the open segment; while idle, the first sample
                                  that belongs to no segment yet */
  uint32_t last_moving;        /* last sample at or above off_threshold */
  uint32_t energy;             /* smoothed motion energy */
  int32_t rest[3];             /* running mean of the accelerometer at rest, counts * 256 */
  int16_t gravity[3];          /* rest[] as it was when the open segment started, counts */
  uint16_t rest_count;         /* samples in rest[], saturating */
  uint16_t ring_size;
  uint16_t ring_next;
  uint16_t hold;               /* samples in a row at or above on / below off threshold */
  uint16_t wait;               /* samples of refractory time left */
  uint8_t phase;               /* enum mvw_phase */
  uint8_t channels;            /* bits set in channel_mask */
  uint8_t pressed;             /* button */
  uint8_t gravity_known;       /* gravity[] is valid */
  uint8_t turn_shift;          /* angle of a count in a sample: turn / 2^turn_shift, rad * 2^14 */
  uint16_t turn;
  uint16_t one_g;              /* counts */
} mvw_state;

enum mvw_phase {
  MVW_PHASE_IDLE = 0,     /* waiting for a movement */
  MVW_PHASE_MOVING = 1,   /* inside a segment */
  MVW_PHASE_WAIT_REST = 2 /* a segment was too long; waiting for rest */
};

/* Samples the ring must hold: the longest segment, the samples after it that end it, and those
 * before it that the energy looks back to. */
#define MVW_RING_SAMPLES(max_length, off_hold, accel_lag) \
  ((max_length) + (off_hold) + (accel_lag) + 1)

/* Buffers of one recogniser, owned by the caller; they must outlive the state. Sizes as constants:
 *   int16_t ring[MVW_RING_SAMPLES(max_length, off_hold, accel_lag)][MVW_AXES];
 *   int16_t query[length * channels];   channels: bits set in channel_mask
 *   uint32_t row[length + (kernel_features > 0 ? gesture_count : 0)];             */
typedef struct mvw_memory {
  int16_t (*ring)[MVW_AXES]; /* last samples */
  uint32_t ring_samples;     /* rows of ring */
  int16_t *query;            /* scratch for the normalised segment */
  uint32_t query_values;     /* entries of query */
  uint32_t *row;             /* one row of the warping matrix, then a score a gesture */
  uint32_t row_values;       /* entries of row */
} mvw_memory;

/* Checks every field of a model against its range and the tables against each other.
 * Returns MVW_OK, MVW_E_VERSION or MVW_E_MODEL. */
int mvw_model_check(const mvw_model *model);

/* Sizes that mvw_init() asks for a valid model: fills in ring_samples, query_values and row_values
 * and leaves the pointers alone. */
void mvw_memory_sizes(const mvw_model *model, mvw_memory *memory);

/* Makes a recogniser ready. The model, its tables and the buffers must outlive the state; *memory
 * itself need not.
 * board: the sensor as it is really set up, or NULL to trust the model's.
 * memory: buffers at least as large as mvw_memory_sizes() says; larger ones change nothing.
 * Returns MVW_OK or a negative status; on failure the state must not be used. */
int mvw_init(mvw_state *state, const mvw_model *model, const mvw_board *board,
             const mvw_memory *memory);

/* Forgets all samples and the button, as after mvw_init(). */
void mvw_reset(mvw_state *state);

/* Takes the next sample. Work is a few hundred operations, except for the sample that ends a
 * segment: that one also costs the normalisation, O(segment * channels), the kernels, about
 * kernel_features * length * 20 additions, and the warping, at most
 * template_count * length * (2 * band + 1) * channels subtractions or multiplications.
 * event: filled in when the result is MVW_EVENT.
 * Returns MVW_OK, MVW_EVENT or MVW_E_ARGUMENT. */
int mvw_push(mvw_state *state, const int16_t sample[MVW_AXES], mvw_event *event);

/* Says whether the button is pressed; counts from the next sample on. Only models with
 * MVW_FLAG_BUTTON look at it. Returns MVW_OK or MVW_E_ARGUMENT. */
int mvw_button(mvw_state *state, int pressed);

/* Names one segment that is already cut. Does not touch the stream's state except the query.
 * samples: count rows; count 2..MVW_MAX_SEGMENT. zero[] of the board is not subtracted.
 * gravity: accelerometer counts at rest before the movement, or NULL when not known.
 * event: always filled in; start is 0 and end is count.
 * Returns MVW_EVENT or MVW_E_ARGUMENT. */
int mvw_classify(mvw_state *state, const int16_t (*samples)[MVW_AXES], uint16_t count,
                 const int16_t *gravity, mvw_event *event);

/* The last compared segment after normalisation: length * channels values in template order.
 * Valid until the next segment ends. */
const int8_t *mvw_query(const mvw_state *state);

/* Counts of one kernel feature over the last compared segment: first half, second half, longest
 * run. For training; record: MVW_FEATURE_BYTES as in mvw_model.kernel, in flash. Uses the row. */
void mvw_kernel_counts(mvw_state *state, const uint8_t record[MVW_FEATURE_BYTES],
                       uint8_t counts[MVW_POOLS]);

/* Output of one kernel feature at every point of the last compared segment, before the bias: length
 * values, as two's complement. For training; the result lies in out, which must not be the row. */
void mvw_kernel_outputs(mvw_state *state, const uint8_t record[MVW_FEATURE_BYTES], int32_t *out);

/* Distance of the last compared segment to one template (mvw_dtw with the model's settings).
 * Returns MVW_NO_DISTANCE when template_index is out of range. */
uint32_t mvw_template_distance(const mvw_state *state, uint16_t template_index);

/* Dependent dynamic time warping of two series of int8 points with steps (1,1), (1,0), (0,1), all
 * of weight one (Sakoe and Chiba, IEEE TASSP 26(1), 1978, without their slope weights).
 * a: a_length * channels values; b: b_length * channels values, b may lie in flash (MVW_FLASH).
 * channels: 1..MVW_CHANNELS; lengths: 1..MVW_MAX_LENGTH.
 * band: cells with |i - j| > band are not used; when the lengths differ by more than band the end
 *   cannot be reached.
 * cost: enum mvw_cost.
 * limit: stop as soon as the result must be greater than it; MVW_NO_DISTANCE never stops.
 * row: scratch of b_length words.
 * Returns the sum of local costs along the best path, or MVW_NO_DISTANCE if there is none within
 * band and limit. The largest possible sum, 255 path points * 13 channels * 255 squared, is
 * 215,557,875 and fits. */
uint32_t mvw_dtw(const int8_t *a, uint16_t a_length, const int8_t *b, uint16_t b_length,
                 uint8_t channels, uint8_t band, uint8_t cost, uint32_t limit, uint32_t *row);

/* Reads a model from bytes (layout: FORMAT.md, "Model bytes"), for boards that keep models apart
 * from the program. Templates and kernel features stay in the bytes, which must outlive the model.
 * gestures: room for gesture_max entries, filled in and pointed to by the model.
 * On AVR this needs MVW_TABLES_IN_RAM, as the tables read here are not in flash.
 * Returns MVW_OK, MVW_E_BYTES, MVW_E_VERSION, MVW_E_MODEL or MVW_E_ARGUMENT. */
int mvw_model_read(mvw_model *model, mvw_gesture *gestures, uint16_t gesture_max,
                   const uint8_t *bytes, uint32_t length);

#ifdef __cplusplus
}
#endif

#endif
