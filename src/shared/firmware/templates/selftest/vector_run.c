#include "vector_run.h"

#include <stddef.h>

static int16_t ring[MODEL_RING_SAMPLES][MVW_AXES];
static int16_t query[MODEL_QUERY_VALUES];
static uint32_t row[MODEL_ROW_VALUES];

void vector_begin(vector_run *run, vector_say say) {
  static const mvw_board board = MODEL_BOARD;
  static const mvw_memory memory = {ring, MODEL_RING_SAMPLES, query, MODEL_QUERY_VALUES,
                                    row,  MODEL_ROW_VALUES};
  run->say = say;
  run->started = 0;
  run->ready = 0;
  run->samples = 0;
  run->model = model;
  run->board = board;
  run->memory = memory;
  run->teaching = 0;
  run->byte_count = 0;
}

static void start(vector_run *run) {
  char line[EVENT_LOG_LINE];
  int status;
  if (run->started) return;
  status = mvw_init(&run->state, &run->model, &run->board, &run->memory);
  run->started = 1;
  run->ready = status == MVW_OK;
  event_log_status(line, "init", status);
  run->say(line);
}

void vector_sample(vector_run *run, const int16_t sample[MVW_AXES]) {
  mvw_event event;
  char line[EVENT_LOG_LINE];
  start(run);
  if (!run->ready) return;
  run->samples++;
  if (mvw_push(&run->state, sample, &event) != MVW_EVENT) return;
  if (run->teaching) {
    vector_teach_event(run, &event);
    return;
  }
  event_log_event(line, &event);
  run->say(line);
}

void vector_end(vector_run *run) {
  char line[EVENT_LOG_LINE];
  start(run);
  event_log_end(line, run->samples);
  run->say(line);
}

/* What follows the word that the line begins with, or NULL when it begins otherwise. */
static const char *after(const char *line, const char *word) {
  while (*word != '\0')
    if (*line++ != *word++) return NULL;
  return *line == ' ' || *line == '\n' || *line == '\r' || *line == '\0' ? line : NULL;
}

/* Reads `count` integers and nothing else; negative ones wrap as in C. */
static int numbers(const char *text, uint32_t *values, uint8_t count) {
  for (uint8_t i = 0; i < count; i++) {
    int negative = 0;
    while (*text == ' ') text++;
    if (*text == '-') {
      negative = 1;
      text++;
    }
    if (*text < '0' || *text > '9') return 0;
    values[i] = 0;
    while (*text >= '0' && *text <= '9') values[i] = values[i] * 10u + (uint32_t)(*text++ - '0');
    if (negative) values[i] = 0u - values[i];
  }
  return *text == '\n' || *text == '\r' || *text == '\0';
}

static int nibble(char digit) {
  if (digit >= '0' && digit <= '9') return digit - '0';
  return digit >= 'a' && digit <= 'f' ? digit - 'a' + 10 : -1;
}

/* Appends hexadecimal bytes to the model bytes. */
static int take_bytes(vector_run *run, const char *text) {
  while (*text == ' ') text++;
  while (nibble(*text) >= 0) {
    int high = nibble(*text++);
    int low = nibble(*text);
    if (low < 0 || run->byte_count == VECTOR_BYTES) return 0;
    text++;
    run->bytes[run->byte_count++] = (uint8_t)(high * 16 + low);
  }
  return *text == '\n' || *text == '\r' || *text == '\0';
}

/* Reads the model bytes so far, says the status and forgets them. */
static int read_bytes(vector_run *run) {
  mvw_model read;
  mvw_gesture gestures[1];
  char line[EVENT_LOG_LINE];
  event_log_status(line, "read", mvw_model_read(&read, gestures, 1, run->bytes, run->byte_count));
  run->say(line);
  run->byte_count = 0;
  return 1;
}

/* Lines that change what mvw_init() is given: 1 taken, 0 not understood, -1 of another kind. */
static int take_setting(vector_run *run, const char *line) {
  uint32_t v[3];
  const char *rest;
  if ((rest = after(line, "board")) != NULL) {
    if (!numbers(rest, v, 3)) return 0;
    run->board.rate_millihertz = v[0];
    run->board.accel_ng_per_lsb = v[1];
    run->board.gyro_ndps_per_lsb = v[2];
    return 1;
  }
  if ((rest = after(line, "memory")) != NULL) {
    if (!numbers(rest, v, 3)) return 0;
    /* Never more than there is. */
    if (v[0] < run->memory.ring_samples) run->memory.ring_samples = v[0];
    if (v[1] < run->memory.query_values) run->memory.query_values = v[1];
    if (v[2] < run->memory.row_values) run->memory.row_values = v[2];
    return 1;
  }
  if ((rest = after(line, "version")) != NULL) {
    if (!numbers(rest, v, 1)) return 0;
    run->model.version = (uint16_t)v[0];
    return 1;
  }
  return -1;
}

int vector_line(vector_run *run, const char *line) {
  uint32_t v[MVW_AXES];
  int16_t sample[MVW_AXES];
  const char *rest;
  int setting;
  if (line[0] == '#' || line[0] == '\n' || line[0] == '\r' || line[0] == '\0') return 1;
  if ((rest = after(line, "bytes")) != NULL) return take_bytes(run, rest);
  if (after(line, "read") != NULL) return read_bytes(run);
  setting = take_setting(run, line);
  if (setting >= 0) return setting;
  if ((rest = after(line, "button")) != NULL) {
    if (!numbers(rest, v, 1)) return 0;
    start(run);
    return !run->ready || mvw_button(&run->state, v[0] != 0) == MVW_OK;
  }
  if ((rest = after(line, "teach")) != NULL || (rest = after(line, "forget")) != NULL) {
    if (!numbers(rest, v, 1)) return 0;
    start(run);
    if (run->ready && line[0] == 't') vector_teach_begin(run, (uint8_t)v[0]);
    if (run->ready && line[0] == 'f') vector_teach_forget(run, (uint8_t)v[0]);
    return 1;
  }
  if (after(line, "reset") != NULL) {
    start(run);
    if (run->ready) mvw_reset(&run->state);
    run->samples = 0;
    return 1;
  }
  if (!numbers(line, v, MVW_AXES)) return 0;
  for (uint8_t axis = 0; axis < MVW_AXES; axis++) sample[axis] = (int16_t)v[axis];
  vector_sample(run, sample);
  return 1;
}
