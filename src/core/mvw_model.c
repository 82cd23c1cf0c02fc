#include <stddef.h>

#include "mvw_impl.h"

static int within(uint32_t value, uint32_t least, uint32_t most) {
  return value >= least && value <= most;
}

static int board_valid(const mvw_board *board) {
  return within(board->rate_millihertz, 1000, 2000000) && board->accel_ng_per_lsb > 0 &&
         board->gyro_ndps_per_lsb > 0;
}

static int segmenter_valid(const mvw_segmenter *s) {
  return s->accel_weight <= 1023 && s->gyro_weight <= 1023 && s->off_threshold > 0 &&
         s->off_threshold <= s->on_threshold && within(s->on_hold, 1, 64) &&
         within(s->off_hold, 1, 255) && within(s->max_length, 4, MVW_MAX_SEGMENT) &&
         within(s->min_length, 2, s->max_length) && s->pre_roll <= 255 &&
         (uint32_t)s->on_hold + s->pre_roll < s->max_length && within(s->accel_lag, 1, 16) &&
         s->smooth_shift <= 6 && within(s->rest_shift, 1, 8);
}

static int normaliser_valid(const mvw_normaliser *n) {
  for (uint8_t axis = 0; axis < MVW_AXES; axis++)
    if (!within(n->gain[axis], 1, 127)) return 0;
  return within(n->length, 4, MVW_MAX_LENGTH) && within(n->channel_mask, 1, (1u << MVW_CHANNELS) - 1u) &&
         within(n->gravity_gain, 1, 127) && n->centre_mask <= 63 && n->scale_mode <= MVW_SCALE_CHANNEL && n->floor[0] > 0 &&
         n->floor[1] > 0;
}

/* Gestures must take the templates in order and leave none over. */
static int gestures_valid(const mvw_model *model) {
  uint32_t next = 0;
  for (uint8_t gesture = 0; gesture < model->gesture_count; gesture++) {
    uint16_t count = MVW_READ_U16(&model->gestures[gesture].template_count);
    if (MVW_READ_U16(&model->gestures[gesture].first_template) != next) return 0;
    if ((count == 0) != (model->template_count == 0)) return 0;
    next += count;
  }
  return next == model->template_count;
}

static int kernel_fields_valid(const mvw_model *model) {
  if (model->kernel_features == 0)
    return model->template_count > 0 && model->kernel_pools == 0 && model->log_weight == 0;
  return model->kernel_features <= MVW_MAX_FEATURES && model->kernel != NULL &&
         within(model->kernel_pools, 2, MVW_POOLS) &&
         (model->template_count > 0 || model->log_weight == 0);
}

int mvw_model_check(const mvw_model *model) {
  if (model == NULL) return MVW_E_MODEL;
  if (model->version != MVW_MODEL_VERSION) return MVW_E_VERSION;
  if ((model->flags & ~(MVW_FLAG_ROLL_ALIGN | MVW_FLAG_BUTTON)) != 0) return MVW_E_MODEL;
  if (!board_valid(&model->board) || !segmenter_valid(&model->segmenter) ||
      !normaliser_valid(&model->normaliser))
    return MVW_E_MODEL;
  if (model->long_axis > MVW_AXIS_Z || !within(model->roll_min_percent, 1, 99) ||
      model->band >= model->normaliser.length || model->cost > MVW_COST_SQUARED ||
      model->margin_percent > 200)
    return MVW_E_MODEL;
  if (!within(model->gesture_count, 1, MVW_MAX_GESTURES) ||
      model->template_count > MVW_MAX_TEMPLATES || model->gestures == NULL ||
      (model->templates == NULL && model->template_count > 0) || !kernel_fields_valid(model))
    return MVW_E_MODEL;
  if (!mvw_kernel_valid(model, mvw_bits_set(model->normaliser.channel_mask))) return MVW_E_MODEL;
  return gestures_valid(model) ? MVW_OK : MVW_E_MODEL;
}
