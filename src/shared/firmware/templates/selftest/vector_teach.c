#include "vector_run.h"

static mvw_taught slots[VECTOR_TEACH_SLOTS];
static int8_t templates[VECTOR_TEACH_SLOTS * MODEL_QUERY_VALUES];
static int8_t segments[VECTOR_TEACH_TAKES * MODEL_QUERY_VALUES];

static void say_status(vector_run *run, const char *what, int status) {
  char line[EVENT_LOG_LINE];
  event_log_status(line, what, status);
  run->say(line);
}

/* Nothing is taught when a vector begins. */
static int open_teaching(vector_run *run) {
  static const mvw_teach_memory memory = {slots, templates, segments, VECTOR_TEACH_SLOTS,
                                          VECTOR_TEACH_TAKES};
  int status = MVW_OK;
  if (run->teaching) return status;
  for (uint8_t slot = 0; slot < VECTOR_TEACH_SLOTS; slot++) slots[slot].takes = 0;
  status = mvw_teach_init(&run->teach, &run->state, &memory);
  run->teaching = status == MVW_OK;
  return status;
}

void vector_teach_begin(vector_run *run, uint8_t gesture) {
  int status = open_teaching(run);
  if (status == MVW_OK) status = mvw_teach_begin(&run->teach, &run->state, gesture);
  say_status(run, "teach", status);
}

void vector_teach_forget(vector_run *run, uint8_t gesture) {
  int status = open_teaching(run);
  if (status == MVW_OK) status = mvw_teach_forget(&run->teach, gesture);
  say_status(run, "forget", status);
}

void vector_teach_event(vector_run *run, mvw_event *event) {
  char line[EVENT_LOG_LINE];
  int status = mvw_teach_event(&run->teach, &run->state, event);
  if (status == MVW_EVENT)
    event_log_event(line, event);
  else
    event_log_taught(line, status, &run->teach);
  run->say(line);
}
