#include "board.h"
#include "selftest_log.h"
#include "packed.h"
#include "vector_run.h"

static vector_run run;
static const uint8_t *next;

static void put(const char *text) {
  while (*text != '\0') port_put(*text++);
}

static uint8_t take(void) { return (uint8_t)MVW_READ_I8(next++); }

/* Zero-ended text of the pack; what goes beyond VECTOR_LINE is cut off. */
static void take_text(char text[VECTOR_LINE]) {
  uint8_t length = 0;
  char character;
  while ((character = (char)take()) != '\0')
    if (length < VECTOR_LINE - 1) text[length++] = character;
  text[length] = '\0';
}

static int16_t take_difference(int16_t before) {
  uint32_t code = 0;
  uint8_t shift = 0;
  uint8_t group;
  do {
    group = take();
    code |= (uint32_t)(group & 127u) << shift;
    shift = (uint8_t)(shift + 7);
  } while (group & 128u);
  int32_t half = (int32_t)(code >> 1);
  return (int16_t)(before + (code & 1u ? -half - 1 : half));
}

static void sample_once(const int16_t sample[MVW_AXES]) {
  port_alive();
  vector_sample(&run, sample);
}

/* Runs the records of one vector, the name of which was read; returns the record behind it. */
static uint8_t run_vector(void) {
  int16_t sample[MVW_AXES] = {0, 0, 0, 0, 0, 0};
  char text[VECTOR_LINE];
  uint8_t record;
  vector_begin(&run, put);
  while ((record = take()) > PACKED_VECTOR) {
    if (record == PACKED_LINE) {
      take_text(text);
      if (!vector_line(&run, text)) put("# a line cannot be understood\n");
    } else if (record == PACKED_SAMPLE) {
      for (uint8_t axis = 0; axis < MVW_AXES; axis++)
        sample[axis] = take_difference(sample[axis]);
      sample_once(sample);
    } else {
      for (uint8_t again = take(); again > 0; again--) sample_once(sample);
    }
  }
  vector_end(&run);
  return record;
}

void selftest_packed(void) {
  char name[VECTOR_LINE];
  next = packed_vectors;
  put(SELFTEST_LOG_FIRST SELFTEST_LOG_MODEL MODEL_SHA256 "\n");
  uint8_t record = take();
  while (record == PACKED_VECTOR) {
    take_text(name);
    put(SELFTEST_LOG_VECTOR);
    put(name);
    put("\n");
    record = run_vector();
  }
  put(SELFTEST_LOG_LAST);
}
