#include "mvw_impl.h"

/* The usual mask: accelerometer and gyroscope as they are. */
#define ALL_AXES 0x3fu

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
  if (mask == ALL_AXES) {
    mvw_view_row(reader->view, row, values);
    return;
  }
  mvw_view_row(reader->view, row, all);
  if (reader->levelled) mvw_level_row(&reader->level, reader->state, all, all + MVW_AXES);
  for (uint8_t id = 0; mask != 0; id++, mask >>= 1)
    if (mask & 1u) *values++ = all[id];
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
  int32_t whole[MVW_CHANNELS] = {0};  /* of rows that lie within the part */
  int32_t shares[MVW_CHANNELS] = {0}; /* of those that lie across its ends */
  uint16_t missing = count;           /* of the part */
  for (uint16_t row = 0; row < count; row++) {
    read_row(reader, row, values);
    if (length < missing) {
      for (uint8_t c = 0; c < channels; c++) whole[c] += values[c];
      missing = (uint16_t)(missing - length);
      continue;
    }
    uint16_t over = (uint16_t)(length - missing);
    for (uint8_t c = 0; c < channels; c++) {
      int32_t sum = shares[c] + whole[c] * (int32_t)length + values[c] * (int32_t)missing;
      *point++ = mvw_saturate16(mvw_divide_round(sum, count));
      whole[c] = 0;
      shares[c] = values[c] * (int32_t)over;
    }
    missing = (uint16_t)(count - over);
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
