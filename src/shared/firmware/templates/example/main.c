/*
 * The main loop of a prop: reads the sensor, names movements, answers with light, tone and
 * vibration. It is whole but for the functions in board.h; board_file.c has them for a desk.
 */
#include "board.h"
#include "model.h"

/* Shown, dim and steady, when the recogniser refuses to start. */
static const answer_now refused = {{4096, 0, 0}, 0, 0};

/* Time by counting samples: the period is 10^6 / rate_millihertz ms. *remainder is of the division,
 * so that no time is lost. */
static uint16_t sample_ms(uint32_t *remainder, uint32_t rate_millihertz) {
  uint32_t sum = *remainder + 1000000u;
  *remainder = sum % rate_millihertz;
  return (uint16_t)(sum / rate_millihertz);
}

int main(void) {
  static int16_t ring[MODEL_RING_SAMPLES][MVW_AXES];
  static int16_t query[MODEL_QUERY_VALUES];
  static uint32_t row[MODEL_ROW_VALUES];
  static mvw_state recogniser;
  mvw_memory memory = {ring, MODEL_RING_SAMPLES, query, MODEL_QUERY_VALUES, row, MODEL_ROW_VALUES};

  /* Give your sensor's real setting here. It is checked: a wrong range or rate is refused. */
  mvw_board board = MODEL_CALIBRATED_BOARD;

  uint32_t remainder = 0;
  static answer answering;
  answer_now now;
  int16_t sample[MVW_AXES];
  mvw_event event;

  int status = mvw_init(&recogniser, &model, &board, &memory);
  if (status == MVW_OK) status = answer_init(&answering);
  if (status != MVW_OK) {
    show(&refused);
    return -status;
  }
  while (read_sample(sample)) {
    if (MODEL_BUTTON) mvw_button(&recogniser, button_pressed());
    if (mvw_push(&recogniser, sample, &event) == MVW_EVENT) answer_event(&answering, &event);
    answer_low_cells(&answering, cells_low());
    answer_tick(&answering, sample_ms(&remainder, board.rate_millihertz), &now);
    show(&now);
  }
  return 0;
}
