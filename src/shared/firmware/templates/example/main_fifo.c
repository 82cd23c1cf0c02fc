/*
 * The main loop of a prop that sleeps: the sensor gathers samples in its FIFO and wakes the
 * processor by an interrupt, and when nothing happened for a while both wait for a motion. It also
 * measures the sensor's rate at the start and feeds a watchdog.
 *
 * The watchdog: the longest that the loop stays away from feed_watchdog() is a batch of samples with
 * one decision in it. Time one on your board (the app's budget estimates it) and allow four times
 * that. The FIFO must hold what comes in meanwhile.
 */
#include "axes.h"
#include "board.h"
#include "model.h"
#include "rate.h"

#define BATCH 16u

/* Sleep after so long without an event and with nothing shown. */
#define QUIET_S 30u

/* As the target says; change it when your sensor is mounted otherwise (axes.h). */
static const axes_map mounted = {1, 2, 3};

static int16_t ring[MODEL_RING_SAMPLES][MVW_AXES];
static int16_t query[MODEL_QUERY_VALUES];
static uint32_t row[MODEL_ROW_VALUES];
static mvw_state recogniser;
static answer answering;
static answer_now shown;
static const answer_now refused = {{4096, 0, 0}, 0, 0};

/* Lets the sensor run and counts its samples; what it reads now is thrown away. */
static uint32_t measured_rate(void) {
  int16_t samples[BATCH][MVW_AXES];
  uint32_t count = 0;
  uint32_t from_us;
  /* Begin with an empty FIFO, so that a whole number of samples lies between the two times. */
  if (!fifo_wait()) return 0;
  while (fifo_read(samples, BATCH) > 0) {
  }
  from_us = clock_us();
  while (count < RATE_SAMPLES && fifo_wait()) {
    feed_watchdog();
    for (uint8_t more = BATCH; more == BATCH; count += more) more = fifo_read(samples, BATCH);
  }
  return rate_millihertz(count, clock_us() - from_us);
}

static int start(mvw_board *board) {
  mvw_memory memory = {ring, MODEL_RING_SAMPLES, query, MODEL_QUERY_VALUES, row, MODEL_ROW_VALUES};
  int status;
  if (!axes_valid(mounted)) return MVW_E_ARGUMENT;
  board->rate_millihertz = measured_rate();
  status = mvw_init(&recogniser, &model, board, &memory);
  return status == MVW_OK ? answer_init(&answering) : status;
}

/* One sample; returns 1 when it brought an event. */
static int take(int16_t sample[MVW_AXES], uint16_t elapsed_ms) {
  mvw_event event;
  int came;
  axes_apply(mounted, sample);
  if (MODEL_BUTTON) mvw_button(&recogniser, button_pressed());
  came = mvw_push(&recogniser, sample, &event) == MVW_EVENT;
  if (came) answer_event(&answering, &event);
  answer_low_cells(&answering, cells_low());
  answer_tick(&answering, elapsed_ms, &shown);
  return came;
}

static int is_dark(void) {
  return (shown.duty[0] | shown.duty[1] | shown.duty[2] | shown.tune_hz | shown.shake) == 0;
}

int main(void) {
  mvw_board board = MODEL_CALIBRATED_BOARD;
  int16_t samples[BATCH][MVW_AXES];
  uint32_t remainder = 0; /* of the time of a sample, so that none is lost */
  uint32_t quiet_ms = 0;
  int status = start(&board);
  if (status != MVW_OK) {
    show(&refused);
    return -status;
  }
  while (fifo_wait()) {
    uint8_t count;
    feed_watchdog();
    /* A gap would be taken for a jump of the hand. */
    if (fifo_overrun()) mvw_reset(&recogniser);
    do {
      count = fifo_read(samples, BATCH);
      for (uint8_t i = 0; i < count; i++) {
        uint32_t sum = remainder + 1000000u;
        uint16_t elapsed_ms = (uint16_t)(sum / board.rate_millihertz);
        remainder = sum % board.rate_millihertz;
        quiet_ms = take(samples[i], elapsed_ms) ? 0 : quiet_ms + elapsed_ms;
      }
      show(&shown);
    } while (count == BATCH);
    if (quiet_ms < QUIET_S * 1000u || !is_dark()) continue;
    sleep_until_motion();
    /* Time stood still: forget the samples before. Gravity is known again after four at rest; a
     * movement that begins sooner is compared without roll alignment. */
    mvw_reset(&recogniser);
    quiet_ms = 0;
  }
  return 0;
}
