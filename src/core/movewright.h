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

#ifdef __cplusplus
extern "C" {
#endif

/* Layout of mvw_model and of the model bytes. A model of another version is refused. */
#define MVW_MODEL_VERSION 1

/* Values in a sample. */
#define MVW_AXES 6

/* Limits, checked by mvw_model_check(). */
#define MVW_MAX_GESTURES 64   /* gestures in a model */
#define MVW_MAX_TEMPLATES 512 /* templates in a model */
#define MVW_MAX_LENGTH 128    /* points of a normalised segment */
#define MVW_MAX_SEGMENT 1023  /* samples of a segment */

/* mvw_event.gesture and .runner_up when there is none. */
#define MVW_NO_GESTURE 255

/* mvw_event.distance and .runner_up_distance when there is none. */
#define MVW_NO_DISTANCE 0xffffffffu

/*
 * Constant tables stay in flash. On 8-bit AVR that takes a section of its own and special loads;
 * everywhere else these are plain accesses. Tables given to the core must be declared MVW_FLASH.
 */
#if defined(__AVR__) && !defined(MVW_TABLES_IN_RAM)
#include <avr/pgmspace.h>
#define MVW_FLASH PROGMEM
#define MVW_READ_I8(address) ((int8_t)pgm_read_byte(address))
#define MVW_READ_U16(address) ((uint16_t)pgm_read_word(address))
#define MVW_READ_U32(address) ((uint32_t)pgm_read_dword(address))
#else
#define MVW_FLASH
#define MVW_READ_I8(address) (*(address))
#define MVW_READ_U16(address) (*(address))
#define MVW_READ_U32(address) (*(address))
#endif

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

/* The sensor as it is set up. The model holds one, the firmware gives its own to mvw_init(). */
typedef struct mvw_board {
  uint32_t rate_millihertz;   /* output data rate, mHz; 1000..2000000. Compared within 5 %. */
  uint32_t accel_ng_per_lsb;  /* accelerometer sensitivity, 1e-9 g per count, as the data sheet
                                 gives it for the range in use; > 0. Compared within 1 %. */
  uint32_t gyro_ndps_per_lsb; /* gyroscope sensitivity, 1e-9 deg/s per count, from the data sheet
                                 for the range in use (never range / 32768); > 0. Within 1 %. */
  int16_t zero[MVW_AXES];     /* counts the sensor shows at zero input, subtracted from every
                                 sample with saturation; default 0. Only the board given to
                                 mvw_init() is used, the model's are ignored. */
} mvw_board;

/*
 * When does a movement start and end? Motion energy of a sample is
 *   (accel_weight * |a(n) - a(n - accel_lag)| + gyro_weight * |w(n)|) / 256
 * with |.| the sum over three axes of absolute counts, then smoothed by
 *   e += (energy - e) / 2^smooth_shift.
 * Lengths are in samples, energies in the unit of that formula.
 */
typedef struct mvw_segmenter {
  uint16_t accel_weight;  /* 0..1023; 0 leaves the accelerometer out */
  uint16_t gyro_weight;   /* 0..1023; 0 leaves the gyroscope out */
  uint32_t on_threshold;  /* a movement may start at or above; > 0 */
  uint32_t off_threshold; /* a movement ends below; > 0 and <= on_threshold (hysteresis) */
  uint16_t on_hold;       /* samples in a row at or above on_threshold to start; 1..64, and
                             on_hold + pre_roll < max_length */
  uint16_t off_hold;      /* samples in a row below off_threshold to end; 1..255. Adds this many
                             samples to the latency. */
  uint16_t min_length;    /* shorter segments are rejected as MVW_REASON_SHORT; 2..max_length */
  uint16_t max_length;    /* a segment that reaches it is rejected as MVW_REASON_LONG and the
                             segmenter waits for rest; 4..MVW_MAX_SEGMENT */
  uint16_t pre_roll;      /* samples before the first one at or above on_threshold that belong to
                             the segment; 0..255. Never reaches into the segment before. */
  uint16_t refractory;    /* samples after an end in which no movement starts; 0..65535 */
  uint8_t accel_lag;      /* samples between the two readings compared; 1..16 */
  uint8_t smooth_shift;   /* 0 (no smoothing)..6 */
  uint8_t rest_shift;     /* gravity at rest is averaged over about 2^rest_shift samples; 1..8 */
} mvw_segmenter;

/* How a segment is made comparable. Values are int8 after it. */
typedef struct mvw_normaliser {
  uint8_t length;             /* points a segment is resampled to; 4..MVW_MAX_LENGTH */
  uint8_t channel_mask;       /* bit i: axis i is compared; at least one bit of the low six */
  uint8_t centre_mask;        /* bit i: the mean of axis i is taken off */
  uint8_t scale_mode;         /* MVW_SCALE_... */
  uint8_t gain[MVW_AXES];     /* int8 value of one rms (MVW_SCALE_GROUP, _CHANNEL) or of one
                                 floor[] (MVW_SCALE_FIXED); 1..127, default 32. The ratio between
                                 axes is their weight in the distance. */
  uint16_t floor[2];          /* counts, accelerometer and gyroscope: an rms below it is taken as
                                 this, so that noise is not blown up; >= 1 */
} mvw_normaliser;

enum mvw_scale_mode {
  MVW_SCALE_FIXED = 0,  /* divide by floor[]: amplitude is kept */
  MVW_SCALE_GROUP = 1,  /* divide by the common rms of the three axes of a sensor */
  MVW_SCALE_CHANNEL = 2 /* divide each axis by its own rms */
};

/* Local cost of two points in the warping, summed over channels. */
enum mvw_cost { MVW_COST_ABSOLUTE = 0, MVW_COST_SQUARED = 1 };

/* mvw_model.flags */
#define MVW_FLAG_ROLL_ALIGN 1u /* turn samples about the long axis so that gravity before the
                                  movement lies along the first cross axis */
#define MVW_FLAG_BUTTON 2u     /* segments come from mvw_button() instead of motion energy */

/* Axis along the prop, for roll alignment. The cross axes are the next two in cyclic order. */
enum mvw_axis { MVW_AXIS_X = 0, MVW_AXIS_Y = 1, MVW_AXIS_Z = 2 };

typedef struct mvw_gesture {
  uint16_t first_template; /* index of its first template */
  uint16_t template_count; /* templates in a row; >= 1 */
  uint32_t threshold;      /* largest distance that is still this gesture */
} mvw_gesture;

typedef struct mvw_model {
  uint16_t version;              /* MVW_MODEL_VERSION */
  uint16_t flags;                /* MVW_FLAG_... */
  mvw_board board;               /* the sensor this model was trained for */
  mvw_segmenter segmenter;
  mvw_normaliser normaliser;
  uint8_t long_axis;             /* enum mvw_axis */
  uint8_t roll_min_percent;      /* roll counts as known when the part of gravity across the long
                                    axis is at least this share of all of it; 1..99. 26 leaves out
                                    15 degrees around the vertical (sin 15 = 0.26). */
  uint8_t band;                  /* half width of the warping window, points; 0..length - 1 */
  uint8_t cost;                  /* enum mvw_cost */
  uint8_t margin_percent;        /* reject when the runner-up is nearer than distance +
                                    distance / 100 * margin_percent; 0 (off)..200 */
  uint8_t gesture_count;         /* 1..MVW_MAX_GESTURES */
  uint16_t template_count;       /* 1..MVW_MAX_TEMPLATES */
  const mvw_gesture *gestures;   /* gesture_count entries, MVW_FLASH */
  const int8_t *templates;       /* template_count * length * channels, points in time order, the
                                    channels of a point side by side, MVW_FLASH */
} mvw_model;

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
  uint32_t distance;           /* to the nearest template of .gesture: sum of local costs */
  uint32_t threshold;          /* of .gesture */
  uint32_t runner_up_distance; /* to the nearest template of .runner_up */
} mvw_event;

