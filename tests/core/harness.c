/*
 * Runs a model over samples and prints what the core says, one line an event, so that another build
 * of the core can be compared line by line. Every buffer is allocated at exactly the size the core
 * asks for: under AddressSanitizer a write past any of them ends the program.
 *
 *   harness MODEL SAMPLES push            samples one by one, as a board does
 *   harness MODEL SAMPLES classify        all samples as one segment; first row is gravity
 *   harness MODEL SAMPLES trace           energy and phase of every sample
 *   harness MODEL SAMPLES teach SLOTS TAKES GESTURE...   as push, each event given to teaching; a session
 *                                         for each gesture, one after the other
 *   harness MODEL SAMPLES slots GESTURE:TAKES...      slots as they are after mvw_teach_init()
 *   harness MODEL - init RATE ACCEL GYRO  status of mvw_init() for such a board
 *
 * SAMPLES: int16 little-endian, six a row.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "movewright.h"
#include "mvw_teach.h"

static uint8_t *read_file(const char *path, uint32_t *length) {
  FILE *file = fopen(path, "rb");
  if (!file) exit(3);
  fseek(file, 0, SEEK_END);
  *length = (uint32_t)ftell(file);
  rewind(file);
  uint8_t *bytes = malloc(*length ? *length : 1);
  if (!bytes || fread(bytes, 1, *length, file) != *length) exit(3);
  fclose(file);
  return bytes;
}

static int16_t get16(const uint8_t *bytes) {
  int value = bytes[0] | bytes[1] << 8;
  return (int16_t)(value < 32768 ? value : value - 65536);
}

static void print_event(const mvw_event *e) {
  printf("%u %u %u %u %u %u %u %u %u %u\n", (unsigned)e->kind, (unsigned)e->reason,
         (unsigned)e->roll, (unsigned)e->gesture, (unsigned)e->runner_up, (unsigned)e->start,
         (unsigned)e->end, (unsigned)e->distance, (unsigned)e->threshold,
         (unsigned)e->runner_up_distance);
}

/* Pushes samples and gives teaching what comes, printing its answer before each event. */
static void run_teach(mvw_state *state, const int16_t (*samples)[MVW_AXES], uint32_t count,
                      uint32_t values, char **args, int arg_count) {
  mvw_teach teach;
  mvw_teach_memory memory;
  mvw_event event;
  int next = 2;
  memory.slot_count = (uint8_t)strtoul(args[0], NULL, 10);
  memory.takes = (uint8_t)strtoul(args[1], NULL, 10);
  memory.slots = calloc(memory.slot_count, sizeof *memory.slots);
  memory.templates = malloc(memory.slot_count * values);
  memory.segments = malloc(memory.takes * values);
  int status = mvw_teach_init(&teach, state, &memory);
  if (status != MVW_OK) printf("teach %d\n", status);
  for (uint32_t i = 0; status == MVW_OK && i < count; i++) {
    if (teach.gesture == MVW_NO_GESTURE && next < arg_count)
      printf("begin %d\n", mvw_teach_begin(&teach, state, (uint8_t)strtoul(args[next++], NULL, 10)));
    if (mvw_push(state, samples[i], &event) != MVW_EVENT) continue;
    int answer = mvw_teach_event(&teach, state, &event);
    printf("teach %d %u %u %lu %lu %lu\n", answer, (unsigned)teach.count, (unsigned)teach.nearest,
           (unsigned long)teach.nearest_distance, (unsigned long)teach.spread,
           (unsigned long)teach.threshold);
    print_event(&event);
  }
  free(memory.segments);
  free(memory.templates);
  free(memory.slots);
}

