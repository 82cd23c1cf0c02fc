/*
 * Port of the self-test for emulated Cortex-M boards (QEMU): microbit (M0) and
 * mps2-an385 (M3). The log goes out by semihosting, or with SERIAL defined through the serial port
 * of mps2-an385, by which the vectors then come in; with LOADER too it runs the bundle's loader.
 */
#include "board.h"
#include "cortex_start.h"
#include "probe.h"

void loader_run(void);

/* SysTick: counts down 24 bits. With -icount shift=0 an instruction is a nanosecond of it. */
#define SYSTICK ((volatile uint32_t *)0xe000e010u)

void probe_start(void) {
  SYSTICK[1] = 0xffffffu;
  SYSTICK[2] = 0;
  SYSTICK[0] = 5;
}

uint32_t probe_ticks(void) { return 0xffffffu - SYSTICK[2]; }

uint32_t probe_elapsed(uint32_t from, uint32_t to) { return (to - from) & 0xffffffu; }

uint8_t *probe_stack(void) {
  uint8_t *sp;
  __asm__ volatile("mov %0, sp" : "=r"(sp));
  return sp;
}

void port_alive(void) {}

#ifdef SERIAL
/* CMSDK UART: data, state (1 transmitter full, 2 receiver full), control, interrupt, divisor. */
#define UART ((volatile uint32_t *)0x40004000u)

void port_put(char character) {
  while (UART[1] & 1u) {
  }
  UART[0] = (uint8_t)character;
}

char port_get(void) {
  while ((UART[1] & 2u) == 0) {
  }
  return (char)UART[0];
}

int main(void) {
  UART[4] = 16;
  UART[2] = 3;
  probe_start();
#ifdef LOADER
  loader_run();
#else
  selftest_serial();
#endif
  return 0;
}
#else
void port_put(char character) {
  static char line[160];
  static uint8_t length;
  line[length++] = character;
  if (character != '\n' && length < sizeof line - 1) return;
  line[length] = '\0';
  host_call(HOST_WRITE_TEXT, line);
  length = 0;
}

int main(void) {
  probe_start();
  selftest_packed();
  return 0;
}
#endif
