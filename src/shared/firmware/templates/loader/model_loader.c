#include "model_loader.h"

#include <stddef.h>

#include "store.h"

/* In front of the model bytes in a half, and written last: a half without it holds nothing. */
#define SEAL_BYTES 8u

#define COMPILED_IN 2u

static uint32_t get32(const uint8_t *bytes) {
  return bytes[0] | (uint32_t)bytes[1] << 8 | (uint32_t)bytes[2] << 16 | (uint32_t)bytes[3] << 24;
}

static void put32(uint8_t *bytes, uint32_t value) {
  for (uint8_t i = 0; i < 4; i++) bytes[i] = (uint8_t)(value >> (8u * i));
}

/* Tries the model in a half on a state of its own; the buffers are scratch to it. The running
 * recogniser lies in others of their fields and goes on. */
static int try_half(model_loader *loader, uint8_t half, uint32_t length) {
  mvw_state trial;
  int status = mvw_model_read(&loader->models[half], loader->gestures[half], LOADER_GESTURES,
                              store_half(half) + SEAL_BYTES, length);
  if (status != MVW_OK) return status;
  return mvw_init(&trial, &loader->models[half], loader->board, loader->memory);
}

/* Sequence number of a half that is sealed and sound, or 0. */
static uint32_t sequence_of(model_loader *loader, uint8_t half) {
  const uint8_t *seal = store_half(half);
  uint32_t sequence = get32(seal);
  uint32_t length = get32(seal + 4);
  if (sequence == 0 || sequence == 0xffffffffu || length > store_size() - SEAL_BYTES) return 0;
  return try_half(loader, half, length) == MVW_OK ? sequence : 0;
}

int model_loader_start(model_loader *loader, mvw_state *state, const mvw_model *compiled_in,
                       const mvw_board *board, const mvw_memory *memory) {
  loader->state = state;
  loader->board = board;
  loader->memory = memory;
  loader->length = 0;
  loader->at = 0;
  uint32_t first = sequence_of(loader, 0);
  uint32_t second = sequence_of(loader, 1);
  loader->sequence = first > second ? first : second;
  loader->running = COMPILED_IN;
  if (loader->sequence > 0) loader->running = first > second ? 0 : 1;
  return mvw_init(state,
                  loader->running == COMPILED_IN ? compiled_in : &loader->models[loader->running],
                  board, memory);
}

static uint32_t crc32(const char *text, size_t length) {
  uint32_t crc = 0xffffffffu;
  for (size_t i = 0; i < length; i++) {
    crc ^= (uint8_t)text[i];
    for (uint8_t bit = 0; bit < 8; bit++) crc = crc >> 1 ^ (crc & 1u ? 0xedb88320u : 0u);
  }
  return ~crc;
}

static int nibble(char digit) {
  if (digit >= '0' && digit <= '9') return digit - '0';
  return digit >= 'a' && digit <= 'f' ? digit - 'a' + 10 : -1;
}

/* Length of the text before a right check, or 0. */
static size_t checked_length(const char *line) {
  size_t length = 0;
  uint32_t check = 0;
  while (length < LOADER_LINE && line[length] != '*' && line[length] != '\0') length++;
  if (line[length] != '*') return 0;
  for (uint8_t i = 1; i <= 8; i++) {
    int value = nibble(line[length + i]);
    if (value < 0) return 0;
    check = check << 4 | (uint32_t)value;
  }
  return line[length + 9] == '\0' && check == crc32(line, length) ? length : 0;
}

/* What follows the word and a space (or the '*'), or NULL. */
static const char *after(const char *line, const char *word) {
  while (*word != '\0')
    if (*line++ != *word++) return NULL;
  return *line == ' ' ? line + 1 : *line == '*' ? line : NULL;
}

