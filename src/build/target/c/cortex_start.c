/*
 * Start-up of emulated Cortex-M boards: the vector table, memory made ready, and the end of the
 * emulation when main() returns.
 */
#include "cortex_start.h"

#include <stddef.h>

extern uint32_t data_load[], data_start[], data_end[], bss_start[], bss_end[], stack_top[];

int main(void);
void reset(void);

__attribute__((section(".vectors"), used)) static void *const vectors[] = {stack_top,
                                                                           (void *)reset};

/* What the compiler may call without a library. */
void *memcpy(void *to, const void *from, size_t count) {
  uint8_t *out = to;
  const uint8_t *in = from;
  while (count--) *out++ = *in++;
  return to;
}

void *memset(void *at, int value, size_t count) {
  uint8_t *out = at;
  while (count--) *out++ = (uint8_t)value;
  return at;
}

void host_call(uint32_t operation, const void *argument) {
  register uint32_t r0 __asm__("r0") = operation;
  register const void *r1 __asm__("r1") = argument;
  __asm__ volatile("bkpt 0xab" : "+r"(r0) : "r"(r1) : "memory");
}

#define HOST_EXIT 0x18u
#define HOST_EXIT_WELL ((const void *)0x20026u)

void reset(void) {
  uint32_t *to = data_start;
  const uint32_t *from = data_load;
  while (to < data_end) *to++ = *from++;
  for (to = bss_start; to < bss_end; to++) *to = 0;
  main();
  host_call(HOST_EXIT, HOST_EXIT_WELL);
  for (;;) {
  }
}
