/*
 * The core as a WebAssembly module: one recogniser in static memory, flat functions over it.
 * Knows the core only through its public headers. Pointers are offsets into the linear memory that
 * the host lays out behind the heap base.
 */
#include "movewright.h"
#include "mvw_teach.h"

#define EXPORT(name) __attribute__((export_name(name)))

static mvw_model model;
static mvw_gesture gestures[MVW_MAX_GESTURES];
static mvw_state state;
static mvw_teach teach;

/* The last event, for teaching. */
static mvw_event last;

/* Words an event takes in the host's view, in the order written by put_event(). */
#define EVENT_WORDS 10

static void put_event(uint32_t *out, const mvw_event *event) {
  out[0] = event->kind;
  out[1] = event->reason;
  out[2] = event->roll;
  out[3] = event->gesture;
  out[4] = event->runner_up;
  out[5] = event->start;
  out[6] = event->end;
  out[7] = event->distance;
  out[8] = event->threshold;
  out[9] = event->runner_up_distance;
}

EXPORT("model_version") int port_model_version(void) { return MVW_MODEL_VERSION; }

/* Reads a model; the bytes must stay. sizes receives the entries that ring, query and row need,
 * and the points of a normalised segment.
 * Returns MVW_OK or a negative status. */
EXPORT("read_model")
int port_read_model(const uint8_t *bytes, uint32_t length, uint32_t sizes[4]) {
  int status = mvw_model_read(&model, gestures, MVW_MAX_GESTURES, bytes, length);
  if (status < 0) return status;
  mvw_memory needed;
  mvw_memory_sizes(&model, &needed);
  sizes[0] = needed.ring_samples;
  sizes[1] = needed.query_values;
  sizes[2] = needed.row_values;
  sizes[3] = model.normaliser.length;
  return status;
}

/* Starts on buffers of the sizes given, in entries as from read_model(). board: rate, accelerometer
 * and gyroscope sensitivity as in mvw_board, or null to trust the model. */
EXPORT("init")
int port_init(int16_t *ring, int16_t *query, uint32_t *row, const uint32_t *board_words,
              const uint32_t sizes[3]) {
  mvw_memory memory;
  memory.ring = (int16_t(*)[MVW_AXES])ring;
  memory.ring_samples = sizes[0];
  memory.query = query;
  memory.query_values = sizes[1];
  memory.row = row;
  memory.row_values = sizes[2];
  if (board_words == 0) return mvw_init(&state, &model, 0, &memory);
  mvw_board board = model.board;
  board.rate_millihertz = board_words[0];
  board.accel_ng_per_lsb = board_words[1];
  board.gyro_ndps_per_lsb = board_words[2];
  return mvw_init(&state, &model, &board, &memory);
}

EXPORT("reset") void port_reset(void) { mvw_reset(&state); }

EXPORT("button") int port_button(int pressed) { return mvw_button(&state, pressed); }

/* Pushes until count samples are taken or one event has come. energy and phase, one entry a sample,
 * may be null. Returns the samples taken; *event_came says whether the last brought an event. */
EXPORT("push")
int port_push(const int16_t *samples, int count, uint32_t *event_came, uint32_t *event_out,
              uint32_t *energy, uint8_t *phase) {
  *event_came = 0;
  for (int i = 0; i < count; i++) {
    int status = mvw_push(&state, samples + (uint32_t)i * MVW_AXES, &last);
    if (status < 0) return status;
    if (energy) energy[i] = state.energy;
    if (phase) phase[i] = state.phase;
    if (status != MVW_EVENT) continue;
    *event_came = 1;
    put_event(event_out, &last);
    return i + 1;
  }
  return count;
}

/* Pushes until count samples are taken or room events have come, and keeps all of them: EVENT_WORDS
 * each into events, and the normalised segment of each, compared or not, into queries.
 * Returns the samples taken; *came receives the number of events. */
EXPORT("push_all")
int port_push_all(const int16_t *samples, int count, int room, uint32_t *came, uint32_t *events,
                  int8_t *queries, uint32_t *energy, uint8_t *phase) {
  uint32_t size = (uint32_t)model.normaliser.length * state.channels;
  int taken = 0;
  *came = 0;
  while (taken < count && (int)*came < room) {
    uint32_t one = 0;
    int status = port_push(samples + taken * MVW_AXES, count - taken, &one,
                           events + *came * EVENT_WORDS, energy ? energy + taken : 0,
                           phase ? phase + taken : 0);
    if (status < 0) return status;
    taken += status;
    if (one == 0) continue;
    const int8_t *query = mvw_query(&state);
    for (uint32_t i = 0; i < size; i++) queries[*came * size + i] = query[i];
    (*came)++;
  }
  return taken;
}

EXPORT("classify")
int port_classify(const int16_t *samples, int count, const int16_t *gravity, uint32_t *event_out) {
  mvw_event event;
  if (count < 0 || count > MVW_MAX_SEGMENT) return MVW_E_ARGUMENT;
  int status =
      mvw_classify(&state, (const int16_t(*)[MVW_AXES])samples, (uint16_t)count, gravity, &event);
  if (status == MVW_EVENT) put_event(event_out, &event);
  return status;
}