static const char *number(const char *text, uint32_t *value) {
  *value = 0;
  if (*text < '0' || *text > '9') return NULL;
  for (; *text >= '0' && *text <= '9'; text++) {
    if (*value > 99999999u) return NULL;
    *value = *value * 10u + (uint32_t)(*text - '0');
  }
  return text;
}

static void reply_with(char *reply, const char *word, int32_t value) {
  char digits[10];
  uint8_t count = 0;
  uint32_t size = value < 0 ? 0u - (uint32_t)value : (uint32_t)value;
  while (*word != '\0') *reply++ = *word++;
  *reply++ = ' ';
  if (value < 0) *reply++ = '-';
  do {
    digits[count++] = (char)('0' + size % 10u);
    size /= 10u;
  } while (size > 0);
  while (count > 0) *reply++ = digits[--count];
  *reply++ = '\n';
  *reply = '\0';
}

static uint8_t spare_half(const model_loader *loader) { return loader->running == 0 ? 1 : 0; }

static int begin(model_loader *loader, uint32_t length) {
  loader->length = 0;
  loader->at = 0;
  if (length == 0 || length > store_size() - SEAL_BYTES) return LOADER_E_SIZE;
  if (!store_erase(spare_half(loader))) return LOADER_E_STORE;
  loader->length = length;
  return MVW_OK;
}

/* Returns 1, 0 when the line does not go on where the last ended, or a negative status. */
static int take(model_loader *loader, const char *text) {
  uint8_t bytes[LOADER_CHUNK];
  uint8_t count = 0;
  uint32_t offset;
  text = number(text, &offset);
  if (loader->length == 0 || text == NULL || *text++ != ' ' || offset != loader->at) return 0;
  while (nibble(*text) >= 0) {
    int high = nibble(*text++);
    int low = nibble(*text++);
    if (low < 0 || count == LOADER_CHUNK) return 0;
    bytes[count++] = (uint8_t)(high * 16 + low);
  }
  if (*text != '*' || count == 0 || count > loader->length - loader->at) return 0;
  if (!store_write(spare_half(loader), SEAL_BYTES + loader->at, bytes, count)) return LOADER_E_STORE;
  loader->at += count;
  return 1;
}

/* Checks what came as it lies in the store, seals it, and lets it take over. */
static int finish(model_loader *loader) {
  uint8_t half = spare_half(loader);
  uint32_t length = loader->length;
  uint8_t seal[SEAL_BYTES];
  loader->length = 0;
  if (length == 0 || loader->at < length) return LOADER_E_SHORT;
  int status = try_half(loader, half, length);
  if (status != MVW_OK) return status;
  put32(seal, loader->sequence + 1u);
  put32(seal + 4, length);
  if (!store_write(half, 0, seal, SEAL_BYTES)) return LOADER_E_STORE;
  loader->sequence++;
  loader->running = half;
  return mvw_init(loader->state, &loader->models[half], loader->board, loader->memory);
}

int model_loader_line(model_loader *loader, const char *line, char reply[LOADER_REPLY]) {
  const char *model = after(line, "model");
  const char *at = after(line, "at");
  const char *end = after(line, "end");
  uint32_t length;
  int status;
  if (model == NULL && at == NULL && end == NULL) return 0;
  if (checked_length(line) == 0) {
    reply_with(reply, "again", (int32_t)loader->at);
    return 1;
  }
  if (at != NULL) {
    status = take(loader, at);
    if (status >= 0) reply_with(reply, status == 1 ? "ok" : "again", (int32_t)loader->at);
  } else if (model != NULL) {
    status = number(model, &length) != NULL ? begin(loader, length) : LOADER_E_SIZE;
    if (status == MVW_OK) reply_with(reply, "ok", 0);
  } else {
    status = finish(loader);
    if (status == MVW_OK) reply_with(reply, "running", (int32_t)loader->at);
  }
  if (status < 0) {
    loader->length = 0;
    loader->at = 0;
    reply_with(reply, "refused", status);
  }
  return 1;
}
