/*
 * The model: everything that training decides. Included by movewright.h.
 */
#ifndef MVW_MODEL_H
#define MVW_MODEL_H

#include <stdint.h>

/* Layout of mvw_model and of the model bytes. A model of another version is refused. */
#define MVW_MODEL_VERSION 2

/* Values in a sample. */
#define MVW_AXES 6

/* Values of a point that can be compared: the axes and what is levelled, see enum mvw_channel. */
#define MVW_CHANNELS 13

/* Limits, checked by mvw_model_check(). */
#define MVW_MAX_GESTURES 64   /* gestures in a model */
#define MVW_MAX_TEMPLATES 512 /* templates in a model */
#define MVW_MAX_LENGTH 128    /* points of a normalised segment */
#define MVW_MAX_SEGMENT 1023  /* samples of a segment */
#define MVW_MAX_FEATURES 4096 /* kernel features in a model */
#define MVW_POOLS 3       /* numbers that a kernel feature gives */

/* Bytes of a kernel feature without its weights. */
#define MVW_FEATURE_BYTES 6u

/*
 * Constant tables stay in flash. On 8-bit AVR that takes a section of its own and special loads;
 * everywhere else these are plain accesses. Tables given to the core must be declared MVW_FLASH.
 */
#if defined(__AVR__) && !defined(MVW_TABLES_IN_RAM)
#include <avr/pgmspace.h>
#define MVW_FLASH PROGMEM
#define MVW_READ_I8(address) ((int8_t)pgm_read_byte(address))
#define MVW_READ_U8(address) ((uint8_t)pgm_read_byte(address))
#define MVW_READ_U16(address) ((uint16_t)pgm_read_word(address))
#define MVW_READ_U32(address) ((uint32_t)pgm_read_dword(address))
#else
#define MVW_FLASH
#define MVW_READ_I8(address) (*(address))
#define MVW_READ_U8(address) (*(address))
#define MVW_READ_U16(address) (*(address))
#define MVW_READ_U32(address) (*(address))
#endif

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

/*
 * Bits of mvw_normaliser.channel_mask. Channels 0..5 are the axes of a sample. The others are
 * levelled: gravity is carried along through the movement by the gyroscope, so that what is up and
 * down, and how the board lies, is known while the hand moves.
 */
enum mvw_channel {
  MVW_CHANNEL_VERTICAL_ACCEL = 6,   /* acceleration along the vertical less 1 g, counts */
  MVW_CHANNEL_HORIZONTAL_ACCEL = 7, /* size of acceleration across the vertical, counts */
  MVW_CHANNEL_VERTICAL_TURN = 8,    /* rotation about the vertical, counts */
  MVW_CHANNEL_HORIZONTAL_TURN = 9,  /* size of rotation about horizontal axes, counts */
  MVW_CHANNEL_GRAVITY_X = 10,       /* direction that the accelerometer shows at rest, as a unit
                                       vector in the board's axes (after roll alignment) */
  MVW_CHANNEL_GRAVITY_Y = 11,
  MVW_CHANNEL_GRAVITY_Z = 12
};

/* How a segment is made comparable. Values are int8 after it. */
typedef struct mvw_normaliser {
  uint8_t length;             /* points a segment is resampled to; 4..MVW_MAX_LENGTH */
  uint16_t channel_mask;      /* bit i: channel i is compared (enum mvw_channel); at least one of
                                 the low 13 bits and no other */
  uint8_t centre_mask;        /* bit i: the mean of axis i is taken off */
  uint8_t scale_mode;         /* MVW_SCALE_...; levelled acceleration and rotation are scaled
                                 apart from the axes, by the same rule */
  uint8_t gain[MVW_AXES];     /* int8 value of one rms (MVW_SCALE_GROUP, _CHANNEL) or of one
                                 floor[] (MVW_SCALE_FIXED); 1..127, default 32. The ratio between
                                 axes is their weight in the distance. Levelled acceleration
                                 takes that of axis 0, levelled rotation that of axis 3. */
  uint8_t gravity_gain;       /* int8 value of 1 in the gravity channels; 1..127, default 32 */
  uint16_t floor[2];          /* counts, accelerometer and gyroscope: an rms below it is taken as
                                 this, so that noise is not blown up; >= 1 */
} mvw_normaliser;

enum mvw_scale_mode {
  MVW_SCALE_FIXED = 0,  /* divide by floor[]: amplitude is kept */
  MVW_SCALE_GROUP = 1,  /* divide by the common rms of the channels of a sensor */
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
  uint16_t template_count; /* templates in a row; >= 1, or 0 in a model without templates */
  uint32_t threshold;      /* largest distance that is still this gesture */
} mvw_gesture;

/*
 * Kernel features (after Dempster, Schmidt, Webb: MINIROCKET, KDD 2021). A feature adds up some
 * channels of the segment (or their differences from point to point), lays a kernel of nine taps
 * over every point, and counts where the result is above the feature's bias, in the first half of
 * the points, in the second, and as the longest run. Three taps weigh 2, six weigh -1, so that
 * additions are enough; taps outside the segment are 0.
 *
 * mvw_model.kernel holds, little-endian and without padding:
 *   gesture_count * int32  base of each gesture, -2^30..2^30
 *   for every feature:
 *     uint8   bits 0..6: number of the kernel, 0..83, the triples of heavy taps among 0..8 in
 *             lexicographic order (012, 013, ... 678); bit 7: differences
 *     uint8   dilation: points between taps; 1..length - 1
 *     uint16  bit i: the i-th channel of the segment is added
 *     int16   bias
 *     int8    weights: for each pool one for each gesture
 *
 * The distance of a gesture in a model with features is
 *   base - sum over features and pools of weight * count + log_weight * log2(template distance)
 * or 0 where that is negative, the last part only with templates. log2 is taken of the distance to
 * the gesture's nearest template plus one, on straight lines between powers of two, in 1/256.
 */
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
  uint16_t template_count;       /* 0..MVW_MAX_TEMPLATES; 0 only with kernel features */
  const mvw_gesture *gestures;   /* gesture_count entries, MVW_FLASH */
  const int8_t *templates;       /* template_count * length * channels, points in time order, the
                                    channels of a point side by side, MVW_FLASH; NULL when there
                                    are none */
  uint16_t kernel_features;      /* 0 (templates alone)..MVW_MAX_FEATURES */
  uint8_t kernel_pools;          /* numbers of a feature that have weights: 2 (counts in the first
                                    and the second half) or 3 (also the longest run); 0 without
                                    features */
  uint16_t log_weight;           /* what a doubled template distance adds to the distance; 0
                                    without templates or features */
  const uint8_t *kernel;         /* table of the kernel features, MVW_FLASH; NULL without */
} mvw_model;

#endif
