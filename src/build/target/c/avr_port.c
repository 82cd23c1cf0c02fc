/*
 * Port of the self-test for an emulated ATmega1284P (simavr): the log goes out on UART 0. Cycles are
 * exact: timer 1 counts each, but only 16 bits of them; timer 3 counts every 1,024th and tells how
 * often timer 1 went round. No interrupts, which would add to the stack and the time.
 */
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/sleep.h>

#include "board.h"
#include "probe.h"

void probe_start(void) {
  TCCR1A = 0;
  TCCR1B = 1 << CS10;
  TCCR3A = 0;
  TCCR3B = 1 << CS32 | 1 << CS30;
}

/* Upper half: coarse; lower half: fine. */
uint32_t probe_ticks(void) {
  uint16_t coarse = TCNT3;
  uint16_t fine = TCNT1;
  return (uint32_t)coarse << 16 | fine;
}

uint32_t probe_elapsed(uint32_t from, uint32_t to) {
  uint32_t about = (uint32_t)(uint16_t)((to >> 16) - (from >> 16)) * 1024u;
  uint16_t exact = (uint16_t)(to - from);
  return exact + ((about - exact + 32768u) & 0xffff0000u);
}

uint8_t *probe_stack(void) { return (uint8_t *)SP; }

void port_alive(void) {}

void port_put(char character) {
  while ((UCSR0A & (1 << UDRE0)) == 0) {
  }
  UDR0 = (uint8_t)character;
}

int main(void) {
  UCSR0B = 1 << TXEN0;
  UBRR0 = 0;
  probe_start();
  selftest_packed();
  cli();
  sleep_enable();
  sleep_cpu();
  return 0;
}
