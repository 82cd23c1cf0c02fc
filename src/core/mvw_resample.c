#include "mvw_impl.h"

/* The channels of the model, read row by row: what is levelled depends on the rows before. */
typedef struct channel_reader {
  const mvw_state *state;
  const mvw_view *view;
  mvw_level level;
  uint8_t levelled; /* whether any channel asks for it */
} channel_reader;

static void read_row(channel_reader *reader, uint16_t row, int16_t values[MVW_CHANNELS]) {
  uint16_t mask = reader->state->model->normaliser.channel_mask;
  int16_t all[MVW_CHANNELS];
  uint8_t channel = 0;
  for (uint8_t axis = 0; axis < MVW_AXES; axis++)
    if (reader->levelled || ((uint32_t)mask >> axis & 1u))
      all[axis] = mvw_saturate16(mvw_view_get(reader->view, row, axis));
  if (reader->levelled) mvw_level_row(&reader->level, reader->state, all, all + MVW_AXES);
  for (uint8_t id = 0; id < MVW_CHANNELS; id++)
    if ((uint32_t)mask >> id & 1u) values[channel++] = all[id];
}

/* Point k is the mean over the k-th of length equal parts of the segment. In units of 1 / length of
 * a sample, part k covers [k * count, (k + 1) * count) and row i [i * length, (i + 1) * length).
 * Keeps content above the new rate from folding down. */
static void part_means(channel_reader *reader) {
  uint8_t channels = reader->state->channels;
  uint16_t length = reader->state->model->normaliser.length;
  uint16_t count = reader->view->count;
  int16_t *point = reader->state->query;
  int16_t values[MVW_CHANNELS];
  int32_t sums[MVW_CHANNELS] = {0};
  uint32_t at = 0;
  uint32_t part_end = count;
  for (uint16_t row = 0; row < count; row++) {
    uint32_t row_end = ((uint32_t)row + 1u) * length;
    read_row(reader, row, values);
    while (at < row_end) {
      uint32_t to = row_end < part_end ? row_end : part_end;
      for (uint8_t c = 0; c < channels; c++) sums[c] += values[c] * (int32_t)(to - at);
      at = to;
      if (at < part_end) continue;
      part_end += count;
      for (uint8_t c = 0; c < channels; c++) {
        *point++ = mvw_saturate16(mvw_divide_round(sums[c], count));
        sums[c] = 0;
      }
    }
  }
}

/* Points spread evenly from the first row to the last, on straight lines between rows. */
static void between_rows(channel_reader *reader) {
  uint8_t channels = reader->state->channels;
  uint16_t steps = (uint16_t)(reader->state->model->normaliser.length - 1);
  uint16_t count = reader->view->count;
  int16_t *point = reader->state->query;
  int16_t before[MVW_CHANNELS];
  int16_t after[MVW_CHANNELS];
  uint32_t at = 0; /* of the next point, in 1 / steps of a row */
  read_row(reader, 0, before);
  for (uint16_t row = 1; row < count; row++) {
    uint32_t row_at = (uint32_t)row * steps;
    read_row(reader, row, after);
    for (; at < row_at || (row + 1u == count && at == row_at); at += count - 1u) {
      int32_t left = (int32_t)(row_at - at);
      for (uint8_t c = 0; c < channels; c++)
        *point++ = mvw_saturate16(
            mvw_divide_round(before[c] * left + after[c] * (steps - left), steps));
    }
    for (uint8_t c = 0; c < channels; c++) before[c] = after[c];
  }
}

void mvw_resample(mvw_state *state, const mvw_view *view) {
  channel_reader reader;
  reader.state = state;
  reader.view = view;
  reader.levelled = state->model->normaliser.channel_mask >> MVW_AXES != 0;
  if (reader.levelled) mvw_level_start(&reader.level, view);
  if (view->count > state->model->normaliser.length)
    part_means(&reader);
  else
    between_rows(&reader);
}
