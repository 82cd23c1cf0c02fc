/*
 * Takes a model as bytes (model/model.bin) over a serial line, without compiling again. The new one
 * is written beside the one that runs, checked as a whole, and takes over only then: whatever is
 * damaged, cut short, too large or made for another sensor is refused, and the old one goes on.
 *
 * Lines to the board; each ends with '*' and the CRC-32 (as in ZIP) of the text before the '*', eight
 * lower-case hexadecimal digits. `make model-lines` writes them to build/model_lines.txt.
 *   model <length>*<crc>                 a model of so many bytes comes
 *   at <offset> <hexadecimal>*<crc>      up to 32 of its bytes, in order
 *   end*<crc>                            that was all
 * Lines from the board:
 *   ok <bytes so far>                    send the next
 *   again <bytes so far>                 the line was damaged or out of order: send from there
 *   running <bytes>                      after end: the new model runs from the next sample on
 *   refused <status>                     enum mvw_status, or an enum loader_status; begin anew
 */
#ifndef MODEL_LOADER_H
#define MODEL_LOADER_H

#include "model.h"

/* Gestures that a model which comes as bytes may have. */
#ifndef LOADER_GESTURES
#define LOADER_GESTURES (MODEL_GESTURE_COUNT + 4)
#endif

/* Longest line with the closing zero, to the board and from it. */
#define LOADER_LINE 128
#define LOADER_REPLY 24

#define LOADER_CHUNK 32

enum loader_status {
  LOADER_E_SIZE = -32,  /* longer than a half of the store */
  LOADER_E_SHORT = -33, /* end came before all bytes */
  LOADER_E_STORE = -34  /* the store could not be erased or written */
};

typedef struct model_loader {
  mvw_state *state;
  const mvw_board *board;
  const mvw_memory *memory;
  uint8_t running;     /* half that holds the running model, or 2: it is compiled in */
  uint32_t length;     /* of the model that comes; 0: none */
  uint32_t at;         /* bytes of it so far */
  uint32_t sequence;   /* of the newest model in the store */
  mvw_model models[2]; /* one a half */
  mvw_gesture gestures[2][LOADER_GESTURES];
} model_loader;

/* To be called at the start instead of mvw_init(): starts the newest whole model of the store, or
 * the one given. All pointers must outlive the loader.
 * Returns what mvw_init() says. */
int model_loader_start(model_loader *loader, mvw_state *state, const mvw_model *compiled_in,
                       const mvw_board *board, const mvw_memory *memory);

/* Takes a line without its end; to be called between two mvw_push(). reply: what to send back, '\n'
 * included. Returns 1, or 0 when the line is none of these and reply was left alone. */
int model_loader_line(model_loader *loader, const char *line, char reply[LOADER_REPLY]);

#endif
