/*
 * Runs one vector: takes its lines, or its samples as numbers, and says the event log. The one body
 * of every self-test: on a desk from files, on a board from flash or over a serial line. Firmware that
 * does not teach needs vector_teach.c for the self-test only.
 */
#ifndef VECTOR_RUN_H
#define VECTOR_RUN_H

#include "event_log.h"
#include "model.h"

/* Longest line of a vector with its line end and the closing zero. */
#define VECTOR_LINE 128

/* Model bytes that a vector may carry (lines "bytes"); tests of damaged models are small. */
#define VECTOR_BYTES 256

/* Gestures that a vector may teach, and movements each is taught with. */
#define VECTOR_TEACH_SLOTS 2
#define VECTOR_TEACH_TAKES 3

/* Told every line of the event log, line end included. */
typedef void (*vector_say)(const char *line);

typedef struct vector_run {
  vector_say say;
  uint8_t started; /* mvw_init() was called */
  uint8_t ready;   /* and said MVW_OK */
  uint32_t samples; /* pushed since mvw_init() or the last reset */
  mvw_model model; /* a copy, as a vector may change its version */
  mvw_board board;
  mvw_memory memory;
  mvw_state state;
  uint8_t teaching; /* mvw_teach_init() was called */
  mvw_teach teach;
  uint16_t byte_count;
  uint8_t bytes[VECTOR_BYTES];
} vector_run;

/* Ready for a vector's first line. The buffers of the recogniser are shared: one run at a time. */
void vector_begin(vector_run *run, vector_say say);

/* Takes a line of a vector (README.md, "Vectors"). Returns 0 when it cannot be understood. */
int vector_line(vector_run *run, const char *line);

/* Takes a sample, as the line of six integers does. */
void vector_sample(vector_run *run, const int16_t sample[MVW_AXES]);

/* vector_teach.c: begins a session, or forgets a gesture; says the status. */
void vector_teach_begin(vector_run *run, uint8_t gesture);
void vector_teach_forget(vector_run *run, uint8_t gesture);
/* Gives an event to teaching, and says what came of it. */
void vector_teach_event(vector_run *run, mvw_event *event);

/* Says the last line. */
void vector_end(vector_run *run);

#endif