/* Recogniser's state. All members are private. */
typedef struct mvw_state {
  const mvw_model *model;
  int16_t (*ring)[MVW_AXES];   /* last samples */
  int16_t *query;              /* scratch, then the normalised segment as int8 */
  uint32_t *row;               /* one row of the warping matrix */
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
 *   uint32_t row[length];                                                        */
typedef struct mvw_memory {
  int16_t (*ring)[MVW_AXES]; /* last samples */
  uint32_t ring_samples;     /* rows of ring */
  int16_t *query;            /* scratch for the normalised segment */
  uint32_t query_values;     /* entries of query */
  uint32_t *row;             /* one row of the warping matrix */
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
 * segment: that one also costs the normalisation, O(segment * channels), and the warping,
 * at most template_count * length * (2 * band + 1) * channels multiplications.
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

/* Distance of the last compared segment to one template (mvw_dtw with the model's settings).
 * Returns MVW_NO_DISTANCE when template_index is out of range. */
uint32_t mvw_template_distance(const mvw_state *state, uint16_t template_index);

/* Dependent dynamic time warping of two series of int8 points with steps (1,1), (1,0), (0,1), all
 * of weight one (Sakoe and Chiba, IEEE TASSP 26(1), 1978, without their slope weights).
 * a: a_length * channels values; b: b_length * channels values, b may lie in flash (MVW_FLASH).
 * channels: 1..6; lengths: 1..MVW_MAX_LENGTH.
 * band: cells with |i - j| > band are not used; when the lengths differ by more than band the end
 *   cannot be reached.
 * cost: enum mvw_cost.
 * limit: stop as soon as the result must be greater than it; MVW_NO_DISTANCE never stops.
 * row: scratch of b_length words.
 * Returns the sum of local costs along the best path, or MVW_NO_DISTANCE if there is none within
 * band and limit. The largest possible sum, 255 path points * 6 axes * 255 squared, is
 * 99,488,250 and fits. */
uint32_t mvw_dtw(const int8_t *a, uint16_t a_length, const int8_t *b, uint16_t b_length,
                 uint8_t channels, uint8_t band, uint8_t cost, uint32_t limit, uint32_t *row);

/* Reads a model from bytes (layout: FORMAT.md, "Model bytes"), for boards that keep models apart
 * from the program. The templates stay in the bytes, which must outlive the model.
 * gestures: room for gesture_max entries, filled in and pointed to by the model.
 * On AVR this needs MVW_TABLES_IN_RAM, as the tables read here are not in flash.
 * Returns MVW_OK, MVW_E_BYTES, MVW_E_VERSION, MVW_E_MODEL or MVW_E_ARGUMENT. */
int mvw_model_read(mvw_model *model, mvw_gesture *gestures, uint16_t gesture_max,
                   const uint8_t *bytes, uint32_t length);

#ifdef __cplusplus
}
#endif

#endif
