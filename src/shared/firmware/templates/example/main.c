/*
 * The main loop of a prop: reads the sensor, names movements, answers with light. It is whole but
 * for the functions in board.h; board_file.c has them for a desk.
 */
#include "board.h"
#include "model.h"

/* Shown, dim and steady, when the recogniser refuses to start. */
static const light_colour refused_light = {32, 0, 0};

/* Time by counting samples: sample period = 10^6 / rate_millihertz ms. */
typedef struct sample_clock {
  uint32_t now_ms;
  uint32_t remainder; /* of the division, so that no time is lost */
} sample_clock;

static void tick(sample_clock *clock, uint32_t rate_millihertz) {
  uint32_t sum = clock->remainder + 1000000u;
  clock->now_ms += sum / rate_millihertz;
  clock->remainder = sum % rate_millihertz;
}

int main(void) {
  static int16_t ring[MODEL_RING_SAMPLES][MVW_AXES];
  static int16_t query[MODEL_QUERY_VALUES];
  static uint32_t row[MODEL_ROW_VALUES];
  static mvw_state recogniser;
  mvw_memory memory = {ring, MODEL_RING_SAMPLES, query, MODEL_QUERY_VALUES, row, MODEL_ROW_VALUES};

  /* Give your sensor's real setting here. It is checked: a wrong range or rate is refused. */
  mvw_board board = MODEL_BOARD;

  sample_clock clock = {0, 0};
  light lamp;
  int16_t sample[MVW_AXES];
  mvw_event event;

  int status = mvw_init(&recogniser, &model, &board, &memory);
  if (status != MVW_OK) {
    show_light(refused_light);
    return -status;
  }
  light_init(&lamp);
  while (read_sample(sample)) {
    tick(&clock, board.rate_millihertz);
    if (MODEL_BUTTON) mvw_button(&recogniser, button_pressed());
    if (mvw_push(&recogniser, sample, &event) == MVW_EVENT && event.kind == MVW_KIND_GESTURE)
      light_start(&lamp, event.gesture, clock.now_ms);
    show_light(light_at(&lamp, clock.now_ms));
  }
  return 0;
}