/* Gives teaching slots as if they came from EEPROM. */
static void run_slots(mvw_state *state, uint32_t values, char **args, int count) {
  mvw_teach teach;
  mvw_teach_memory memory;
  memory.slot_count = (uint8_t)count;
  memory.takes = 3;
  memory.slots = calloc((size_t)count, sizeof *memory.slots);
  memory.templates = calloc((size_t)count, values);
  memory.segments = malloc(3 * values);
  for (int i = 0; i < count; i++) {
    char *takes;
    memory.slots[i].gesture = (uint8_t)strtoul(args[i], &takes, 10);
    memory.slots[i].takes = (uint8_t)strtoul(takes + 1, NULL, 10);
  }
  printf("teach %d\n", mvw_teach_init(&teach, state, &memory));
  for (int i = 0; i < count; i++)
    printf("%u:%u\n", (unsigned)memory.slots[i].gesture, (unsigned)memory.slots[i].takes);
  free(memory.segments);
  free(memory.templates);
  free(memory.slots);
}

int main(int argc, char **argv) {
  if (argc < 4) return 2;
  uint32_t model_length;
  uint8_t *model_bytes = read_file(argv[1], &model_length);
  mvw_model model;
  mvw_gesture *gestures = malloc(sizeof(mvw_gesture) * MVW_MAX_GESTURES);
  int status = mvw_model_read(&model, gestures, MVW_MAX_GESTURES, model_bytes, model_length);
  if (status != MVW_OK) {
    printf("read %d\n", status);
    return 0;
  }
  mvw_memory memory;
  mvw_memory_sizes(&model, &memory);
  memory.ring = malloc(memory.ring_samples * sizeof(*memory.ring));
  memory.query = malloc(memory.query_values * sizeof(*memory.query));
  memory.row = malloc(memory.row_values * sizeof(*memory.row));
  mvw_board board = model.board;
  if (strcmp(argv[3], "init") == 0) {
    board.rate_millihertz = (uint32_t)strtoul(argv[4], NULL, 10);
    board.accel_ng_per_lsb = (uint32_t)strtoul(argv[5], NULL, 10);
    board.gyro_ndps_per_lsb = (uint32_t)strtoul(argv[6], NULL, 10);
  }
  mvw_state *state = malloc(sizeof *state);
  status = mvw_init(state, &model, &board, &memory);
  if (status != MVW_OK || strcmp(argv[3], "init") == 0) {
    printf("init %d\n", status);
    return 0;
  }

  uint32_t sample_length;
  uint8_t *sample_bytes = read_file(argv[2], &sample_length);
  uint32_t count = sample_length / (2 * MVW_AXES);
  int16_t(*samples)[MVW_AXES] = malloc(count ? count * sizeof(*samples) : 1);
  for (uint32_t i = 0; i < count * MVW_AXES; i++)
    samples[i / MVW_AXES][i % MVW_AXES] = get16(sample_bytes + 2 * i);

  mvw_event event;
  if (strcmp(argv[3], "classify") == 0) {
    status = mvw_classify(state, (const int16_t(*)[MVW_AXES])(samples + 1), (uint16_t)(count - 1),
                          samples[0], &event);
    if (status == MVW_EVENT) print_event(&event);
    for (uint32_t i = 0; i < memory.query_values; i++) printf("%d ", mvw_query(state)[i]);
    printf("\n");
  } else if (strcmp(argv[3], "slots") == 0) {
    run_slots(state, memory.query_values, argv + 4, argc - 4);
  } else if (strcmp(argv[3], "teach") == 0) {
    run_teach(state, (const int16_t(*)[MVW_AXES])samples, count, memory.query_values, argv + 4,
              argc - 4);
  } else {
    for (uint32_t i = 0; i < count; i++) {
      status = mvw_push(state, samples[i], &event);
      if (status < 0) printf("push %d\n", status);
      if (strcmp(argv[3], "trace") == 0)
        printf("%lu %u\n", (unsigned long)state->energy, (unsigned)state->phase);
      else if (status == MVW_EVENT)
        print_event(&event);
    }
  }
  free(samples);
  free(sample_bytes);
  free(state);
  free(memory.row);
  free(memory.query);
  free(memory.ring);
  free(gestures);
  free(model_bytes);
  return 0;
}
