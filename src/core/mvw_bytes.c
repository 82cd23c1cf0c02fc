#include <stddef.h>

#include "mvw_impl.h"

/* Reads little-endian fields one after the other, so that neither the byte order nor the struct
 * layout of the machine matters. */
typedef struct reader {
  const uint8_t *bytes;
  uint32_t at;
} reader;

static uint8_t read_u8(reader *r) { return r->bytes[r->at++]; }

static uint16_t read_u16(reader *r) {
  uint16_t low = read_u8(r);
  return (uint16_t)(low | (uint16_t)read_u8(r) << 8);
}

static uint32_t read_u32(reader *r) {
  uint32_t low = read_u16(r);
  return low | (uint32_t)read_u16(r) << 16;
}

/* CRC-32 as in ZIP and PNG, bit by bit: a table would cost a kilobyte of flash. */
static uint32_t crc32(const uint8_t *bytes, uint32_t length) {
  uint32_t crc = 0xffffffffu;
  for (uint32_t i = 0; i < length; i++) {
    crc ^= bytes[i];
    for (uint8_t bit = 0; bit < 8; bit++) crc = crc >> 1 ^ (crc & 1u ? 0xedb88320u : 0u);
  }
  return ~crc;
}

static void read_segmenter(reader *r, mvw_segmenter *s) {
  s->accel_weight = read_u16(r);
  s->gyro_weight = read_u16(r);
  s->on_threshold = read_u32(r);
  s->off_threshold = read_u32(r);
  s->on_hold = read_u16(r);
  s->off_hold = read_u16(r);
  s->min_length = read_u16(r);
  s->max_length = read_u16(r);
  s->pre_roll = read_u16(r);
  s->refractory = read_u16(r);
  s->accel_lag = read_u8(r);
  s->smooth_shift = read_u8(r);
  s->rest_shift = read_u8(r);
}

static void read_normaliser(reader *r, mvw_normaliser *n) {
  n->length = read_u8(r);
  n->channel_mask = read_u16(r);
  n->centre_mask = read_u8(r);
  n->scale_mode = read_u8(r);
  for (uint8_t axis = 0; axis < MVW_AXES; axis++) n->gain[axis] = read_u8(r);
  n->gravity_gain = read_u8(r);
  n->floor[0] = read_u16(r);
  n->floor[1] = read_u16(r);
}

/* Magic, fixed fields; leaves the reader at the first gesture. */
static void read_fields(reader *r, mvw_model *model) {
  r->at = 6;
  model->flags = read_u16(r);
  model->board.rate_millihertz = read_u32(r);
  model->board.accel_ng_per_lsb = read_u32(r);
  model->board.gyro_ndps_per_lsb = read_u32(r);
  for (uint8_t axis = 0; axis < MVW_AXES; axis++) model->board.zero[axis] = 0;
  read_segmenter(r, &model->segmenter);
  read_normaliser(r, &model->normaliser);
  model->long_axis = read_u8(r);
  model->roll_min_percent = read_u8(r);
  model->band = read_u8(r);
  model->cost = read_u8(r);
  model->margin_percent = read_u8(r);
  model->gesture_count = read_u8(r);
  model->template_count = read_u16(r);
  model->kernel_features = read_u16(r);
  model->kernel_pools = read_u8(r);
  model->log_weight = read_u16(r);
}

#define FIXED_BYTES 76u
#define GESTURE_BYTES 8u
#define CRC_BYTES 4u

static uint32_t template_bytes(const mvw_model *model) {
  return (uint32_t)model->template_count * model->normaliser.length *
         mvw_bits_set(model->normaliser.channel_mask);
}

int mvw_model_read(mvw_model *model, mvw_gesture *gestures, uint16_t gesture_max,
                   const uint8_t *bytes, uint32_t length) {
  if (model == NULL || gestures == NULL || bytes == NULL) return MVW_E_ARGUMENT;
  if (length < FIXED_BYTES + CRC_BYTES || bytes[0] != 'M' || bytes[1] != 'V' || bytes[2] != 'W' ||
      bytes[3] != 'M')
    return MVW_E_BYTES;
  reader r = {bytes, 4};
  model->version = read_u16(&r);
  if (model->version != MVW_MODEL_VERSION) return MVW_E_VERSION;
  r.at = length - CRC_BYTES;
  if (read_u32(&r) != crc32(bytes, length - CRC_BYTES)) return MVW_E_BYTES;

  read_fields(&r, model);
  if (model->gesture_count > gesture_max) return MVW_E_ARGUMENT;
  if (length != FIXED_BYTES + GESTURE_BYTES * model->gesture_count + template_bytes(model) +
                    mvw_kernel_bytes(model) + CRC_BYTES)
    return MVW_E_BYTES;
  for (uint8_t gesture = 0; gesture < model->gesture_count; gesture++) {
    gestures[gesture].first_template = read_u16(&r);
    gestures[gesture].template_count = read_u16(&r);
    gestures[gesture].threshold = read_u32(&r);
  }
  model->gestures = gestures;
  model->templates = (const int8_t *)(bytes + r.at);
  model->kernel = model->kernel_features > 0 ? bytes + r.at + template_bytes(model) : NULL;
  return mvw_model_check(model);
}
