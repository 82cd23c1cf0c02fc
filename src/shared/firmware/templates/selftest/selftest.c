/*
 * Runs vectors through the recogniser and compares its event log, byte for byte, with the one the
 * phone wrote.
 *   selftest vectors/NN-name.in ...
 * prints each log, and after it "ok" or the first line that differs.
 * Exit status: 0 all agree, 1 one or more differ, 2 a file cannot be read.
 */
#include <stdio.h>
#include <string.h>

#include "event_log.h"
#include "model.h"

typedef struct run {
  FILE *expected;
  const char *name;
  int differs;        /* lines that differ */
  int ready;          /* mvw_init() has been called and said MVW_OK */
  int refused;        /* it said something else */
  uint32_t samples;   /* pushed since mvw_init() or the last reset */
  mvw_model model;    /* a copy, as a vector may change its version */
  mvw_board board;
  mvw_state state;
} run;

static int16_t ring[MODEL_RING_SAMPLES][MVW_AXES];
static int16_t query[MODEL_QUERY_VALUES];
static uint32_t row[MODEL_ROW_VALUES];

/* Prints a line and compares it with the next one expected. */
static void say(run *r, const char *line) {
  char expected[EVENT_LOG_LINE];
  fputs(line, stdout);
  if (fgets(expected, sizeof expected, r->expected) == NULL) strcpy(expected, "(nothing)\n");
  if (strcmp(line, expected) == 0) return;
  if (r->differs == 0)
    fprintf(stderr, "%s: expected %s%s: found    %s", r->name, expected, r->name, line);
  r->differs++;
}

static void start(run *r) {
  char line[EVENT_LOG_LINE];
  mvw_memory memory = {ring, MODEL_RING_SAMPLES, query, MODEL_QUERY_VALUES, row, MODEL_ROW_VALUES};
  int status = mvw_init(&r->state, &r->model, &r->board, &memory);
  r->ready = status == MVW_OK;
  r->refused = !r->ready;
  event_log_init(line, status);
  say(r, line);
}

static void push(run *r, const int16_t sample[MVW_AXES]) {
  mvw_event event;
  char line[EVENT_LOG_LINE];
  r->samples++;
  if (mvw_push(&r->state, sample, &event) != MVW_EVENT) return;
  event_log_event(line, &event);
  say(r, line);
}

/* One line of a vector (README.md, "Vectors"). Returns 0 when it cannot be understood. */
static int take_line(run *r, const char *line) {
  int v[MVW_AXES];
  unsigned long rate, accel, gyro;
  if (line[0] == '#' || line[0] == '\n' || line[0] == '\r') return 1;
  if (sscanf(line, "board %lu %lu %lu", &rate, &accel, &gyro) == 3) {
    r->board.rate_millihertz = (uint32_t)rate;
    r->board.accel_ng_per_lsb = (uint32_t)accel;
    r->board.gyro_ndps_per_lsb = (uint32_t)gyro;
    return 1;
  }
  if (sscanf(line, "version %d", &v[0]) == 1) {
    r->model.version = (uint16_t)v[0];
    return 1;
  }
  if (!r->ready && !r->refused) start(r);
  if (r->refused) return 1;
  if (sscanf(line, "button %d", &v[0]) == 1) return mvw_button(&r->state, v[0]) == MVW_OK;
  if (strncmp(line, "reset", 5) == 0) {
    mvw_reset(&r->state);
    r->samples = 0;
    return 1;
  }
  if (sscanf(line, "%d %d %d %d %d %d", &v[0], &v[1], &v[2], &v[3], &v[4], &v[5]) != MVW_AXES)
    return 0;
  int16_t sample[MVW_AXES];
  for (int axis = 0; axis < MVW_AXES; axis++) sample[axis] = (int16_t)v[axis];
  push(r, sample);
  return 1;
}

static int run_lines(run *r, FILE *input) {
  char line[EVENT_LOG_LINE];
  unsigned long number = 0;
  while (fgets(line, sizeof line, input) != NULL) {
    number++;
    if (take_line(r, line)) continue;
    fprintf(stderr, "%s, line %lu cannot be understood: %s", r->name, number, line);
    return 2;
  }
  if (!r->ready && !r->refused) start(r);
  event_log_end(line, r->samples);
  say(r, line);
  if (fgets(line, sizeof line, r->expected) != NULL) {
    fprintf(stderr, "%s: expected more: %s", r->name, line);
    r->differs++;
  }
  return r->differs ? 1 : 0;
}

/* The vector's log lies beside it, with .log for .in. */
static FILE *open_log(const char *input_name) {
  char name[512];
  size_t length = strlen(input_name);
  if (length < 4 || length >= sizeof name - 2 || strcmp(input_name + length - 3, ".in") != 0)
    return NULL;
  memcpy(name, input_name, length - 2);
  strcpy(name + length - 2, "log");
  return fopen(name, "r");
}

static int run_vector(const char *name) {
  static const mvw_board board = MODEL_BOARD;
  run r;
  memset(&r, 0, sizeof r);
  r.name = name;
  r.model = model;
  r.board = board;
  FILE *input = fopen(name, "r");
  r.expected = open_log(name);
  int result = 2;
  printf("vector %s\n", name);
  if (input == NULL || r.expected == NULL)
    fprintf(stderr, "%s or its .log cannot be opened\n", name);
  else
    result = run_lines(&r, input);
  if (input != NULL) fclose(input);
  if (r.expected != NULL) fclose(r.expected);
  printf("%s\n", result == 0 ? "ok" : "differs");
  return result;
}

int main(int count, char **names) {
  int worst = count > 1 ? 0 : 2;
  int agreed = 0;
  printf("model %s\n", MODEL_SHA256);
  for (int i = 1; i < count; i++) {
    int result = run_vector(names[i]);
    if (result == 0) agreed++;
    if (result > worst) worst = result;
  }
  printf("%d of %d vectors agree with the phone\n", agreed, count - 1);
  return worst;
}
