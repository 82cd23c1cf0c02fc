/*
 * A prop whose model can be changed over its serial line: samples are pushed, lines of model_loader.h
 * change the model, and what is recognised is printed. Here samples come over the same line, six
 * integers each as in vectors/NN-name.in, so that it runs on a desk too; on a prop they come from the
 * sensor. The functions of selftest/board.h are asked for: a desk's are in port_file.c.
 * Ends at a line "done".
 */
#include "../selftest/board.h"
#include "event_log.h"
#include "model.h"
#include "model_loader.h"

static int16_t ring[MODEL_RING_SAMPLES][MVW_AXES];
static int16_t query[MODEL_QUERY_VALUES];
static uint32_t row[MODEL_ROW_VALUES];

static void put(const char *text) {
  while (*text != '\0') port_put(*text++);
}

/* One line without its end; what goes beyond LOADER_LINE is cut off, and its check then fails. */
static void get_line(char line[LOADER_LINE]) {
  uint8_t length = 0;
  char character;
  port_put('>');
  while ((character = port_get()) != '\n')
    if (character != '\r' && length < LOADER_LINE - 1) line[length++] = character;
  line[length] = '\0';
}

/* Six integers, or 0. */
static int read_numbers(const char *text, int16_t sample[MVW_AXES]) {
  for (uint8_t axis = 0; axis < MVW_AXES; axis++) {
    int32_t value = 0;
    while (*text == ' ') text++;
    int negative = *text == '-';
    if (negative) text++;
    if (*text < '0' || *text > '9') return 0;
    while (*text >= '0' && *text <= '9') value = value * 10 + (*text++ - '0');
    sample[axis] = (int16_t)(negative ? -value : value);
  }
  return *text == '\0';
}

void loader_run(void);

void loader_run(void) {
  static mvw_state recogniser;
  static model_loader loader;
  static const mvw_board board = MODEL_BOARD;
  static const mvw_memory memory = {ring, MODEL_RING_SAMPLES, query, MODEL_QUERY_VALUES,
                                    row,  MODEL_ROW_VALUES};
  char line[LOADER_LINE];
  char text[EVENT_LOG_LINE];
  int16_t sample[MVW_AXES];
  mvw_event event;
  event_log_status(text, "init",
                   model_loader_start(&loader, &recogniser, &model, &board, &memory));
  put(text);
  for (;;) {
    get_line(line);
    port_alive();
    if (line[0] == 'd') break;
    if (model_loader_line(&loader, line, text)) {
      put(text);
    } else if (read_numbers(line, sample) &&
               mvw_push(&recogniser, sample, &event) == MVW_EVENT) {
      event_log_event(text, &event);
      put(text);
    }
  }
  put("done\n");
}
