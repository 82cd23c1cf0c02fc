#include "board.h"
#include "selftest_log.h"
#include "vector_run.h"

static void put(const char *text) {
  while (*text != '\0') port_put(*text++);
}

/* One line without its end; what goes beyond VECTOR_LINE is cut off. */
static void get_line(char line[VECTOR_LINE]) {
  uint8_t length = 0;
  char character;
  port_put('>');
  while ((character = port_get()) != '\n')
    if (character != '\r' && length < VECTOR_LINE - 1) line[length++] = character;
  line[length] = '\0';
}

static int begins(const char *line, const char *with) {
  while (*with != '\0')
    if (*line++ != *with++) return 0;
  return 1;
}

void selftest_serial(void) {
  static vector_run run;
  char line[VECTOR_LINE];
  int open = 0;
  put(SELFTEST_LOG_FIRST SELFTEST_LOG_MODEL MODEL_SHA256 "\n");
  for (;;) {
    get_line(line);
    port_alive();
    int last = begins(line, "done");
    int first = begins(line, SELFTEST_LOG_VECTOR);
    if (open && (first || last)) vector_end(&run);
    if (last) break;
    if (first) {
      vector_begin(&run, put);
      open = 1;
      put(line);
      put("\n");
    } else if (open && !vector_line(&run, line)) {
      put("# a line cannot be understood\n");
    }
  }
  put(SELFTEST_LOG_LAST);
}
