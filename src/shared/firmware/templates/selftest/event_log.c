#include "event_log.h"

static const char *const reasons[] = {"none", "far", "ambiguous", "short", "long"};
static const char *const rolls[] = {"off", "aligned", "vertical", "no-rest"};

/* Each writes behind the text so far, up to EVENT_LOG_LINE, and returns where the next begins.
 * No <stdio.h>: boards have none, and theirs differ. */
static char *put_text(char *at, const char *text) {
  while (*text != '\0') *at++ = *text++;
  return at;
}

static char *put_number(char *at, uint32_t value) {
  char digits[10];
  uint8_t count = 0;
  do {
    digits[count++] = (char)('0' + value % 10u);
    value /= 10u;
  } while (value != 0);
  while (count > 0) *at++ = digits[--count];
  return at;
}

static char *put_signed(char *at, int32_t value) {
  if (value >= 0) return put_number(at, (uint32_t)value);
  *at++ = '-';
  return put_number(at, 0u - (uint32_t)value);
}

static char *put_or_dash(char *at, uint32_t value, uint32_t none) {
  return value == none ? put_text(at, "-") : put_number(at, value);
}

static void close_line(char *at) {
  *at++ = '\n';
  *at = '\0';
}

void event_log_status(char line[EVENT_LOG_LINE], const char *what, int status) {
  char *at = put_text(line, what);
  *at++ = ' ';
  close_line(put_signed(at, status));
}

void event_log_event(char line[EVENT_LOG_LINE], const mvw_event *event) {
  char *at = put_number(put_text(line, "event "), event->start);
  at = put_number(put_text(at, " "), event->end);
  at = put_text(at, event->kind == MVW_KIND_GESTURE ? " gesture " : " reject ");
  at = put_or_dash(at, event->gesture, MVW_NO_GESTURE);
  at = put_text(put_text(at, " "), reasons[event->reason]);
  at = put_text(put_text(at, " "), rolls[event->roll]);
  at = put_or_dash(put_text(at, " "), event->distance, MVW_NO_DISTANCE);
  at = put_number(put_text(at, " "), event->threshold);
  at = put_or_dash(put_text(at, " "), event->runner_up, MVW_NO_GESTURE);
  at = put_or_dash(put_text(at, " "), event->runner_up_distance, MVW_NO_DISTANCE);
  close_line(at);
}

static const char *teach_word(int status) {
  if (status == MVW_TEACH_MORE) return "more";
  if (status == MVW_TEACH_DONE) return "done";
  if (status == MVW_TEACH_E_CUT) return "cut";
  return status == MVW_TEACH_E_UNLIKE ? "unlike" : "near";
}

void event_log_taught(char line[EVENT_LOG_LINE], int status, const mvw_teach *teach) {
  char *at = put_text(put_text(line, "taught "), teach_word(status));
  at = put_number(put_text(at, " "), teach->count);
  at = put_or_dash(put_text(at, " "), teach->nearest, MVW_NO_GESTURE);
  at = put_or_dash(put_text(at, " "), teach->nearest_distance, MVW_NO_DISTANCE);
  at = put_number(put_text(at, " "), teach->spread);
  close_line(put_number(put_text(at, " "), teach->threshold));
}

void event_log_end(char line[EVENT_LOG_LINE], uint32_t samples) {
  close_line(put_number(put_text(line, "end "), samples));
}
