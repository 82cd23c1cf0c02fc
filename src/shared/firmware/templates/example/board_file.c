/*
 * board.h for a desk: samples come from standard input, six integers a line as in
 * vectors/NN-name.in; "button 1" and "button 0" are heeded, other lines passed over. The compare
 * values of the three PWM channels, the tone in Hz and the vibration go to standard output whenever
 * one changes.
 *   build/example/prop < vectors/01-....in
 */
#include <stdio.h>
#include <string.h>

#include "board.h"
#include "effect_table.h"
#include "model.h"

static int button;

int read_sample(int16_t sample[MVW_AXES]) {
  char line[96];
  int v[MVW_AXES];
  while (fgets(line, sizeof line, stdin) != NULL) {
    if (sscanf(line, "button %d", &button) == 1) continue;
    if (sscanf(line, "%d %d %d %d %d %d", &v[0], &v[1], &v[2], &v[3], &v[4], &v[5]) != MVW_AXES)
      continue;
    for (int axis = 0; axis < MVW_AXES; axis++) sample[axis] = (int16_t)v[axis];
    return 1;
  }
  return 0;
}

/* A FIFO that holds a watermark of samples at each interrupt, and a clock that runs by the samples
 * read, at their nominal rate. */
#define WATERMARK 16u
static uint32_t taken;
static uint8_t waiting;
static int over;

uint8_t fifo_read(int16_t samples[][MVW_AXES], uint8_t most) {
  uint8_t count = 0;
  while (count < most && waiting > 0 && !over) {
    over = !read_sample(samples[count]);
    if (over) break;
    waiting--;
    count++;
  }
  taken += count;
  return count;
}

int fifo_overrun(void) { return 0; }

int fifo_wait(void) {
  waiting = WATERMARK;
  return !over;
}

void sleep_until_motion(void) { puts("asleep"); }

uint32_t clock_us(void) {
  return (uint32_t)((uint64_t)taken * 1000000000u / model.board.rate_millihertz);
}

void feed_watchdog(void) {}

int button_pressed(void) { return button; }

int cells_low(void) { return 0; }

void show(const answer_now *now) {
  static unsigned shown[5];
  unsigned values[5];
  for (int c = 0; c < MVW_LIGHT_CHANNELS; c++) values[c] = mvw_light_pwm(now->duty[c], LIGHT_TOP);
  values[3] = now->tune_hz;
  values[4] = now->shake;
  if (memcmp(values, shown, sizeof shown) == 0) return;
  memcpy(shown, values, sizeof shown);
  printf("light %u %u %u tone %u shake %u\n", values[0], values[1], values[2], values[3],
         values[4]);
}
