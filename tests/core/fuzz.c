/*
 * The core under arbitrary bytes, for libFuzzer (clang -fsanitize=fuzzer) and, built with -DFROM_PACK,
 * for a pack of inputs. Input:
 *   byte 0      bit 0: the check of the model bytes is put right first, so that their fields are reached
 *   bytes 1, 2  length of the model bytes, little-endian
 *   then        model bytes, then operations: a byte 0..249 pushes the next 12 bytes as a sample
 *               (fewer at the end count as noughts), 250 repeats the last sample byte-many times, 251
 *               resets, 252 and 253 press and release the button, 254 classifies the last samples,
 *               255 asks for a template's distance.
 * Every buffer has exactly the size the core asks for: the sanitizers see whatever goes beyond.
 */
#include <stdlib.h>
#include <string.h>

#include "movewright.h"

#define KEPT 64

typedef struct input {
  const uint8_t *bytes;
  size_t left;
} input;

static uint8_t next(input *in) {
  if (in->left == 0) return 0;
  in->left--;
  return *in->bytes++;
}

static uint32_t crc32(const uint8_t *bytes, size_t length) {
  uint32_t crc = 0xffffffffu;
  for (size_t i = 0; i < length; i++) {
    crc ^= bytes[i];
    for (int bit = 0; bit < 8; bit++) crc = crc >> 1 ^ (crc & 1u ? 0xedb88320u : 0u);
  }
  return ~crc;
}

static void put_check_right(uint8_t *bytes, size_t length) {
  uint32_t crc;
  if (length < 4) return;
  crc = crc32(bytes, length - 4);
  for (int i = 0; i < 4; i++) bytes[length - 4 + (size_t)i] = (uint8_t)(crc >> (8 * i));
}

/* Events must be within what the header says. */
static void check_event(const mvw_model *model, const mvw_event *event) {
  if (event->kind != MVW_KIND_GESTURE && event->kind != MVW_KIND_REJECT) abort();
  if (event->gesture != MVW_NO_GESTURE && event->gesture >= model->gesture_count) abort();
  if (event->runner_up != MVW_NO_GESTURE && event->runner_up >= model->gesture_count) abort();
  if (event->end < event->start) abort();
  if (event->kind == MVW_KIND_GESTURE && event->distance > event->threshold) abort();
}

static void operate(input *in, mvw_state *state, const mvw_model *model) {
  int16_t kept[KEPT][MVW_AXES] = {{0}};
  uint16_t at = 0;
  mvw_event event;
  while (in->left > 0) {
    uint8_t operation = next(in);
    uint32_t times = 0;
    if (operation < 250) {
      at = (uint16_t)((at + 1) % KEPT);
      for (int axis = 0; axis < MVW_AXES; axis++) {
        int value = next(in);
        value += next(in) * 256;
        kept[at][axis] = (int16_t)(value < 32768 ? value : value - 65536);
      }
      times = 1;
    } else if (operation == 250) {
      times = next(in);
    } else if (operation == 251) {
      mvw_reset(state);
    } else if (operation < 254) {
      mvw_button(state, operation == 252);
    } else if (operation == 254) {
      const int16_t *gravity = next(in) & 1u ? kept[0] : NULL;
      if (mvw_classify(state, (const int16_t(*)[MVW_AXES])kept, KEPT, gravity, &event) == MVW_EVENT)
        check_event(model, &event);
    } else {
      (void)mvw_template_distance(state, next(in));
    }
    while (times-- > 0)
      if (mvw_push(state, kept[at], &event) == MVW_EVENT) check_event(model, &event);
  }
}

/* A model whose decisions take long makes the fuzzer slow and tells it nothing. */
static int is_small(const mvw_model *model) {
  return model->template_count <= 16 && model->kernel_features <= 64 &&
         model->normaliser.length <= 48;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size) {
  input in = {data, size};
  uint8_t flags = next(&in);
  size_t length = next(&in);
  length += (size_t)next(&in) * 256u;
  if (length > in.left) length = in.left;
  uint8_t *bytes = malloc(length ? length : 1);
  memcpy(bytes, in.bytes, length);
  in.bytes += length;
  in.left -= length;
  if (flags & 1u) put_check_right(bytes, length);

  mvw_model model;
  mvw_gesture gestures[MVW_MAX_GESTURES];
  mvw_memory memory;
  if (mvw_model_read(&model, gestures, MVW_MAX_GESTURES, bytes, (uint32_t)length) == MVW_OK &&
      is_small(&model)) {
    mvw_memory_sizes(&model, &memory);
    memory.ring = malloc(memory.ring_samples * sizeof *memory.ring);
    memory.query = malloc(memory.query_values * sizeof *memory.query);
    memory.row = malloc(memory.row_values * sizeof *memory.row);
    mvw_state state;
    if (mvw_init(&state, &model, NULL, &memory) == MVW_OK) operate(&in, &state, &model);
    free(memory.row);
    free(memory.query);
    free(memory.ring);
  }
  free(bytes);
  return 0;
}

#ifdef FROM_PACK
#include <stdio.h>

/* Inputs from standard input, each after its length in two bytes, little-endian. */
int main(void) {
  static uint8_t bytes[65536];
  unsigned count = 0;
  int low;
  while ((low = getchar()) != EOF) {
    size_t size = (size_t)low + (size_t)getchar() * 256u;
    if (fread(bytes, 1, size, stdin) != size) return 2;
    LLVMFuzzerTestOneInput(bytes, size);
    count++;
  }
  printf("%u inputs\n", count);
  return 0;
}
#endif