/* Segments already cut, as the loaded model normalises them. samples: of one segment after the other;
 * facts: five words a segment: its samples, whether gravity at rest is known, gravity in counts.
 * queries: a normalised segment each. Returns MVW_OK or a negative status. */
EXPORT("normalise")
int port_normalise(const int16_t *samples, const int32_t *facts, int count, int8_t *queries) {
  uint32_t size = (uint32_t)model.normaliser.length * state.channels;
  for (int i = 0; i < count; i++, facts += 5) {
    mvw_event event;
    int16_t gravity[3] = {(int16_t)facts[2], (int16_t)facts[3], (int16_t)facts[4]};
    if (facts[0] < 0 || facts[0] > MVW_MAX_SEGMENT) return MVW_E_ARGUMENT;
    int status = mvw_classify(&state, (const int16_t(*)[MVW_AXES])samples, (uint16_t)facts[0],
                              facts[1] ? gravity : 0, &event);
    if (status < 0) return status;
    const int8_t *query = mvw_query(&state);
    for (uint32_t v = 0; v < size; v++) *queries++ = query[v];
    samples += facts[0] * MVW_AXES;
  }
  return MVW_OK;
}

EXPORT("query") const int8_t *port_query(void) { return mvw_query(&state); }

EXPORT("template_distance") uint32_t port_template_distance(int index) {
  return mvw_template_distance(&state, (uint16_t)index);
}

EXPORT("dtw")
uint32_t port_dtw(const int8_t *a, int a_length, const int8_t *b, int b_length, int channels,
                  int band, int cost, uint32_t limit, uint32_t *row) {
  return mvw_dtw(a, (uint16_t)a_length, b, (uint16_t)b_length, (uint8_t)channels, (uint8_t)band,
                 (uint8_t)cost, limit, row);
}

/* Makes an already normalised segment the last compared one. */
static void give_query(const int8_t *query, uint32_t size) {
  int8_t *own = (int8_t *)state.query;
  for (uint32_t i = 0; i < size; i++) own[i] = query[i];
}

/* Kernel features over segments already normalised under the loaded model. records: feature_count
 * of MVW_FEATURE_BYTES; out: count rows of feature_count * MVW_POOLS counts. */
EXPORT("kernel_counts")
void port_kernel_counts(const int8_t *queries, int count, const uint8_t *records,
                        int feature_count, uint8_t *out) {
  uint32_t size = (uint32_t)model.normaliser.length * state.channels;
  for (int i = 0; i < count; i++) {
    give_query(queries + (uint32_t)i * size, size);
    for (int f = 0; f < feature_count; f++, out += MVW_POOLS)
      mvw_kernel_counts(&state, records + (uint32_t)f * MVW_FEATURE_BYTES, out);
  }
}

/* The same for one record; out: count rows of its output at every point. */
EXPORT("kernel_outputs")
void port_kernel_outputs(const int8_t *queries, int count, const uint8_t *record, int32_t *out) {
  uint32_t size = (uint32_t)model.normaliser.length * state.channels;
  for (int i = 0; i < count; i++, out += model.normaliser.length) {
    give_query(queries + (uint32_t)i * size, size);
    mvw_kernel_outputs(&state, record, out);
  }
}

/* Teaching over the loaded model. slots: slot_count of mvw_taught, zeroed or from before; templates
 * and segments as in mvw_teach_memory. */
EXPORT("teach_open")
int port_teach_open(mvw_taught *slots, int slot_count, int8_t *templates, int8_t *segments,
                    int takes) {
  mvw_teach_memory memory;
  if (slot_count < 0 || slot_count > 255 || takes < 0 || takes > 255) return MVW_E_ARGUMENT;
  memory.slots = slots;
  memory.templates = templates;
  memory.segments = segments;
  memory.slot_count = (uint8_t)slot_count;
  memory.takes = (uint8_t)takes;
  return mvw_teach_init(&teach, &state, &memory);
}

EXPORT("teach_begin") int port_teach_begin(int gesture) {
  if (gesture < 0 || gesture > 255) return MVW_E_ARGUMENT;
  return mvw_teach_begin(&teach, &state, (uint8_t)gesture);
}

EXPORT("teach_cancel") void port_teach_cancel(void) { mvw_teach_cancel(&teach); }

EXPORT("teach_forget") int port_teach_forget(int gesture) {
  if (gesture < 0 || gesture > 255) return MVW_E_ARGUMENT;
  return mvw_teach_forget(&teach, (uint8_t)gesture);
}

/* Gives the event that push has just brought to teaching. event_out: as it is then. facts: gesture
 * being taught, takes, nearest other gesture, its distance, spread, threshold. */
EXPORT("teach_event") int port_teach_event(uint32_t *event_out, uint32_t facts[6]) {
  int status = mvw_teach_event(&teach, &state, &last);
  put_event(event_out, &last);
  facts[0] = teach.gesture;
  facts[1] = teach.count;
  facts[2] = teach.nearest;
  facts[3] = teach.nearest_distance;
  facts[4] = teach.spread;
  facts[5] = teach.threshold;
  return status;
}
