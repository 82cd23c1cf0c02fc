#include "event_log.h"

#include <inttypes.h>
#include <stdio.h>

static const char *const reasons[] = {"none", "far", "ambiguous", "short", "long"};
static const char *const rolls[] = {"off", "aligned", "vertical", "no-rest"};

static void number_or_dash(char text[12], uint32_t value, uint32_t none) {
  if (value == none)
    snprintf(text, 12, "-");
  else
    snprintf(text, 12, "%" PRIu32, value);
}

void event_log_init(char line[EVENT_LOG_LINE], int status) {
  snprintf(line, EVENT_LOG_LINE, "init %d\n", status);
}

void event_log_event(char line[EVENT_LOG_LINE], const mvw_event *event) {
  char nearest[12];
  char distance[12];
  char runner_up[12];
  char runner_up_distance[12];
  number_or_dash(nearest, event->gesture, MVW_NO_GESTURE);
  number_or_dash(distance, event->distance, MVW_NO_DISTANCE);
  number_or_dash(runner_up, event->runner_up, MVW_NO_GESTURE);
  number_or_dash(runner_up_distance, event->runner_up_distance, MVW_NO_DISTANCE);
  snprintf(line, EVENT_LOG_LINE, "event %" PRIu32 " %" PRIu32 " %s %s %s %s %s %" PRIu32 " %s %s\n",
           event->start, event->end, event->kind == MVW_KIND_GESTURE ? "gesture" : "reject", nearest,
           reasons[event->reason], rolls[event->roll], distance, event->threshold, runner_up,
           runner_up_distance);
}

void event_log_end(char line[EVENT_LOG_LINE], uint32_t samples) {
  snprintf(line, EVENT_LOG_LINE, "end %" PRIu32 "\n", samples);
}
